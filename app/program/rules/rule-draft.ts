import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";

export type RuleSearch = Partial<Record<"tried" | "eachUsd" | "mostUsd" | "leastPercent" | "photos", string>>;

type Draft = Record<"eachUsd" | "mostUsd" | "leastPercent" | "photos", string>;

const PARTS_OF_HUNDRED = 100;

/** The figures of a rule as they are typed; empty where the rule has none. */
export function draftOfRule({ rebate, evidence }: ProgramRule): Draft {
  const dollars = (cents: number | undefined) => (cents === undefined ? "" : String(cents / PARTS_OF_HUNDRED));
  const share = rebate.conditions?.leastRemovedShare;
  return {
    eachUsd: rebate.pays.by === "cfm25-removed" ? dollars(rebate.pays.eachCfm25UsdCents) : "",
    mostUsd: dollars(rebate.atMostUsdCents),
    leastPercent: share === undefined ? "" : String(share * PARTS_OF_HUNDRED),
    photos: String(evidence.photosPerRepairCount),
  };
}

/** The rule with the typed figures in their places, or what of them cannot be used. An empty field takes its limit away. */
export function changedRule(rule: ProgramRule, search: RuleSearch): { rule: ProgramRule } | { problems: string[] } {
  const { eachUsd, mostUsd, leastPercent, photos } = { ...draftOfRule(rule), ...search };
  const number = (text: string) => Number(text.replaceAll(/[\s,$%]/g, "") || Number.NaN);
  const cents = (text: string) => Math.round(number(text) * PARTS_OF_HUNDRED);
  const { atMostUsdCents: _most, conditions, ...rebate } = rule.rebate;
  const { leastRemovedShare: _least, ...others } = conditions ?? { measure: "total" as const };
  const parsed = programRuleSchema.safeParse({
    ...rule,
    evidence: { ...rule.evidence, photosPerRepairCount: number(photos) },
    rebate: {
      ...rebate,
      pays: eachUsd === "" ? rebate.pays : { by: "cfm25-removed", eachCfm25UsdCents: cents(eachUsd) },
      ...(mostUsd === "" ? {} : { atMostUsdCents: cents(mostUsd) }),
      conditions: {
        ...others,
        ...(leastPercent === "" ? {} : { leastRemovedShare: number(leastPercent) / PARTS_OF_HUNDRED }),
      },
    },
  });
  if (parsed.success) return { rule: parsed.data };
  return { problems: parsed.error.issues.map(({ message }) => `${message}.`) };
}
