import { checkScopeGoal, checkScopeProblem } from "./check-scope-problem.ts";
import type { ObjectiveWeights } from "./model-draft.ts";
import { outOfReach } from "./out-of-reach.ts";
import type { ScopeGoal, ScopeOutcome, ScopeProblem } from "./scope-problem.ts";
import { solveWeighted } from "./solve-weighted.ts";
import type { MixedIntegerSolver } from "./solver.ts";

/** At an equal price more is sealed: less than half a cent for all the leakage there is, so a cent always wins. */
const TIE_USD = 0.004;
/** Where money is not the aim, the lower price wins among equals: a millionth of the aim for each dollar. */
const TIE_PER_USD = 1e-6;

export interface ScopeRequest {
  problem: ScopeProblem;
  goal: ScopeGoal;
  solve: MixedIntegerSolver;
  nodeLimitCount?: number;
}

function weightsOf(problem: ScopeProblem, want: ScopeGoal["want"]): ObjectiveWeights {
  switch (want) {
    case "least-price":
      return { perUsd: 1, perRemovedCfm25: -TIE_USD / Math.max(1, problem.beforeCfm25), perValueUsd: 0 };
    case "most-net-value":
      return { perUsd: 1, perRemovedCfm25: 0, perValueUsd: -1 };
    case "most-value":
      return { perUsd: TIE_PER_USD, perRemovedCfm25: 0, perValueUsd: -1 };
    case "most-sealed":
      return { perUsd: TIE_PER_USD, perRemovedCfm25: -1, perValueUsd: 0 };
  }
}

/**
 * The best scope for a goal, with proof, or what can be had instead.
 *
 * The target holds with probability p when mean left + z_p √(u² + V) ≤ limit, V the sum of the chosen repairs'
 * variances. The root is replaced by chords between breakpoints of V (a mixed-integer programme); chords lie below the
 * root, so every scope that meets the target is allowed. A solution that meets the chords but misses the target adds a
 * breakpoint at its own V, where the chord touches the root, and is thereby ruled out; the first solution that truly
 * meets the target is therefore the optimum. Ends because each step rules out at least one of finitely many scopes.
 * Ties: at an equal price more is sealed; then the lower id. Valid for p from 0.5 to 0.999. Source: own-method;
 * jcgm-106 for the probability. Left out: the shape of the distributions beyond mean and variance.
 * @throws InputProblem on unusable input, and "solver-failed" when the node limit is met before any scope is found.
 */
export async function optimizeScope({ problem, goal, solve, nodeLimitCount }: ScopeRequest): Promise<ScopeOutcome> {
  checkScopeProblem(problem);
  checkScopeGoal(goal);
  const { want, target, ...limits } = goal;
  const weights = weightsOf(problem, want);
  const scope = await solveWeighted({ problem, weights, limits, target, solve, nodeLimitCount });
  if (scope !== null) return { kind: "scope", scope };
  return { kind: "out-of-reach", why: await outOfReach({ problem, goal, solve, nodeLimitCount }) };
}
