import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { countedShare } from "./choices.ts";
import { evaluateScope } from "./evaluate-scope.ts";
import type { OutOfReach, ScopeGoal, ScopeProblem } from "./scope-problem.ts";
import { solveWeighted, type WeightedRequest } from "./solve-weighted.ts";

/** Among scopes that reach equally far the cheaper one: a millionth of a cfm for each dollar. */
const SEALED_FIRST = { perUsd: 1e-6, perRemovedCfm25: -1, perValueUsd: 0 };
/** Without a target the expected leakage is what counts. */
const EVEN_CHANCE = 0.5;

/** What can be reached when the goal cannot, and what stands in the way. */
export async function outOfReach({
  problem,
  goal,
  solve,
  nodeLimitCount,
}: Pick<WeightedRequest, "problem" | "solve" | "nodeLimitCount"> & { goal: ScopeGoal }): Promise<OutOfReach> {
  const probability = goal.target?.probability ?? EVEN_CHANCE;
  const ask = (limits: WeightedRequest["limits"], more: Partial<WeightedRequest>) =>
    solveWeighted({ problem, weights: SEALED_FIRST, limits, solve, nodeLimitCount, ...more });
  const { budgetUsdCents, labourHours, leastRemovedCfm25 } = goal;
  const hasLimits = budgetUsdCents !== undefined || labourHours !== undefined;
  const closest =
    (await ask({ budgetUsdCents, labourHours }, { lowestAtProbability: probability })) ?? nothing(problem);
  const free = hasLimits ? await ask({ leastRemovedCfm25 }, { target: goal.target }) : null;
  const zScore = normalQuantile(probability, 0, 1);
  const doubtCfm25 = zScore * closest.predictedStandardUncertaintyCfm25;
  return {
    reachableCfm25: closest.predictedCfm25 + doubtCfm25,
    closest,
    notYetFoundCfm25: leftUnfound(problem, closest.systemRepairIds),
    withoutRepairCfm25: problem.leaks
      .filter(
        (leak) =>
          leak.repairs.length === 0 && !problem.systemRepairs.some((spray) => spray.reachesLeakIds.includes(leak.id)),
      )
      .reduce((sum, leak) => sum + leak.cfm25 * countedShare(problem, leak), 0),
    leftByRepairsCfm25: closest.measures.reduce((sum, { leakId, repairId }) => {
      const leak = problem.leaks.find(({ id }) => id === leakId)!;
      const repair = leak.repairs.find(({ id }) => id === repairId)!;
      return sum + leak.cfm25 * countedShare(problem, leak) * repair.remainingShare;
    }, 0),
    doubtCfm25,
    isHeldBackByLimits: free !== null,
  };
}

function nothing(problem: ScopeProblem) {
  return { ...evaluateScope({ problem, measures: [], systemRepairIds: [] }), provenOptimal: true, gapRatio: 0 };
}

function leftUnfound(problem: ScopeProblem, sprayIds: readonly string[]): number {
  return problem.notYetFound.reduce((sum, { systemId, cfm25, toOutsideCfm25 }) => {
    const spray = problem.systemRepairs.find((repair) => repair.systemId === systemId && sprayIds.includes(repair.id));
    return sum + (problem.measure === "total" ? cfm25 : toOutsideCfm25) * (spray?.remainingShare ?? 1);
  }, 0);
}
