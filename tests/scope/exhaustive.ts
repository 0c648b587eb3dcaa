import type { RepairOfLeak, ScopeGoal, ScopeProblem } from "#lib/scope/scope-problem.ts";

/**
 * An independent count of one scope, written straight from the problem's meaning: nothing of the model or of the
 * evaluation under test is used. The normal quantile is taken from a table in the caller.
 */
export interface CountedScope {
  measures: RepairOfLeak[];
  sprayed: boolean;
  priceUsd: number;
  hours: number;
  removed: number;
  variance: number;
  value: number;
}

export function countScope(problem: ScopeProblem, picks: readonly number[], sprayed: boolean): CountedScope | null {
  const spray = sprayed ? problem.systemRepairs[0]! : null;
  const measures: RepairOfLeak[] = [];
  let cents = spray?.costUsdCents ?? 0;
  let beforeTax = spray?.beforeTaxUsdCents ?? 0;
  let hours = spray?.labourHours ?? 0;
  let removed = 0;
  let variance = problem.beforeStandardUncertaintyCfm25 ** 2;
  let value = 0;
  let reachedFlow = 0;
  let reachedDoubt = 0;
  problem.leaks.forEach((leak, index) => {
    const share = problem.measure === "total" ? 1 : leak.toOutsideShare;
    const flow = leak.cfm25 * share;
    const doubt = leak.standardUncertaintyCfm25 * share;
    const repair = picks[index] === 0 ? null : leak.repairs[picks[index]! - 1]!;
    const isReached = spray?.reachesLeakIds.includes(leak.id) ?? false;
    if (spray && isReached) {
      reachedFlow += flow;
      reachedDoubt += doubt ** 2;
    }
    const left = (repair ? repair.remainingShare : 1) * (spray && isReached ? spray.remainingShare : 1);
    const spread = (repair ? repair.remainingSpreadShare : 0) * (spray && isReached ? spray.remainingShare : 1);
    removed += flow * (1 - left);
    value += leak.lifetimeValueUsd * (1 - left);
    variance += doubt ** 2 * (1 - left) ** 2 + (flow ** 2 + doubt ** 2) * spread ** 2;
    if (repair) {
      measures.push({ leakId: leak.id, repairId: repair.id });
      cents += repair.costUsdCents;
      beforeTax += repair.beforeTaxUsdCents;
      hours += repair.labourHours;
    }
  });
  const does = ({ leakId, repairId }: { leakId: string; repairId: string | null }) =>
    measures.some((m) => m.leakId === leakId && (repairId === null || m.repairId === repairId));
  if (problem.exclusions.some(([left, right]) => does(left) && does(right))) return null;
  if (problem.prerequisites.some(({ repair, needs }) => does(repair) && !does(needs))) return null;
  if (spray?.needsRepairedLeakIds.some((id) => !measures.some(({ leakId }) => leakId === id))) return null;
  if (spray?.sparesHandAtLeakIds?.some((id) => measures.some(({ leakId }) => leakId === id))) return null;
  for (const cell of problem.notYetFound) {
    if (spray?.systemId !== cell.systemId) continue;
    const flow = problem.measure === "total" ? cell.cfm25 : cell.toOutsideCfm25;
    reachedFlow += flow;
    removed += flow * (1 - spray.remainingShare);
    value += cell.lifetimeValueUsd * (1 - spray.remainingShare);
  }
  if (spray) variance += (reachedFlow ** 2 + reachedDoubt) * spray.remainingSpreadShare ** 2;
  const isAny = measures.length > 0 || sprayed;
  for (const shared of problem.sharedCosts) {
    const { neededFor } = shared;
    const isNeeded =
      neededFor.kind === "any-work"
        ? isAny
        : neededFor.kind === "place"
          ? measures.some((m) => problem.leaks.find((leak) => leak.id === m.leakId)!.placeId === neededFor.placeId)
          : measures.some((m) => neededFor.repairIds.includes(m.repairId));
    if (!isNeeded) continue;
    cents += shared.costUsdCents;
    beforeTax += shared.beforeTaxUsdCents;
    hours += shared.labourHours;
  }
  if (isAny && problem.visits) {
    const visits = Math.max(1, Math.ceil(hours / problem.visits.labourHoursEach));
    cents += visits * problem.visits.costUsdCents;
    beforeTax += visits * problem.visits.beforeTaxUsdCents;
  }
  let priceUsd = cents / 100;
  if (isAny && problem.minimumCharge) {
    const missing = Math.max(0, problem.minimumCharge.minimumUsdCents - beforeTax);
    priceUsd += (missing * (1 + (problem.minimumCharge.topUpTaxRates[0] ?? 0))) / 100;
  }
  return { measures, sprayed, priceUsd, hours, removed, variance, value };
}

/** Looks at every scope there is. Returns the best by the goal, or null when none meets it. */
export function searchAll(problem: ScopeProblem, goal: ScopeGoal, zScore: number): CountedScope | null {
  const picks = problem.leaks.map(() => 0);
  let best: CountedScope | null = null;
  let bestScore = Number.NEGATIVE_INFINITY;
  const score = (scope: CountedScope): number => {
    if (goal.want === "least-price") return -scope.priceUsd;
    if (goal.want === "most-net-value") return scope.value - scope.priceUsd;
    return goal.want === "most-value" ? scope.value : scope.removed;
  };
  const visit = (index: number, sprayed: boolean): void => {
    if (index < problem.leaks.length) {
      for (let pick = 0; pick <= problem.leaks[index]!.repairs.length; pick += 1) {
        picks[index] = pick;
        visit(index + 1, sprayed);
      }
      return;
    }
    const scope = countScope(problem, picks, sprayed);
    if (!scope) return;
    if (goal.budgetUsdCents !== undefined && scope.priceUsd > goal.budgetUsdCents / 100 + 1e-7) return;
    if (goal.labourHours !== undefined && scope.hours > goal.labourHours + 1e-7) return;
    if (
      goal.target &&
      problem.beforeCfm25 - scope.removed + zScore * Math.sqrt(scope.variance) > goal.target.limitCfm25
    )
      return;
    if (score(scope) > bestScore) {
      best = scope;
      bestScore = score(scope);
    }
  };
  for (const sprayed of problem.systemRepairs.length > 0 ? [false, true] : [false]) visit(0, sprayed);
  return best;
}
