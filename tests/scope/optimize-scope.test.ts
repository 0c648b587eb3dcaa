import { describe, expect, it } from "vitest";
import { optimizeScope } from "#lib/scope/optimize-scope.ts";
import type { ChosenScope, ScopeGoal, ScopeProblem } from "#lib/scope/scope-problem.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { expectClose } from "#tests/expect-close.ts";
import { type CountedScope, searchAll } from "./exhaustive.ts";
import { randomProblem, seededRandom, withBefore } from "./random-problem.ts";
import { simulateJobs } from "./simulated-jobs.ts";

const solve = await createHighsSolver();
/** Standard normal quantiles from printed tables. */
const Z_SCORES = { 0.5: 0, 0.8: 0.841621234, 0.9: 1.281551566, 0.95: 1.644853627 } as const;
type TabledProbability = keyof typeof Z_SCORES;

async function scopeOf(problem: ScopeProblem, goal: ScopeGoal): Promise<ChosenScope> {
  const outcome = await optimizeScope({ problem, goal, solve });
  if (outcome.kind !== "scope") throw new Error(`Out of reach: ${outcome.why.reachableCfm25}`);
  return outcome.scope;
}

/** Both searches must agree on whether the goal can be met, and on the worth of the best. */
async function expectSameAsSearch(
  problem: ScopeProblem,
  goal: ScopeGoal,
  worth: (s: { price: number; value: number; removed: number }) => number,
) {
  const zScore = goal.target ? Z_SCORES[goal.target.probability as TabledProbability] : 0;
  const searched: CountedScope | null = searchAll(problem, goal, zScore);
  const outcome = await optimizeScope({ problem, goal, solve });
  expect(outcome.kind).toBe(searched === null ? "out-of-reach" : "scope");
  if (searched === null || outcome.kind !== "scope") return false;
  const { scope } = outcome;
  expect(scope.provenOptimal).toBe(true);
  const found = worth({ price: scope.priceUsdCents / 100, value: scope.lifetimeValueUsd, removed: scope.removedCfm25 });
  const best = worth({ price: searched.priceUsd, value: searched.value, removed: searched.removed });
  // A cent: the top-up to the least charge is rounded after the search.
  expect(Math.abs(found - best)).toBeLessThanOrEqual(0.0101);
  return true;
}

describe("the optimum against looking at every scope there is", () => {
  it("reaches the target at the least price: 24 jobs of 5 to 8 leaks, two repairs each, three probabilities", async () => {
    let reached = 0;
    for (let seed = 1; seed <= 24; seed += 1) {
      const problem = withBefore(
        randomProblem({ seed, leaksCount: 5 + (seed % 4), repairsCount: 2, hasSpray: seed % 2 === 0 }),
      );
      const share = 0.35 + 0.5 * seededRandom(seed * 77)();
      const probability = ([0.5, 0.8, 0.9] as const)[seed % 3]!;
      const goal: ScopeGoal = { want: "least-price", target: { limitCfm25: problem.beforeCfm25 * share, probability } };
      if (await expectSameAsSearch(problem, goal, ({ price }) => price)) reached += 1;
    }
    expect(reached).toBeGreaterThan(8);
    expect(reached).toBeLessThan(24);
  });

  it("reaches the target at the least price with 14 leaks", async () => {
    for (const seed of [101, 102, 103, 104]) {
      const problem = withBefore(randomProblem({ seed, leaksCount: 14, repairsCount: 1, hasSpray: seed % 2 === 0 }));
      const goal: ScopeGoal = {
        want: "least-price",
        target: { limitCfm25: problem.beforeCfm25 * 0.62, probability: 0.9 },
      };
      expect(await expectSameAsSearch(problem, goal, ({ price }) => price)).toBe(true);
    }
  });

  it("gets the most value under a budget, net and gross, and the most sealed within the hours", async () => {
    for (let seed = 201; seed <= 212; seed += 1) {
      const problem = withBefore(randomProblem({ seed, leaksCount: 7, repairsCount: 2, hasSpray: seed % 2 === 0 }));
      const budgetUsdCents = 60000 + 7000 * (seed % 10);
      await expectSameAsSearch(
        problem,
        { want: "most-net-value", budgetUsdCents },
        ({ value, price }) => value - price,
      );
      await expectSameAsSearch(problem, { want: "most-value", budgetUsdCents }, ({ value }) => value);
      await expectSameAsSearch(problem, { want: "most-sealed", labourHours: 3 + (seed % 5) }, ({ removed }) => removed);
    }
  });
});

describe("the optimum against a dynamic programme", () => {
  /** The textbook 0/1 knapsack over whole cents: best value for each budget up to the limit. */
  function knapsack(items: readonly { cost: number; value: number }[], budget: number): number {
    const best = new Float64Array(budget + 1);
    for (const { cost, value } of items) {
      for (let left = budget; left >= cost; left -= 1) best[left] = Math.max(best[left]!, best[left - cost]! + value);
    }
    return best[budget]!;
  }

  it("is the knapsack's when nothing is shared: 40 leaks, one repair each, most value under a budget", async () => {
    for (const seed of [301, 302, 303, 304]) {
      const random = randomProblem({ seed, leaksCount: 40, repairsCount: 1 });
      const problem = withBefore({
        ...random,
        sharedCosts: [],
        visits: null,
        minimumCharge: null,
        exclusions: [],
        prerequisites: [],
      });
      const budgetUsdCents = 120000;
      const items = problem.leaks.map((leak) => ({
        cost: leak.repairs[0]!.costUsdCents,
        value: leak.lifetimeValueUsd * (1 - leak.repairs[0]!.remainingShare),
      }));
      const scope = await scopeOf(problem, { want: "most-value", budgetUsdCents });
      const expected = knapsack(items, budgetUsdCents);
      expectClose({
        actual: scope.lifetimeValueUsd,
        expected,
        relativeTolerance: 2e-6,
        reason: "price breaks ties by a millionth",
      });
      expect(scope.priceUsdCents).toBeLessThanOrEqual(budgetUsdCents);
    }
  });

  it("is the covering knapsack's for an even chance: least price that removes a whole number of tenths of a cfm", async () => {
    for (const seed of [311, 312, 313]) {
      const random = randomProblem({ seed, leaksCount: 30, repairsCount: 1 });
      const leaks = random.leaks.map((leak) => ({
        ...leak,
        cfm25: Math.round(leak.cfm25 * 10) / 10,
        repairs: leak.repairs.map((repair) => ({ ...repair, remainingShare: 0 })),
      }));
      const plain = {
        ...random,
        leaks,
        measure: "total" as const,
        sharedCosts: [],
        visits: null,
        minimumCharge: null,
        exclusions: [],
        prerequisites: [],
      };
      const problem = withBefore(plain);
      const needTenths = 3000;
      const least = new Float64Array(needTenths + 1).fill(Number.POSITIVE_INFINITY);
      least[0] = 0;
      for (const leak of leaks) {
        const tenths = Math.round(leak.cfm25 * 10);
        for (let done = needTenths; done >= 0; done -= 1) {
          const next = Math.min(needTenths, done + tenths);
          least[next] = Math.min(least[next]!, least[done]! + leak.repairs[0]!.costUsdCents);
        }
      }
      const target = { limitCfm25: problem.beforeCfm25 - needTenths / 10, probability: 0.5 };
      expect((await scopeOf(problem, { want: "least-price", target })).priceUsdCents).toBe(least[needTenths]);
    }
  });
});

describe("what must not change the optimum", () => {
  const problem = withBefore(randomProblem({ seed: 7, leaksCount: 24, repairsCount: 3, hasSpray: true }));
  const goal: ScopeGoal = { want: "least-price", target: { limitCfm25: problem.beforeCfm25 * 0.5, probability: 0.9 } };

  it("is the same scope, to the last digit, in whatever order leaks, repairs and costs are listed", async () => {
    const first = await scopeOf(problem, goal);
    const random = seededRandom(5);
    const shuffled = <T>(items: readonly T[]): T[] =>
      items
        .map((item) => ({ item, key: random() }))
        .sort((a, b) => a.key - b.key)
        .map(({ item }) => item);
    for (let turn = 0; turn < 3; turn += 1) {
      const leaks = shuffled(problem.leaks).map((leak) => ({ ...leak, repairs: shuffled(leak.repairs) }));
      const again = await scopeOf(
        { ...problem, leaks, sharedCosts: shuffled(problem.sharedCosts), notYetFound: shuffled(problem.notYetFound) },
        goal,
      );
      expect(again).toEqual(first);
    }
  });

  it("is the same scope whatever the solver solved before", async () => {
    const first = await scopeOf(problem, goal);
    await scopeOf(withBefore(randomProblem({ seed: 77, leaksCount: 12, repairsCount: 2 })), {
      want: "most-sealed",
      labourHours: 6,
    });
    expect(await scopeOf(problem, goal)).toEqual(first);
  });

  it("breaks ties by id: of six leaks that nothing tells apart, the first ones are repaired", async () => {
    const leak = { ...problem.leaks[0]!, cfm25: 20, standardUncertaintyCfm25: 2 };
    const leaks = ["f", "b", "e", "a", "d", "c"].map((id) => ({ ...leak, id, repairs: [leak.repairs[0]!] }));
    const same = withBefore({ ...problem, leaks, systemRepairs: [], exclusions: [], prerequisites: [] });
    const removed = same.leaks.length * 20 * (same.measure === "total" ? 1 : leak.toOutsideShare);
    const target = { limitCfm25: same.beforeCfm25 - removed * 0.3, probability: 0.5 };
    const scope = await scopeOf(same, { want: "least-price", target });
    expect(scope.measures.length).toBeGreaterThan(1);
    expect(scope.measures.map(({ leakId }) => leakId)).toEqual(
      ["a", "b", "c", "d", "e", "f"].slice(0, scope.measures.length),
    );
  });

  it("seals more when two scopes cost the same", async () => {
    const [one, two] = [
      { ...problem.leaks[0]!, id: "a", cfm25: 10 },
      { ...problem.leaks[0]!, id: "b", cfm25: 11 },
    ];
    const pair = withBefore({ ...problem, leaks: [one!, two!], systemRepairs: [], exclusions: [], prerequisites: [] });
    const scope = await scopeOf(pair, { want: "least-price", leastRemovedCfm25: 1 });
    expect(scope.measures.map(({ leakId }) => leakId)).toEqual(["b"]);
  });

  it("never gets dearer when the target gets looser, nor when less certainty is asked", async () => {
    let last = Number.POSITIVE_INFINITY;
    for (const share of [0.45, 0.55, 0.65, 0.8]) {
      const { priceUsdCents } = await scopeOf(problem, {
        ...goal,
        target: { limitCfm25: problem.beforeCfm25 * share, probability: 0.9 },
      });
      expect(priceUsdCents).toBeLessThanOrEqual(last);
      last = priceUsdCents;
    }
    const sure = await scopeOf(problem, { ...goal, target: { ...goal.target!, probability: 0.95 } });
    const even = await scopeOf(problem, { ...goal, target: { ...goal.target!, probability: 0.5 } });
    expect(even.priceUsdCents).toBeLessThan(sure.priceUsdCents);
    expect(sure.probabilityOfReachingTarget).toBeGreaterThanOrEqual(0.95 - 1e-6);
  });
});

describe("a target out of reach", () => {
  const problem = withBefore(randomProblem({ seed: 9, leaksCount: 8, repairsCount: 2 }));

  it("says what can be reached, and just that can be", async () => {
    const outcome = await optimizeScope({
      problem,
      goal: { want: "least-price", target: { limitCfm25: 5, probability: 0.9 } },
      solve,
    });
    if (outcome.kind !== "out-of-reach") throw new Error("expected to be out of reach");
    const { reachableCfm25 } = outcome.why;
    expect(outcome.why.isHeldBackByLimits).toBe(false);
    expect(outcome.why.notYetFoundCfm25).toBeGreaterThan(0);
    const at = (limitCfm25: number) =>
      optimizeScope({ problem, goal: { want: "least-price", target: { limitCfm25, probability: 0.9 } }, solve });
    expect((await at(reachableCfm25 + 0.01)).kind).toBe("scope");
    expect((await at(reachableCfm25 - 0.01)).kind).toBe("out-of-reach");
  });

  it("tells a limit of money from a limit of leaks", async () => {
    const target = { limitCfm25: problem.beforeCfm25 * 0.75, probability: 0.8 };
    const outcome = await optimizeScope({
      problem,
      goal: { want: "least-price", target, budgetUsdCents: 1000 },
      solve,
    });
    if (outcome.kind !== "out-of-reach") throw new Error("expected to be out of reach");
    expect(outcome.why.isHeldBackByLimits).toBe(true);
    expect(outcome.why.closest.measures).toEqual([]);
  });

  it("does nothing, for nothing, when the target is met already", async () => {
    const scope = await scopeOf(problem, {
      want: "least-price",
      target: { limitCfm25: problem.beforeCfm25 * 2, probability: 0.9 },
    });
    expect(scope).toMatchObject({ measures: [], priceUsdCents: 0, visitsCount: 0, sharedCostIds: [] });
  });
});

describe("the promised probability", () => {
  it("is kept by 20,000 simulated jobs with skewed leaks and repairs (more houses in the proofs)", async () => {
    const problem = withBefore(randomProblem({ seed: 13, leaksCount: 24, repairsCount: 3 }));
    const limitCfm25 = problem.beforeCfm25 * 0.5;
    const scope = await scopeOf(problem, { want: "least-price", target: { limitCfm25, probability: 0.9 } });
    const jobs = simulateJobs({ problem, scope, limitCfm25, jobsCount: 20_000, seed: 1 });
    // Three standard errors of a share (0.0064) and a point for taking skewed sums as normal.
    expect(jobs.reachedShare).toBeGreaterThan(0.9 - 0.0164);
    expect(jobs.reachedShare).toBeLessThan(scope.probabilityOfReachingTarget! + 0.0164);
  });
});

describe("limits of the search", () => {
  it("shows the gap when the node limit stops it before proof", async () => {
    const problem = withBefore(randomProblem({ seed: 2, leaksCount: 60, repairsCount: 2 }));
    const goal: ScopeGoal = {
      want: "least-price",
      target: { limitCfm25: problem.beforeCfm25 * 0.4, probability: 0.9 },
    };
    const proven = await scopeOf(problem, goal);
    const cut = await optimizeScope({ problem, goal, solve, nodeLimitCount: 1 });
    if (cut.kind !== "scope") throw new Error("expected a scope");
    expect(proven).toMatchObject({ provenOptimal: true, gapRatio: 0 });
    expect(cut.scope.provenOptimal).toBe(false);
    expect(cut.scope.gapRatio).toBeGreaterThan(0);
    expect(cut.scope.priceUsdCents).toBeGreaterThanOrEqual(proven.priceUsdCents);
    expect(cut.scope.priceUsdCents * (1 - cut.scope.gapRatio!)).toBeLessThanOrEqual(proven.priceUsdCents + 1);
  });

  it("refuses values that cannot be used and names them", async () => {
    const problem = withBefore(randomProblem({ seed: 2, leaksCount: 3, repairsCount: 1 }));
    const goal: ScopeGoal = { want: "least-price", target: { limitCfm25: 10, probability: 0.9 } };
    const spoiled = (change: Partial<ScopeProblem>) =>
      optimizeScope({ problem: { ...problem, ...change }, goal, solve });
    const leak = problem.leaks[0]!;
    await expect(spoiled({ beforeCfm25: Number.NaN })).rejects.toThrow(/beforeCfm25/);
    await expect(spoiled({ leaks: [{ ...leak, toOutsideShare: 1.2 }] })).rejects.toThrow(/leaks\/0\/toOutsideShare/);
    await expect(spoiled({ leaks: [leak, leak] })).rejects.toThrow(/stands twice/);
    const nowhere = { leakId: "nowhere", repairId: "repair-0" };
    const here = { leakId: leak.id, repairId: "repair-0" };
    await expect(spoiled({ exclusions: [[here, nowhere]] })).rejects.toThrow(/no repair repair-0 of a leak nowhere/);
    await expect(spoiled({ prerequisites: [{ repair: here, needs: nowhere }] })).rejects.toThrow(/nowhere/);
    await expect(
      spoiled({ leaks: [{ ...leak, repairs: [{ ...leak.repairs[0]!, costUsdCents: 10.5 }] }] }),
    ).rejects.toThrow(/whole cents/);
    await expect(
      optimizeScope({ problem, goal: { ...goal, target: { limitCfm25: 10, probability: 0.4 } }, solve }),
    ).rejects.toThrow(/probability/);
  });
});
