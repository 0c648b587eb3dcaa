import { optimizeScope } from "#lib/scope/optimize-scope.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { randomProblem, withBefore } from "#tests/scope/random-problem.ts";

/** Houses measured; the middle one is reported. */
const HOUSES_COUNT = 9;

/**
 * Milliseconds to the proven cheapest scope that reaches a target with 90 %: 60 leaks, four repairs each, shared
 * set-ups, trips and a least charge. Loading the solver is left out, the first house warms it up.
 */
export async function measureSolver60Leaks(): Promise<{ name: string; value: number; unit: string }> {
  const solve = await createHighsSolver();
  const durationsMs: number[] = [];
  for (let seed = 0; seed <= HOUSES_COUNT; seed += 1) {
    const problem = withBefore(randomProblem({ seed, leaksCount: 60, repairsCount: 4 }));
    const target = { limitCfm25: problem.beforeCfm25 * 0.4, probability: 0.9 };
    const start = performance.now();
    const outcome = await optimizeScope({ problem, goal: { want: "least-price", target }, solve });
    if (outcome.kind !== "scope" || !outcome.scope.provenOptimal) throw new Error(`House ${seed} was not solved`);
    if (seed > 0) durationsMs.push(performance.now() - start);
  }
  durationsMs.sort((one, other) => one - other);
  return { name: "solver-60-leaks-ms", value: durationsMs[Math.floor(durationsMs.length / 2)]!, unit: "ms" };
}
