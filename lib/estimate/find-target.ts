import { limitOf, targetRuleById } from "#lib/retest/find-targets.ts";
import type { Citation } from "#lib/sources/source.ts";
import { formatNumber, formatPercent } from "#lib/units/format.ts";
import type { HouseModel } from "./complete/complete-house.ts";
import type { Ledger } from "./ledger.ts";
import type { SiteWorth } from "./value-leaks.ts";

/** The one limit that the work has to reach. */
export interface ScopeTarget {
  id: string;
  title: string;
  measure: "total" | "to-outside";
  limitCfm25: number;
  confidenceProbability: number;
  source: Citation;
}

/** How sure to be when nothing is said. Source: practice. */
const DEFAULT_CONFIDENCE = 0.8;
const DEFAULT_MEASURE = "total";
const practice = { sourceId: "practice" } as const;

/** What a rule's limit is reckoned from, for this house. */
export function targetBasis(house: HouseModel, worth: SiteWorth) {
  const base = house.space.parameters;
  return {
    conditionedFloorAreaFt2: house.floorAreaFt2,
    fanFlowCfm: house.systems.reduce((sum, system) => sum + base[system.fanFlowAt]!.base, 0),
    leakageBeforeCfm25: { total: worth.totalCfm25, toOutside: worth.toOutsideCfm25 },
  };
}

/** Which leakage the plan's target limits; total where nothing is said or wanted. */
export function targetMeasure({ job: { plan } }: Pick<HouseModel, "job">): ScopeTarget["measure"] {
  if (plan?.targetId !== undefined) return targetRuleById(plan.targetId).measure;
  const isOwn = plan?.targetCfm25 !== undefined || plan?.targetReductionShare !== undefined;
  return (isOwn ? plan.targetMeasure : undefined) ?? DEFAULT_MEASURE;
}

/** The target of the plan: a rule by its id, an own limit, or an own share to remove. Null when none is wanted. */
export function findTarget({
  house,
  worth,
  ledger,
}: {
  house: HouseModel;
  worth: SiteWorth;
  ledger: Ledger;
}): ScopeTarget | null {
  const { plan } = house.job;
  if (!plan) return null;
  const wanted = plan.targetId ?? plan.targetCfm25 ?? plan.targetReductionShare;
  if (wanted === undefined) return null;
  const confidenceProbability = ledger.take(plan.confidenceProbability, {
    path: "#/plan/confidenceProbability",
    title: "How sure to reach the target",
    value: DEFAULT_CONFIDENCE,
    unit: "share",
    reason: "Four times in five, when nothing else was asked for.",
    source: practice,
  });
  if (plan.targetId !== undefined) {
    const rule = targetRuleById(plan.targetId);
    const limitCfm25 = limitOf(rule, targetBasis(house, worth));
    if (limitCfm25 === null) return null;
    return {
      id: rule.id,
      title: rule.title,
      measure: rule.measure,
      limitCfm25,
      confidenceProbability,
      source: rule.source,
    };
  }
  const measure = ledger.take(plan.targetMeasure, {
    path: "#/plan/targetMeasure",
    title: "Which leakage the target limits",
    value: DEFAULT_MEASURE,
    unit: "",
    reason: "Total leakage, which the simplest test measures.",
    source: practice,
  });
  if (plan.targetCfm25 !== undefined) {
    return {
      id: "own-limit",
      title: `At most ${formatNumber(plan.targetCfm25)} cfm at 25 Pa`,
      measure,
      limitCfm25: plan.targetCfm25,
      confidenceProbability,
      source: practice,
    };
  }
  const share = plan.targetReductionShare!;
  const before = measure === "total" ? worth.totalCfm25 : worth.toOutsideCfm25;
  return {
    id: "own-reduction",
    title: `${formatPercent(share)} less than before`,
    measure,
    limitCfm25: (1 - share) * before,
    confidenceProbability,
    source: practice,
  };
}
