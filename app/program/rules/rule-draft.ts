import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";

/** Every figure of a rule under the name of its field. */
const TEXT_FIELDS = [
  "title",
  "deemedRuleId",
  "lifeYears",
  "netToGross",
  "photos",
  "paysBy",
  "eachUsd",
  "flatUsd",
  "mostUsd",
  "measure",
  "leastPercent",
  "leastCfm",
  "mostLeftCfm",
  "conditionText",
  "confidencePercent",
  "precisionPercent",
] as const;
const LIST_FIELDS = ["houseKinds", "testKinds", "needs"] as const;

export const RULE_FIELDS = [...TEXT_FIELDS, ...LIST_FIELDS];

export type RuleDraft = Record<(typeof TEXT_FIELDS)[number], string> & Record<(typeof LIST_FIELDS)[number], string[]>;
export type RuleSearch = Readonly<Record<string, string | string[] | undefined>>;

const PARTS_OF_HUNDRED = 100;
/** Twelve figures undo what a division by a hundred adds behind them. */
const tidy = (value: number): string => String(Number(value.toPrecision(12)));
const shown = (value: number | undefined, factor = 1): string => (value === undefined ? "" : tidy(value * factor));

/** The figures of a rule as they are typed; empty where the rule has none. */
export function draftOfRule(rule: ProgramRule): RuleDraft {
  const { rebate, evidence, inspection } = rule;
  const { pays, conditions } = rebate;
  const dollars = (cents: number | undefined) => shown(cents, 1 / PARTS_OF_HUNDRED);
  return {
    title: rule.title,
    houseKinds: [...rule.houseKinds],
    testKinds: [...rule.testKinds],
    deemedRuleId: rule.deemedRuleId ?? "",
    lifeYears: shown(rule.measureLifeYears),
    netToGross: shown(rule.netToGrossRatio),
    photos: shown(evidence.photosPerRepairCount),
    needs: [...(evidence.needsInstruments ? ["instruments"] : []), ...(evidence.needsNames ? ["names"] : [])],
    paysBy: pays.by === "flat" ? "flat" : "cfm25-removed",
    eachUsd: pays.by === "cfm25-removed" ? dollars(pays.eachCfm25UsdCents) : "",
    flatUsd: pays.by === "flat" ? dollars(pays.flatUsdCents) : "",
    mostUsd: dollars(rebate.atMostUsdCents),
    measure: conditions.measure,
    leastPercent: shown(conditions.leastRemovedShare, PARTS_OF_HUNDRED),
    leastCfm: shown(conditions.leastRemovedCfm25),
    mostLeftCfm: shown(conditions.mostLeftCfm25),
    conditionText: rebate.conditionText ?? "",
    confidencePercent: shown(inspection.confidenceProbability, PARTS_OF_HUNDRED),
    precisionPercent: shown(inspection.precisionShare, PARTS_OF_HUNDRED),
  };
}

const oneOf = (value: string | string[] | undefined): string =>
  Array.isArray(value) ? (value[0] ?? "") : (value ?? "");
const listOf = (value: string | string[] | undefined): string[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

/** What was sent: a box that is not ticked is not sent at all, so a form that was sent speaks for every field. */
export function draftOfSearch(search: RuleSearch): RuleDraft {
  return {
    ...(Object.fromEntries(TEXT_FIELDS.map((name) => [name, oneOf(search[name]).trim()])) as Record<
      (typeof TEXT_FIELDS)[number],
      string
    >),
    houseKinds: listOf(search.houseKinds),
    testKinds: listOf(search.testKinds),
    needs: listOf(search.needs),
  };
}

/** The rule with the typed figures in their places, or what of them cannot be used. An empty limit is no limit. */
export function ruleOfDraft(rule: ProgramRule, draft: RuleDraft): { rule: ProgramRule } | { problems: string[] } {
  const number = (text: string) => Number(text.replaceAll(/[\s,$%]/g, "") || Number.NaN);
  const share = (text: string) => Number((number(text) / PARTS_OF_HUNDRED).toPrecision(12));
  const cents = (text: string) => Math.round(number(text) * PARTS_OF_HUNDRED);
  const limit = <T>(name: string, text: string, read: (text: string) => T) =>
    text === "" ? {} : { [name]: read(text) };
  const parsed = programRuleSchema.safeParse({
    schemaVersion: rule.schemaVersion,
    title: draft.title,
    houseKinds: draft.houseKinds,
    testKinds: draft.testKinds,
    ...limit("deemedRuleId", draft.deemedRuleId, String),
    measureLifeYears: number(draft.lifeYears),
    netToGrossRatio: number(draft.netToGross),
    evidence: {
      photosPerRepairCount: number(draft.photos),
      needsInstruments: draft.needs.includes("instruments"),
      needsNames: draft.needs.includes("names"),
    },
    rebate: {
      id: rule.rebate.id,
      title: rule.rebate.title,
      pays:
        draft.paysBy === "flat"
          ? { by: "flat", flatUsdCents: cents(draft.flatUsd) }
          : { by: "cfm25-removed", eachCfm25UsdCents: cents(draft.eachUsd) },
      ...limit("atMostUsdCents", draft.mostUsd, cents),
      conditions: {
        measure: draft.measure,
        ...limit("leastRemovedShare", draft.leastPercent, share),
        ...limit("leastRemovedCfm25", draft.leastCfm, number),
        ...limit("mostLeftCfm25", draft.mostLeftCfm, number),
      },
      ...limit("conditionText", draft.conditionText, String),
    },
    inspection: {
      confidenceProbability: share(draft.confidencePercent),
      precisionShare: share(draft.precisionPercent),
    },
  });
  if (parsed.success) return { rule: parsed.data };
  return { problems: parsed.error.issues.map(({ path, message }) => `${path.join(", ")}: ${message}.`) };
}
