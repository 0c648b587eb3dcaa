"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";

export interface RuleOptions {
  targets: readonly { value: string; label: string }[];
  deemedRules: readonly { value: string; label: string }[];
}

export function PlanStep({ targets, deemedRules }: RuleOptions) {
  return (
    <>
      <ChoiceAt
        path="plan/targetId"
        options={targets}
        unknownLabel="No rule; choose what pays"
        hint="The edition your building department or program has adopted."
      />
      <NumberAt path="plan/targetCfm25" hint="A limit of your own, or of a program." />
      <ChoiceAt path="plan/targetMeasure" isRow />
      <NumberAt path="plan/targetReductionShare" />
      <NumberAt path="plan/confidenceProbability" hint="How sure the chosen work must be to pass the retest." />
      <ChoiceAt path="plan/objective" />
      <FlagAt path="plan/offersSprayedSealant" />
      <TextAt
        path="plan/workDoneDate"
        hint="As 2026-11-20. Bills from after it then tell what was saved; those before tell what the house needed."
      />
      <NotesAt path="plan" />
      <Disclosure title="Limits and program">
        <NumberAt path="plan/budgetUsdCents" hint="Options that cost more are left out." />
        <NumberAt path="plan/crewHours" />
        <NumberAt
          path="plan/otherHeatingReductionShare"
          hint="Insulation, air sealing, windows. The ducts' saving then counts on what is left."
        />
        <NumberAt path="plan/otherCoolingReductionShare" />
        <ChoiceAt path="plan/deemedRuleId" options={deemedRules} unknownLabel="None" />
      </Disclosure>
    </>
  );
}
