import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { addRootTerms, firstBreakpoints } from "./chance-rows.ts";
import { mostRemovedVariance } from "./choices.ts";
import { evaluateScope } from "./evaluate-scope.ts";
import { addRow, type ObjectiveWeights } from "./model-draft.ts";
import { draftScopeModel, type ScopeColumns, type ScopeLimits } from "./scope-model.ts";
import type { ChosenScope, ScopeGoal, ScopeProblem } from "./scope-problem.ts";
import type { MixedIntegerSolver } from "./solver.ts";

/** Nodes of the search at most. 60 unlike leaks take fewer than a hundred, 60 nearly alike ones sometimes thousands. */
const DEFAULT_NODE_LIMIT_COUNT = 5000;
/** Each solve that misses the target by its chords adds a breakpoint; a handful is usual. */
const MOST_REFINEMENTS_COUNT = 60;
/** How far the solver's own tolerance may miss the target, cfm: a hundredth of what any gauge can tell. */
const TARGET_TOLERANCE_CFM25 = 1e-4;
/** How closely the lowest limit within reach is found, cfm. */
const REACH_TOLERANCE_CFM25 = 1e-3;

export interface WeightedRequest {
  problem: ScopeProblem;
  /** What is minimized. */
  weights: ObjectiveWeights;
  limits: ScopeLimits;
  target?: ScopeGoal["target"];
  /** Without a target: adds the doubt at this probability to the objective, which finds the lowest limit in reach. */
  lowestAtProbability?: number;
  solve: MixedIntegerSolver;
  nodeLimitCount?: number;
}

/** The repairs that a solution switched on. */
function readChoice(at: ScopeColumns, values: readonly number[]) {
  const isOn = (column: number) => values[column]! > 0.5;
  const measures = at.choices.flatMap(({ column, choice: { leakId, repairId } }) =>
    isOn(column) && leakId !== null && repairId !== null ? [{ leakId, repairId }] : [],
  );
  return { measures, systemRepairIds: [...at.sprays].flatMap(([id, column]) => (isOn(column) ? [id] : [])) };
}

/**
 * The best scope for any linear objective; null when no choice meets the limits and the target.
 * The method stands at `optimizeScope`.
 * @throws InputProblem "solver-failed" when the node limit is met before any scope is found.
 */
export async function solveWeighted({
  problem,
  weights,
  limits,
  target,
  solve,
  nodeLimitCount = DEFAULT_NODE_LIMIT_COUNT,
  lowestAtProbability,
}: WeightedRequest): Promise<ChosenScope | null> {
  const zScore = normalQuantile(target?.probability ?? lowestAtProbability ?? 0.5, 0, 1);
  const fixedVariance = problem.beforeStandardUncertaintyCfm25 ** 2;
  const mostVariance = mostRemovedVariance(problem);
  let breakpoints = zScore > 0 ? firstBreakpoints({ fixedVariance, mostVariance }) : [0];
  for (let refinement = 0; refinement < MOST_REFINEMENTS_COUNT; refinement += 1) {
    const { draft, at } = draftScopeModel({ problem, weights, limits });
    const root = addRootTerms(draft, { fixedVariance, breakpoints });
    if (target) {
      const doubt = root.terms.map((term) => ({ ...term, coefficient: -zScore * term.coefficient }));
      const lower = problem.beforeCfm25 - target.limitCfm25 + zScore * root.constant;
      addRow(draft, { name: "target", lower, upper: Infinity, terms: [...draft.tallies.removedCfm25, ...doubt] });
    } else if (lowestAtProbability !== undefined) {
      for (const { column, coefficient } of root.terms) {
        const entry = draft.columns[column]!;
        draft.columns[column] = { ...entry, objective: entry.objective + zScore * coefficient };
      }
    }
    const solution = await solve({ columns: draft.columns, rows: draft.rows, nodeLimitCount });
    if (solution.status === "infeasible") return null;
    if (solution.values === null) {
      throw new InputProblem("solver-failed", [], `No scope was found within ${nodeLimitCount} nodes`);
    }
    const scope = evaluateScope({ problem, ...readChoice(at, solution.values), limitCfm25: target?.limitCfm25 });
    const variance = scope.predictedStandardUncertaintyCfm25 ** 2 - fixedVariance;
    const chords =
      root.constant + root.terms.reduce((sum, term) => sum + term.coefficient * solution.values![term.column]!, 0);
    const shortfallCfm25 = zScore * (scope.predictedStandardUncertaintyCfm25 - chords);
    const misses = target
      ? scope.predictedCfm25 + zScore * scope.predictedStandardUncertaintyCfm25 >
        target.limitCfm25 + TARGET_TOLERANCE_CFM25
      : lowestAtProbability !== undefined && shortfallCfm25 > REACH_TOLERANCE_CFM25;
    if (!misses) {
      const gap = Math.max(0, solution.objective - solution.bound);
      const gapRatio = solution.status === "optimal" ? 0 : gap / Math.max(1e-9, Math.abs(solution.objective));
      return { ...scope, provenOptimal: solution.status === "optimal", gapRatio };
    }
    if (breakpoints.includes(variance)) break;
    breakpoints = [...breakpoints, variance].sort((left, right) => left - right);
  }
  throw new InputProblem(
    "solver-failed",
    [],
    "The solver's tolerance is too coarse for these leaks to prove that the target is reached",
  );
}
