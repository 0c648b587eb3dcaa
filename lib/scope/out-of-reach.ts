import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { countedShare } from "./choices.ts";
import { evaluateScope } from "./evaluate-scope.ts";
import { sayCfm25, unfoundLeft } from "./left-undone.ts";
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
    notYetFoundCfm25: unfoundLeft(problem, closest.systemRepairIds),
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

/** What can be reached instead and why not more, in plain sentences. */
export function explainOutOfReach(why: OutOfReach, limitCfm25: number): string[] {
  const reasons = [
    why.isHeldBackByLimits ? "The budget or the hours end before the target is reached." : "",
    why.notYetFoundCfm25 >= 1
      ? `${sayCfm25(why.notYetFoundCfm25)} leak where nobody has found it yet; it must be found first.`
      : "",
    why.withoutRepairCfm25 >= 1 ? `${sayCfm25(why.withoutRepairCfm25)} come from leaks without a fitting repair.` : "",
    why.leftByRepairsCfm25 >= 1
      ? `The repairs themselves are expected to leave ${sayCfm25(why.leftByRepairsCfm25)}.`
      : "",
    why.doubtCfm25 >= 1 ? `Being this sure takes a margin of ${sayCfm25(why.doubtCfm25)} for doubt.` : "",
  ];
  return [
    `The target of ${sayCfm25(limitCfm25)} cannot be promised; ${sayCfm25(why.reachableCfm25)} can.`,
    ...reasons.filter((reason) => reason !== ""),
  ];
}
