import { describe, expect, it } from "vitest";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { scopeFrontier } from "#lib/scope/frontier.ts";
import { jobScopeProblem } from "#lib/scope/job-scope-problem.ts";
import { chosenByHand, pricedOption } from "#lib/scope/priced-option.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { ADVICE_BY_VALUE, aimedScope, scopeOptions } from "#lib/scope/scope-options.ts";
import type { ScopeProblem } from "#lib/scope/scope-problem.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { expectClose } from "#tests/expect-close.ts";
import { countScope } from "./exhaustive.ts";
import { JOB_PLACES, randomFindings } from "./random-job.ts";
import { randomProblem, withBefore } from "./random-problem.ts";

const solve = await createHighsSolver();

/** Price and removal of every scope there is. */
function allScopes(problem: ScopeProblem): { priceUsd: number; removed: number }[] {
  const found: { priceUsd: number; removed: number }[] = [];
  const picks = problem.leaks.map(() => 0);
  const visit = (index: number): void => {
    if (index === picks.length) {
      const scope = countScope(problem, picks, false);
      if (scope) found.push(scope);
      return;
    }
    for (let pick = 0; pick <= problem.leaks[index]!.repairs.length; pick += 1) {
      picks[index] = pick;
      visit(index + 1);
    }
  };
  visit(0);
  return found;
}

describe("the frontier", () => {
  it("has only scopes that no other one beats in both price and leakage, by looking at all of them", async () => {
    for (const seed of [1, 2, 3]) {
      const problem = withBefore(randomProblem({ seed, leaksCount: 7, repairsCount: 2 }));
      const points = await scopeFrontier({ problem, solve });
      const all = allScopes(problem);
      expect(points.length).toBeGreaterThan(5);
      for (const { priceUsdCents, removedCfm25 } of points) {
        const better = all.filter(
          ({ priceUsd, removed }) => priceUsd < priceUsdCents / 100 - 0.011 && removed > removedCfm25 + 1e-4,
        );
        expect(better).toEqual([]);
      }
    }
  });

  it("holds every corner of the lower hull of all scopes", async () => {
    for (const seed of [1, 2, 3]) {
      const problem = withBefore(randomProblem({ seed, leaksCount: 7, repairsCount: 2 }));
      const points = await scopeFrontier({ problem, solve });
      const corners: { priceUsd: number; removed: number }[] = [];
      // Lower hull by Andrew's monotone chain, up to the tightest scope.
      const sorted = allScopes(problem).sort(
        (one, other) => one.removed - other.removed || one.priceUsd - other.priceUsd,
      );
      for (const point of sorted) {
        while (corners.length > 1) {
          const [before, last] = corners.slice(-2) as [typeof point, typeof point];
          const turn =
            (last.removed - before.removed) * (point.priceUsd - before.priceUsd) -
            (last.priceUsd - before.priceUsd) * (point.removed - before.removed);
          if (turn > 1e-9) break;
          corners.pop();
        }
        corners.push(point);
      }
      expect(corners.length).toBeGreaterThan(4);
      for (const { priceUsd, removed } of corners) {
        const isHeld = points.some(
          (point) =>
            Math.abs(point.priceUsdCents / 100 - priceUsd) < 0.02 && Math.abs(point.removedCfm25 - removed) < 1e-3,
        );
        expect(isHeld, `${priceUsd} USD, ${removed} cfm of house ${seed}`).toBe(true);
      }
    }
  });

  it("runs from nothing done to all that can be sealed, dearer and tighter at each step", async () => {
    const problem = withBefore(randomProblem({ seed: 4, leaksCount: 30, repairsCount: 2, hasSpray: true }));
    const points = await scopeFrontier({ problem, solve });
    expect(points[0]).toMatchObject({ priceUsdCents: 0, removedCfm25: 0 });
    expect(points.length).toBeLessThanOrEqual(16);
    points.slice(1).forEach((point, index) => {
      expect(point.priceUsdCents).toBeGreaterThan(points[index]!.priceUsdCents);
      expect(point.removedCfm25).toBeGreaterThan(points[index]!.removedCfm25);
      expect(point.provenOptimal).toBe(true);
    });
  });

  it("is the one point of doing nothing when there is nothing to repair", async () => {
    const problem = { ...withBefore(randomProblem({ seed: 4, leaksCount: 2, repairsCount: 0 })), systemRepairs: [] };
    expect(await scopeFrontier({ problem, solve })).toMatchObject([{ measures: [], priceUsdCents: 0 }]);
  });
});

describe("options side by side", () => {
  const findings = randomFindings(11, 14).map((found) => ({
    ...found,
    cfm25: Math.min(60, found.cfm25),
    standardUncertaintyCfm25: 4,
  }));
  const suspect = findings.find(({ site }) => site.kind !== "disconnected-run")!;
  suspect.site = { ...suspect.site, isSuspectedAsbestos: true };
  const beforeCfm25 = findings.reduce((sum, { cfm25 }) => sum + cfm25, 40);
  const jobProblem = jobScopeProblem({
    findings,
    places: JOB_PLACES,
    catalogue: STARTING_CATALOGUE,
    book: DEMO_PRICE_BOOK,
    measure: "total",
    beforeCfm25,
    beforeStandardUncertaintyCfm25: 12,
    notYetFound: [{ systemId: "upstairs", cfm25: 40, toOutsideCfm25: 30, lifetimeValueUsd: 300 }],
    offersSpray: true,
  });
  const target = { limitCfm25: beforeCfm25 * 0.45, probability: 0.9 };

  it("are the essential, the target and everything, each dearer than the one before and none twice", async () => {
    const { options, recommendedId, outOfReach } = await scopeOptions({ problem: jobProblem.problem, target, solve });
    expect(outOfReach).toEqual([]);
    expect(recommendedId).toBe("target");
    expect(options.map(({ id }) => id)).toContain("target");
    const prices = options.map(({ scope }) => scope.priceUsdCents);
    expect(prices).toEqual([...prices].sort((one, other) => one - other));
    const at = (id: string) => options.find((option) => option.id === id)!.scope;
    expect(at("target").probabilityOfReachingTarget).toBeGreaterThanOrEqual(0.9 - 1e-6);
    expect(at("essential").removedCfm25).toBeGreaterThanOrEqual(at("target").removedCfm25 / 2 - 1e-6);
    expect(at("essential").probabilityOfReachingTarget).toBeLessThan(0.9);
  });

  it("carry measures, price lines, materials and reasons that fit together", async () => {
    const { options } = await scopeOptions({ problem: jobProblem.problem, target, solve });
    for (const option of options) {
      const priced = pricedOption({ jobProblem, book: DEMO_PRICE_BOOK, option, asbestosSiteIds: [suspect.site.id] });
      expect(priced.price.priceUsdCents).toBe(option.scope.priceUsdCents);
      const removed = priced.measures.reduce((sum, measure) => sum + measure.removesCfm25, 0);
      expectClose({
        actual: removed,
        expected: option.scope.removedCfm25,
        relativeTolerance: 1e-9,
        reason: "the same sum in another order",
      });
      const own = priced.measures.reduce((sum, measure) => sum + measure.priceUsdCents, 0);
      expect(own).toBeLessThan(priced.price.priceUsdCents);
      const handled = new Set([
        ...priced.measures.map(({ siteId }) => siteId),
        ...priced.leavesUndone.map(({ siteId }) => siteId),
      ]);
      const sprayed = jobProblem.problem.systemRepairs
        .filter(({ id }) => option.scope.systemRepairIds.includes(id))
        .flatMap(({ reachesLeakIds }) => reachesLeakIds);
      expect(findings.map(({ site }) => site.id).filter((id) => !handled.has(id) && !sprayed.includes(id))).toEqual([]);
      expect(priced.leavesUndone.find(({ siteId }) => siteId === suspect.site.id)?.code).toBe("suspected-asbestos");
      expect(priced.materials.every(({ amount }) => amount > 0)).toBe(true);
    }
  });

  const beyondReach = { limitCfm25: 1, probability: 0.9 };

  it("advise what is worth most beyond its price, closest beside it, and say why, when the target is out of reach", async () => {
    const { options, recommendedId, outOfReach } = await scopeOptions({
      problem: jobProblem.problem,
      target: beyondReach,
      solve,
    });
    expect(recommendedId).toBe("everything");
    expect(outOfReach[0]).toMatch(/cannot be promised; .* can/);
    expect(outOfReach.at(-1)).toBe(ADVICE_BY_VALUE);
    const at = (id: string) => options.find((option) => option.id === id)!.scope;
    const net = (id: string) => at(id).lifetimeValueUsd - at(id).priceUsdCents / 100;
    expect(net("everything")).toBeGreaterThan(0);
    expect(net("everything")).toBeGreaterThan(net("closest"));
    expect(at("closest").predictedCfm25).toBeLessThan(at("everything").predictedCfm25);
    expect(options.some(({ id }) => id === "target")).toBe(false);
  });

  it("advise what comes closest to a target out of reach where no work is worth its price", async () => {
    const worthless = {
      ...jobProblem.problem,
      leaks: jobProblem.problem.leaks.map((leak) => ({ ...leak, lifetimeValueUsd: 1 })),
      notYetFound: [],
    };
    const { recommendedId, outOfReach } = await scopeOptions({ problem: worthless, target: beyondReach, solve });
    expect(recommendedId).toBe("closest");
    expect(outOfReach).not.toContain(ADVICE_BY_VALUE);
  });

  it("advise what seals most in the hours, target out of reach or not, when the hours are the aim", async () => {
    const { recommendedId } = await scopeOptions({
      problem: jobProblem.problem,
      target: beyondReach,
      objective: "crew-hours",
      labourHours: 9,
      solve,
    });
    expect(recommendedId).toBe("limited");
  });

  it("recommend the most value, or the most sealed in the hours, when the plan asks for that", async () => {
    const forValue = await scopeOptions({
      problem: jobProblem.problem,
      target,
      objective: "most-value",
      budgetUsdCents: 300_000,
      solve,
    });
    expect(forValue.recommendedId).toBe("everything");
    expect(forValue.options.every(({ scope }) => scope.priceUsdCents <= 300_000)).toBe(true);
    const inHours = await scopeOptions({
      problem: jobProblem.problem,
      target,
      objective: "crew-hours",
      labourHours: 9,
      solve,
    });
    expect(inHours.recommendedId).toBe("limited");
    expect(inHours.options.length).toBeLessThanOrEqual(3);
    expect(inHours.options.every(({ scope }) => scope.labourHours <= 9 + 1e-6)).toBe(true);
    const without = scopeOptions({ problem: jobProblem.problem, objective: "crew-hours", solve });
    await expect(without).rejects.toThrow(/crewHours/);
  });

  it("offer nothing where nothing is worth its price and no target asks for it", async () => {
    const worthless = {
      ...jobProblem.problem,
      leaks: jobProblem.problem.leaks.map((leak) => ({ ...leak, lifetimeValueUsd: 1 })),
      notYetFound: [],
    };
    expect(await scopeOptions({ problem: worthless, solve })).toEqual({
      options: [],
      recommendedId: null,
      outOfReach: [],
    });
  });

  it("take measures chosen by hand as they are, without a claim, and name those that do not exist", () => {
    const leak = jobProblem.problem.leaks.find(({ repairs }) => repairs.length > 0)!;
    const measures = [
      { siteId: leak.id, repairId: leak.repairs[0]!.id },
      { siteId: leak.id, repairId: leak.repairs.at(-1)!.id },
      { siteId: "upstairs", repairId: "spray-from-inside" },
      { siteId: "nowhere", repairId: "mastic-with-mesh" },
    ];
    const { scope, unknown } = chosenByHand({ jobProblem, measures, limitCfm25: 100 });
    expect(scope).toMatchObject({
      provenOptimal: false,
      gapRatio: null,
      systemRepairIds: ["upstairs spray-from-inside"],
    });
    expect(scope.measures).toEqual([{ leakId: leak.id, repairId: leak.repairs[0]!.id }]);
    expect(unknown).toEqual([measures[1], measures[3]]);
    const priced = pricedOption({
      jobProblem,
      book: DEMO_PRICE_BOOK,
      option: aimedScope("chosen", scope),
      asbestosSiteIds: [],
    });
    expect(priced.measures.map(({ siteId }) => siteId)).toEqual([leak.id, "upstairs"]);
  });
});
