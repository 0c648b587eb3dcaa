import { beforeAll, describe, expect, test } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { exploreScopes, type ScopePoint } from "#lib/estimate/explore-scopes.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { MixedIntegerSolver } from "#lib/scope/solver.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

let solve: MixedIntegerSolver;
beforeAll(async () => {
  solve = await createHighsSolver();
});

const picked = (job: Job, measures: readonly { siteId: string; repairId: string }[]): Job => ({
  ...job,
  plan: { ...job.plan, chosenMeasures: measures.map(({ siteId, repairId }) => ({ siteId, repairId })) },
});

describe.each(["cold-attic-furnace.json", "hot-humid-two-systems.json"])("price against leakage left: %s", (file) => {
  let job: Job;
  let reference: ReferenceData;
  let points: readonly ScopePoint[];
  beforeAll(async () => {
    ({ job, reference } = await exampleWithReference(file));
    points = await exploreScopes(job, reference, { solve });
  });

  test("each point costs more than the one before and leaves less, and is proven", () => {
    expect(points.length).toBeGreaterThan(3);
    points.slice(1).forEach((point, index) => {
      expect(point.priceUsdCents).toBeGreaterThan(points[index]!.priceUsdCents);
      expect(point.predictedCfm25).toBeLessThan(points[index]!.predictedCfm25);
    });
    expect(points.every(({ provenOptimal }) => provenOptimal)).toBe(true);
  });

  test("no option of the estimate lies below the lines between the points, to the cent", async () => {
    const { scope, leakage } = await estimate(job, reference, { solve });
    const today = (scope.target?.measure === "to-outside" ? leakage.toOutsideCfm25 : leakage.totalCfm25).value;
    const corners = [{ priceUsdCents: 0, predictedCfm25: today }, ...points];
    for (const { priceUsdCents, predictedCfm25 } of scope.options) {
      const left = predictedCfm25.value;
      const onLines = corners.flatMap((from, index) =>
        corners
          .slice(index + 1)
          .filter((to) => from.predictedCfm25 >= left - 1e-3 && left + 1e-3 >= to.predictedCfm25)
          .map((to) => {
            const share = (from.predictedCfm25 - left) / (from.predictedCfm25 - to.predictedCfm25);
            return from.priceUsdCents + share * (to.priceUsdCents - from.priceUsdCents);
          }),
      );
      expect(onLines.length).toBeGreaterThan(0);
      expect(priceUsdCents).toBeGreaterThanOrEqual(Math.min(...onLines) - 1);
    }
  });

  test("a point that is picked is, in the estimate, the same price to the cent and the same leakage left", async () => {
    for (const point of points) {
      const { scope } = await estimate(picked(job, point.measures), reference);
      const [option] = scope.options;
      expect(scope.chosen).toBe("chosen");
      expect(option!.priceUsdCents).toBe(point.priceUsdCents);
      expect(option!.probabilityOfReachingTarget).toBe(point.probabilityOfReachingTarget);
      expectClose({
        actual: point.predictedCfm25,
        expected: option!.predictedCfm25.value,
        relativeTolerance: 1e-6,
        reason: "the estimate sums over systems, the search over leaks",
      });
      expect(new Set(point.leavesUndone.map(({ siteId }) => siteId))).toEqual(
        new Set(option!.leavesUndone.map(({ siteId }) => siteId)),
      );
    }
  });

  test("picked measures that are an option's own work are that option, once", async () => {
    const { scope } = await estimate(job, reference, { solve });
    for (const option of scope.options) {
      const again = (await estimate(picked(job, option.measures), reference, { solve })).scope;
      expect(again.chosen).toBe(option.id);
      expect(again.options.map(({ id }) => id).sort()).toEqual(scope.options.map(({ id }) => id).sort());
    }
  });
});

test("a house without a leak found has no scope to look at", async () => {
  const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
  expect(await exploreScopes({ ...job, sites: [] }, reference, { solve })).toEqual([]);
});
