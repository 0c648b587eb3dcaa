import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { type Choice, listChoices, sprayVariance } from "./choices.ts";
import { roundedCents } from "./exact-money.ts";
import type { ChosenScope, RepairOfLeak, ScopeProblem, SharedCost } from "./scope-problem.ts";
import { visitsFor } from "./visits.ts";

export type EvaluatedScope = Omit<ChosenScope, "provenOptimal" | "gapRatio">;

const sumOf = <T>(items: readonly T[], amount: (item: T) => number): number =>
  items.reduce((sum, item) => sum + amount(item), 0);

function sharedCostsFor(
  problem: ScopeProblem,
  measures: readonly RepairOfLeak[],
  sprayIds: readonly string[],
): SharedCost[] {
  const places = new Map(problem.leaks.map((leak) => [leak.id, leak.placeId]));
  return problem.sharedCosts.filter(({ neededFor }) => {
    if (neededFor.kind === "any-work") return measures.length + sprayIds.length > 0;
    if (neededFor.kind === "place") return measures.some(({ leakId }) => places.get(leakId) === neededFor.placeId);
    return [...measures.map(({ repairId }) => repairId), ...sprayIds].some((id) => neededFor.repairIds.includes(id));
  });
}

/** What the least charge adds, with each tax on it rounded half up once. */
function topUpUsdCents(problem: ScopeProblem, beforeTaxUsdCents: number): number {
  if (problem.minimumCharge === null) return 0;
  const { minimumUsdCents, topUpTaxRates } = problem.minimumCharge;
  const missing = Math.max(0, minimumUsdCents - beforeTaxUsdCents);
  return missing + sumOf(topUpTaxRates, (taxRate) => roundedCents({ factors: [missing, taxRate] }));
}

/**
 * Everything that follows from a choice of repairs, straight from the problem and without the solver.
 * left ~ N(before − Σ removed, u² + Σ variance); probability = Φ((limit − mean)/sd). Source: own-method, jcgm-106 for
 * the probability of conformity. Left out: that sizes of leaks found and not found move against each other, which
 * would narrow the spread.
 */
export function evaluateScope({
  problem,
  measures,
  systemRepairIds,
  limitCfm25,
}: {
  problem: ScopeProblem;
  measures: readonly RepairOfLeak[];
  systemRepairIds: readonly string[];
  limitCfm25?: number;
}): EvaluatedScope {
  const repairOf = new Map(measures.map(({ leakId, repairId }) => [leakId, repairId]));
  const isSprayed = ({ systemRepairId }: Choice) => systemRepairId !== null && systemRepairIds.includes(systemRepairId);
  const chosen = listChoices(problem).flatMap(({ choices }) => {
    const sprayId = choices.find(isSprayed)?.systemRepairId ?? null;
    return choices.filter(({ leakId, repairId, systemRepairId }) => {
      const wanted = leakId === null ? null : (repairOf.get(leakId) ?? null);
      return repairId === wanted && systemRepairId === sprayId;
    });
  });
  const sprays = problem.systemRepairs.filter(({ id }) => systemRepairIds.includes(id));
  const shared = sharedCostsFor(problem, measures, systemRepairIds);
  const paid = [...chosen, ...sprays, ...shared];
  const labourHours = sumOf(paid, (item) => item.labourHours);
  const hasWork = measures.length + systemRepairIds.length > 0;
  const visitsCount = problem.visits === null || !hasWork ? 0 : visitsFor(labourHours, problem.visits.labourHoursEach);
  const beforeTax =
    sumOf(paid, (item) => item.beforeTaxUsdCents) + visitsCount * (problem.visits?.beforeTaxUsdCents ?? 0);
  const price = sumOf(paid, (item) => item.costUsdCents) + visitsCount * (problem.visits?.costUsdCents ?? 0);
  const removedCfm25 = sumOf(chosen, (choice) => choice.removedCfm25);
  const variance =
    problem.beforeStandardUncertaintyCfm25 ** 2 +
    sumOf(chosen, (choice) => choice.removedVariance) +
    sumOf(sprays, (spray) => sprayVariance(problem, spray));
  const predictedCfm25 = problem.beforeCfm25 - removedCfm25;
  const predictedStandardUncertaintyCfm25 = Math.sqrt(variance);
  const probability = (limit: number): number => {
    if (predictedStandardUncertaintyCfm25 === 0) return predictedCfm25 <= limit ? 1 : 0;
    return normalCdf(limit, predictedCfm25, predictedStandardUncertaintyCfm25);
  };
  return {
    measures,
    systemRepairIds,
    sharedCostIds: shared.map(({ id }) => id).sort(),
    visitsCount,
    priceUsdCents: price + (hasWork ? topUpUsdCents(problem, beforeTax) : 0),
    labourHours,
    lifetimeValueUsd: sumOf(chosen, (choice) => choice.valueUsd),
    removedCfm25,
    predictedCfm25,
    predictedStandardUncertaintyCfm25,
    probabilityOfReachingTarget: limitCfm25 === undefined ? null : probability(limitCfm25),
  };
}
