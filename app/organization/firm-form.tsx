"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { saveFirm } from "./actions.ts";
import type { FirmDraft } from "./firm-draft.ts";
import styles from "./organization.module.css";

/** The firm as its papers show it, and what it promises on them. */
export function FirmForm({ first }: { first: FirmDraft }) {
  const [state, submit, isPending] = useActionState(saveFirm, null);
  const typed = state?.typed ?? first;
  const problems = state?.problems ?? [];
  const field = (id: keyof FirmDraft) => ({
    id,
    name: id,
    defaultValue: typed[id],
    error: problems.find(({ fieldId }) => fieldId === id)?.text,
  });
  return (
    <form action={submit} noValidate>
      <ErrorSummary errors={problems} />
      {/* What was typed is put back after a refusal: the browser empties a form that was sent. */}
      <div key={JSON.stringify(state?.typed)}>
        <div className={styles.two}>
          <TextField {...field("name")} label="Name of the firm" autoComplete="organization" />
          <TextField
            {...field("license")}
            label="License"
            hint="As it should read on papers, such as “State license 123456”."
            isOptional
          />
          <TextField {...field("address")} label="Address" autoComplete="street-address" isOptional />
          <TextField {...field("phone")} label="Phone" inputMode="tel" autoComplete="tel" isOptional />
          <TextField {...field("email")} label="E-mail" inputMode="email" autoComplete="email" isOptional />
          <TextField
            {...field("accentColor")}
            label="Color of links, buttons and rules"
            hint="As # and six digits, such as #0f5566. It is checked that tired eyes can read it."
            autoComplete="off"
            isOptional
          />
        </div>
        <h2>What you promise on a proposal</h2>
        <div className={styles.two}>
          <TextField
            {...field("paymentTerms")}
            label="Payment"
            hint="Such as “Half at the start, half after the second test”."
            isOptional
          />
          <PlainSelect
            {...field("missedGoal")}
            label="If the second test misses the goal"
            options={[
              { value: "none", label: "Nothing is agreed, and the paper says so" },
              { value: "work-on", label: "We go on working at no charge" },
              { value: "credit", label: "We take money off the price" },
              { value: "re-offer", label: "We offer further work" },
            ]}
          />
          <QuantityField
            {...field("creditUsd")}
            label="Taken off the price, in dollars"
            hint="Only if you take money off."
            unit="$"
            isOptional
          />
        </div>
        <h2>Paid over time</h2>
        <p className={styles.reason}>Only if a lender offers it: all three, or none.</p>
        <div className={styles.two}>
          <TextField {...field("lender")} label="Lender" isOptional />
          <QuantityField {...field("yearlyRatePercent")} label="Interest a year, in percent" unit="%" isOptional />
          <QuantityField {...field("monthsCount")} label="Months" unit="" isOptional />
        </div>
      </div>
      <Button type="submit" disabled={isPending}>
        {isPending ? "Saving" : "Save"}
      </Button>
    </form>
  );
}
