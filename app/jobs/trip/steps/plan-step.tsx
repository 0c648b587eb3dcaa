"use client";

import { Disclosure } from "#app/design/worked-out.tsx";
import { newId, readAt, textAt } from "../draft.ts";
import { EntryList } from "../entry-list.tsx";
import { ChoiceAt, FlagAt, NumberAt, TextAt } from "../fields.tsx";
import { NotesAt } from "../notes.tsx";
import { useTrip } from "../trip-context.ts";

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
        <ChoiceAt path="plan/deemedRuleId" options={deemedRules} unknownLabel="None" />
      </Disclosure>
      <OtherMeasures />
    </>
  );
}

/** What else is done to the house, one by one in its order, so that nothing is saved twice. */
function OtherMeasures() {
  const { draft } = useTrip();
  // Jobs of before this list told one share for all of them.
  const hasShares = ["otherHeatingReductionShare", "otherCoolingReductionShare"].some(
    (key) => readAt(draft, `plan/${key}`) !== undefined,
  );
  return (
    <Disclosure title="Other measures beside the ducts">
      <p>
        Insulation, windows, new equipment: each saves of what the ones before it leave. Their order changes what each
        is credited with, not what they save together.
      </p>
      {hasShares ? (
        <>
          <NumberAt path="plan/otherHeatingReductionShare" />
          <NumberAt path="plan/otherCoolingReductionShare" />
        </>
      ) : null}
      <EntryList
        path="plan/otherMeasures"
        title={(measure, index) => textAt(measure, "title") ?? `Measure ${index + 1}`}
        addLabel="Add a measure"
        makeNew={(list) => ({
          id: newId(list, "measure"),
          title: `Measure ${list.length + 1}`,
          order: "before-ducts",
        })}
      >
        {(path) => (
          <>
            <TextAt path={`${path}/title`} hint="Such as “attic insulation”." />
            <ChoiceAt path={`${path}/order`} isRow />
            <NumberAt path={`${path}/heatingReductionShare`} />
            <NumberAt path={`${path}/coolingReductionShare`} />
            <NumberAt path={`${path}/heatingEfficiencyBeforeRatio`} hint="For new heating equipment: AFUE or COP." />
            <NumberAt path={`${path}/heatingEfficiencyAfterRatio`} />
            <NumberAt path={`${path}/coolingEfficiencyBeforeRatio`} hint="For new cooling equipment: SEER." />
            <NumberAt path={`${path}/coolingEfficiencyAfterRatio`} />
          </>
        )}
      </EntryList>
    </Disclosure>
  );
}
