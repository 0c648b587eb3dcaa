"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { FieldFrame } from "#app/design/field-frame.tsx";
import { importJob } from "../actions.ts";

export function ImportForm() {
  const [state, submit, isPending] = useActionState(importJob, null);
  const errors = state?.errors ?? [];
  return (
    <form action={submit} noValidate>
      <ErrorSummary errors={errors} />
      <FieldFrame id="file" label="Job file" hint="Its name usually ends in .json." error={errors[0]?.text}>
        <input id="file" type="file" name="file" accept=".json,application/json" />
      </FieldFrame>
      <Button type="submit" disabled={isPending}>
        Open it
      </Button>
    </form>
  );
}
