"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { createJob } from "../actions.ts";

export function NewJobForm() {
  const [state, submit, isPending] = useActionState(createJob, null);
  const errorOf = (fieldId: string) => state?.errors.find((error) => error.fieldId === fieldId)?.text;
  return (
    <form action={submit} noValidate>
      <ErrorSummary errors={state?.errors ?? []} />
      <TextField
        id="label"
        name="label"
        label="Name of the house"
        hint="The street and number, or the family: what you will look for later."
        error={errorOf("label")}
        autoComplete="off"
      />
      <TextField
        id="zip"
        name="zip"
        label="ZIP code"
        hint="It brings the weather, the energy prices and the elevation; it may wait."
        error={errorOf("zip")}
        inputMode="numeric"
        autoComplete="off"
      />
      <Button type="submit" disabled={isPending}>
        Start the trip
      </Button>
    </form>
  );
}
