"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { importJob } from "../actions.ts";

export function ImportForm() {
  const [state, submit, isPending] = useActionState(importJob, null);
  const errors = state?.errors ?? [];
  return (
    <form action={submit} noValidate>
      <ErrorSummary errors={errors} />
      <FileField
        id="file"
        name="file"
        label="File"
        hint="Its name usually ends in .json or .csv."
        error={firstOf(errors)}
        accept=".json,application/json,.csv,.tsv,.txt,text/csv"
      />
      <Button type="submit" disabled={isPending}>
        Open it
      </Button>
    </form>
  );
}

/** Beside the field the first of several; the summary on top tells all. */
function firstOf(errors: readonly { text: string }[]): string | undefined {
  const more = errors.length - 1;
  return more > 0 ? `${errors[0]!.text} And ${more} more, see above.` : errors[0]?.text;
}
