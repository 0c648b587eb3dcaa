import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
import { formatNumber, formatUsdCents } from "#lib/units/format.ts";
import type { ProgramRule } from "./program-rule.ts";

const percent = (share: number): string => `${formatNumber(100 * share)} %`;
const listed = (words: readonly string[]): string => [...words].sort().join(", ");
const limit = (value: number | undefined, words: (value: number) => string): string =>
  value === undefined ? "no limit" : words(value);
const cfm = (value: number): string => `${formatNumber(value)} cfm at 25 Pa`;

function pays({ rebate }: ProgramRule): string {
  switch (rebate.pays.by) {
    case "flat":
      return `${formatUsdCents(rebate.pays.flatUsdCents)} for each house`;
    case "cfm25-removed":
      return `${formatUsdCents(rebate.pays.eachCfm25UsdCents)} for each cfm at 25 Pa removed`;
    case "share-of-price":
      return `${percent(rebate.pays.priceShare)} of the price`;
  }
}

function deemed({ deemedRuleId }: ProgramRule): string {
  const rule = DEEMED_RULES.find(({ id }) => id === deemedRuleId);
  return rule ? `${rule.title}, ${rule.edition}` : "none named";
}

/** Everything of a rule that a contractor can notice, in words. */
const ASPECTS: readonly (readonly [string, (rule: ProgramRule) => string])[] = [
  ["It pays", pays],
  ["At most", ({ rebate }) => limit(rebate.atMostUsdCents, formatUsdCents)],
  ["Leakage that counts", ({ rebate }) => (rebate.conditions.measure === "total" ? "total" : "to outside")],
  ["Removed, at least", ({ rebate }) => limit(rebate.conditions.leastRemovedCfm25, cfm)],
  ["Share removed, at least", ({ rebate }) => limit(rebate.conditions.leastRemovedShare, percent)],
  ["Left, at most", ({ rebate }) => limit(rebate.conditions.mostLeftCfm25, cfm)],
  ["Further condition", ({ rebate }) => rebate.conditionText ?? "none"],
  ["Houses that may take part", ({ houseKinds }) => listed(houseKinds)],
  ["Tests that count", ({ testKinds }) => listed(testKinds)],
  ["Photos of each repair", ({ evidence }) => formatNumber(evidence.photosPerRepairCount)],
  ["Calibration dates of instruments", ({ evidence }) => (evidence.needsInstruments ? "needed" : "not needed")],
  ["Who tested", ({ evidence }) => (evidence.needsNames ? "needed" : "not needed")],
  ["Deemed savings", deemed],
  ["Measure life", ({ measureLifeYears }) => `${formatNumber(measureLifeYears)} years`],
  ["Net to gross", ({ netToGrossRatio }) => formatNumber(netToGrossRatio)],
  ["How sure inspections are", ({ inspection }) => percent(inspection.confidenceProbability)],
  ["How exact inspections are", ({ inspection }) => `± ${percent(inspection.precisionShare)}`],
];

/** One thing that a new edition makes different. */
export interface RuleChange {
  what: string;
  was: string;
  is: string;
}

/** What a new edition of a rule makes different, in plain words; empty when only its title is another. */
export function ruleChanges(from: ProgramRule, to: ProgramRule): RuleChange[] {
  return ASPECTS.map(([what, words]) => ({ what, was: words(from), is: words(to) })).filter(
    ({ was, is }) => was !== is,
  );
}
