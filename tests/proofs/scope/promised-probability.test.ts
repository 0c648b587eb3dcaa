import { describe, expect, it } from "vitest";
import { optimizeScope } from "#lib/scope/optimize-scope.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { expectClose } from "#tests/expect-close.ts";
import { randomProblem, withBefore } from "#tests/scope/random-problem.ts";
import { simulateJobs } from "#tests/scope/simulated-jobs.ts";

const solve = await createHighsSolver();
const JOBS_COUNT = 20_000;
/** Three standard errors of a share from 20,000 jobs, and a point for taking skewed sums as normal. */
const slack = (probability: number) => 3 * Math.sqrt((probability * (1 - probability)) / JOBS_COUNT) + 0.01;

describe("the promised probability against 20,000 simulated jobs", () => {
  for (const probability of [0.6, 0.8, 0.9, 0.95]) {
    for (const hasSpray of [false, true]) {
      it(`keeps ${probability * 100} % ${hasSpray ? "with" : "without"} spraying, on six houses`, async () => {
        for (let seed = 1; seed <= 6; seed += 1) {
          const problem = withBefore(randomProblem({ seed: seed * 13, leaksCount: 24, repairsCount: 3, hasSpray }));
          const limitCfm25 = problem.beforeCfm25 * 0.5;
          const outcome = await optimizeScope({
            problem,
            goal: { want: "least-price", target: { limitCfm25, probability } },
            solve,
          });
          if (outcome.kind !== "scope") throw new Error("expected to be reachable");
          const { scope } = outcome;
          const jobs = simulateJobs({ problem, scope, limitCfm25, jobsCount: JOBS_COUNT, seed });
          expect(jobs.reachedShare).toBeGreaterThanOrEqual(probability - slack(probability));
          const standardError = scope.predictedStandardUncertaintyCfm25 / Math.sqrt(JOBS_COUNT);
          expect(Math.abs(jobs.meanCfm25 - scope.predictedCfm25)).toBeLessThan(4 * standardError);
          if (scope.systemRepairIds.length > 0) {
            // Spraying counts its spread on everything within reach, so the promise is on the safe side.
            expect(jobs.standardDeviationCfm25).toBeLessThanOrEqual(scope.predictedStandardUncertaintyCfm25 * 1.02);
            continue;
          }
          // Near even odds the skew of the leaks' sizes shows most: another point.
          const miss = Math.abs(jobs.reachedShare - scope.probabilityOfReachingTarget!);
          expect(miss).toBeLessThanOrEqual(slack(probability) + 0.01);
          const expected = scope.predictedStandardUncertaintyCfm25;
          const reason = "a standard deviation from 20,000 draws is good to about 0.5 %";
          expectClose({ actual: jobs.standardDeviationCfm25, expected, relativeTolerance: 0.025, reason });
        }
      });
    }
  }
});
