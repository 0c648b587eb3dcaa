import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createReconciler, ReconciliationFailed } from "#lib/apportion/create-reconciler.ts";
import {
  type FoundLeak,
  type LeakageMeasurements,
  leakageReconciliation,
} from "#lib/apportion/leakage-reconciliation.ts";
import { MEASUREMENT_NAMES, type MeasurementName } from "#lib/apportion/measurement-rows.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { expectClose } from "#tests/expect-close.ts";
import { solveAsQuadraticProgram } from "./quadratic-program.ts";

/** Few, for the tests that look at the answer only. */
const DRAWS = 20;

const leak = (id: string, priorCfm25: number, rest: Partial<FoundLeak> = {}): FoundLeak => ({
  id,
  side: "supply",
  toOutsideShare: 1,
  priorCfm25,
  priorRelativeUncertainty: 0.5,
  ...rest,
});

/** To a thousandth: no gauge reads finer. */
const flow = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

const drawnSites = fc
  .array(
    fc.record({
      side: fc.constantFrom("supply" as const, "return" as const),
      toOutsideShare: fc.oneof(fc.constantFrom(0, 1), flow(0.02, 1)),
      priorCfm25: flow(0, 120),
      priorRelativeUncertainty: fc.double({ min: 0.05, max: 2, noNaN: true }),
    }),
    { maxLength: 14 },
  )
  .map((sites) => sites.map((site, i) => ({ id: `leak-${i}`, ...site })));

/** A house whose four quarters are known, read with the doubts drawn: exact readings never contradict each other. */
const drawnMeasurements = fc
  .record({
    quarters: fc.tuple(...Array.from({ length: 4 }, () => fc.oneof(fc.constant(0), flow(1, 150)))),
    names: fc.subarray([...MEASUREMENT_NAMES]),
    doubts: fc.array(fc.oneof(fc.constant(0), flow(0.5, 30)), {
      minLength: 6,
      maxLength: 6,
    }),
    errors: fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ quarters: [so, si, ro, ri], names, doubts, errors }) => {
    const truth: Record<MeasurementName, number> = {
      total: so! + si! + ro! + ri!,
      toOutside: so! + ro!,
      supply: so! + si!,
      return: ro! + ri!,
      supplyToOutside: so!,
      returnToOutside: ro!,
    };
    return Object.fromEntries(
      names.map((name, k) => [
        name,
        {
          cfm25: Math.max(0, Math.round(1000 * (truth[name] + doubts[k]! * errors[k]!)) / 1000),
          standardUncertaintyCfm25: doubts[k]!,
        },
      ]),
    ) as LeakageMeasurements;
  });

const problem = fc.record({
  sites: drawnSites,
  measurements: drawnMeasurements,
  cellVarianceShare: fc.double({ min: 0.01, max: 1, noNaN: true }),
});

const largestOf = (measurements: LeakageMeasurements, sites: readonly FoundLeak[]) =>
  Math.max(0, ...Object.values(measurements).map((each) => each.cfm25)) ||
  sites.reduce((sum, site) => sum + site.priorCfm25, 0);

const leaksOf = (result: ReturnType<typeof leakageReconciliation>) => [
  ...result.sites.map((site) => site.cfm25),
  ...result.notYetFound.map((cell) => cell.cfm25),
];

describe("leakageReconciliation", () => {
  it("agrees with a quadratic program solved by an independent library, and is never worse (quadprog, active set)", () => {
    let solved = 0;
    let same = 0;
    fc.assert(
      fc.property(problem, (drawn) => {
        const largest = largestOf(drawn.measurements, drawn.sites);
        // Repeated exact measurements are more than the library takes; they have a test of their own below.
        const exact = Object.values(drawn.measurements).filter((each) => each.standardUncertaintyCfm25 === 0);
        fc.pre(largest > 1 && exact.length <= 2);
        const ours = leaksOf(leakageReconciliation({ ...drawn, draws: DRAWS }));
        const theirs = solveAsQuadraticProgram(drawn);
        fc.pre(theirs !== null);
        const { leaksCfm25, objectiveOf } = theirs!;
        expect(objectiveOf(ours)).toBeLessThanOrEqual(objectiveOf(leaksCfm25) * (1 + 1e-6) + 1e-9);
        solved += 1;
        if (ours.every((cfm25, i) => Math.abs(cfm25 - leaksCfm25[i]!) <= 1e-6 * largest)) same += 1;
      }),
      { numRuns: 400 },
    );
    // Where exact zeros leave it no room, the library stops short of the optimum, a few in a hundred.
    expect(solved).toBeGreaterThan(200);
    expect(same / solved).toBeGreaterThan(0.9);
    expect(same).toBeGreaterThan(150);
  });

  it("never goes below zero and meets exact measurements to 1e-9", () => {
    fc.assert(
      fc.property(problem, (drawn) => {
        const result = leakageReconciliation({ ...drawn, draws: DRAWS });
        const largest = largestOf(drawn.measurements, drawn.sites);
        for (const cfm25 of leaksOf(result)) expect(cfm25).toBeGreaterThanOrEqual(0);
        for (const { name, fittedCfm25, surplusZ } of result.measurements) {
          expect(Number.isFinite(surplusZ)).toBe(true);
          if (drawn.measurements[name]!.standardUncertaintyCfm25 > 0) continue;
          expect(Math.abs(fittedCfm25 - drawn.measurements[name]!.cfm25)).toBeLessThanOrEqual(1e-9 * largest);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("takes exact measurements that repeat each other", () => {
    const exactly = (cfm25: number) => ({ cfm25, standardUncertaintyCfm25: 0 });
    const measurements = {
      total: exactly(200),
      supply: exactly(120),
      return: exactly(80),
      toOutside: exactly(90),
      supplyToOutside: exactly(60),
      returnToOutside: exactly(30),
    };
    const sites = [leak("a", 20), leak("b", 15, { toOutsideShare: 0 }), leak("c", 70, { side: "return" })];
    const result = leakageReconciliation({ measurements, sites });
    for (const { name, fittedCfm25 } of result.measurements) {
      expectClose({
        actual: fittedCfm25,
        expected: measurements[name].cfm25,
        relativeTolerance: 1e-9,
        reason: "an equality",
      });
    }
    expect(result.sites.find((site) => site.id === "c")!.cfm25).toBeLessThanOrEqual(30 + 1e-9);
    expect(result.tellsMost).toBeNull();
  });

  it("scales by k with everything that is a flow", () => {
    fc.assert(
      fc.property(
        problem,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        ({ measurements, sites, cellVarianceShare }, k) => {
          const largest = largestOf(measurements, sites);
          fc.pre(largest > 1);
          const scaled = {
            measurements: Object.fromEntries(
              Object.entries(measurements).map(([name, each]) => [
                name,
                { cfm25: k * each.cfm25, standardUncertaintyCfm25: k * each.standardUncertaintyCfm25 },
              ]),
            ),
            sites: sites.map((site) => ({ ...site, priorCfm25: k * site.priorCfm25 })),
          };
          const before = leakageReconciliation({ measurements, sites, cellVarianceShare, draws: DRAWS });
          const after = leakageReconciliation({ ...scaled, cellVarianceShare, draws: DRAWS });
          leaksOf(before).forEach((cfm25, i) => {
            expect(Math.abs(leaksOf(after)[i]! - k * cfm25)).toBeLessThanOrEqual(1e-8 * k * largest);
          });
        },
      ),
    );
  });

  it("gives each leak the very same number in whatever order leaks are listed", () => {
    fc.assert(
      fc.property(problem, fc.array(fc.nat(), { minLength: 14, maxLength: 14 }), (drawn, keys) => {
        const shuffled = drawn.sites.map((site, i) => ({ site, key: keys[i]! })).sort((a, b) => a.key - b.key);
        const first = leakageReconciliation({ ...drawn, draws: DRAWS });
        const second = leakageReconciliation({ ...drawn, sites: shuffled.map((each) => each.site), draws: DRAWS });
        const byId = new Map(second.sites.map((site) => [site.id, site]));
        for (const site of first.sites) expect(byId.get(site.id)).toEqual(site);
        expect(second.notYetFound).toEqual(first.notYetFound);
      }),
    );
  });

  it("moves a leak the more, the less sure it is", () => {
    const sites = [
      leak("sure", 20, { priorRelativeUncertainty: 0.1 }),
      leak("unsure", 20, { priorRelativeUncertainty: 1 }),
    ];
    const { sites: found } = leakageReconciliation({
      measurements: { total: { cfm25: 300, standardUncertaintyCfm25: 5 } },
      sites,
    });
    expect(found[1]!.cfm25 - 20).toBeGreaterThan(10 * (found[0]!.cfm25 - 20));
    expect(found[0]!.cfm25).toBeGreaterThan(20);
  });

  it("tells by a large z when found leaks add up to more than was measured, and shrinks them", () => {
    const sites = [
      leak("a", 150, { priorRelativeUncertainty: 0.2 }),
      leak("b", 100, { priorRelativeUncertainty: 0.2 }),
    ];
    const result = leakageReconciliation({
      measurements: { total: { cfm25: 100, standardUncertaintyCfm25: 3 } },
      sites,
    });
    // By hand: (250 − 100)/√(30² + 20² + 3²) = 4.146.
    expectClose({
      actual: result.measurements[0]!.surplusZ,
      expected: 4.146,
      relativeTolerance: 2e-4,
      reason: "worked by hand to 4 figures",
    });
    expect(leaksOf(result).reduce((sum, cfm25) => sum + cfm25, 0)).toBeLessThan(110);
    expect(result.notYetFound.every((cell) => cell.cfm25 === 0)).toBe(true);
  });

  it("gives the exact posterior doubt where nothing is held at zero [derived]", () => {
    // One leak far from zero and a measured total: var = s² − s⁴/(s² + 4 s_c² + u²), for cells that may go either way.
    // With cells far from zero too, the clamp never acts: a large total keeps them there.
    const site = leak("a", 500, { priorRelativeUncertainty: 0.04 });
    const measurements = { total: { cfm25: 1000, standardUncertaintyCfm25: 10 } };
    const result = leakageReconciliation({ measurements, sites: [site], cellVarianceShare: 0.0004, draws: 20000 });
    const s2 = 20 ** 2;
    const expected = Math.sqrt(s2 - s2 ** 2 / (s2 + 4 * 20 ** 2 + 10 ** 2));
    expectClose({
      actual: result.sites[0]!.standardUncertaintyCfm25,
      expected,
      relativeTolerance: 0.02,
      reason: "20,000 draws leave half a percent in a standard deviation",
    });
  });

  it("repeats its uncertainty with the same seed and stays near it with another", () => {
    const input = {
      measurements: { total: { cfm25: 200, standardUncertaintyCfm25: 6 } },
      sites: [leak("a", 20), leak("b", 60)],
    };
    const first = leakageReconciliation(input);
    expect(leakageReconciliation(input)).toEqual(first);
    const other = leakageReconciliation({ ...input, seed: 2 });
    expect(other.sites[0]!.cfm25).toBe(first.sites[0]!.cfm25);
    expect(other.sites[0]!.standardUncertaintyCfm25).not.toBe(first.sites[0]!.standardUncertaintyCfm25);
    expectClose({
      actual: other.sites[1]!.standardUncertaintyCfm25,
      expected: first.sites[1]!.standardUncertaintyCfm25,
      relativeTolerance: 0.15,
      reason: "400 draws leave 3.5 % in each",
    });
  });

  it("names the further measurement that would tell most", () => {
    const total = { cfm25: 200, standardUncertaintyCfm25: 6 };
    expect(leakageReconciliation({ measurements: {}, sites: [leak("a", 50)] }).tellsMost!.name).toBe("total");
    const afterTotal = leakageReconciliation({ measurements: { total }, sites: [] }).tellsMost!;
    expect(["toOutside", "supply", "return"]).toContain(afterTotal.name);
    const surelySupply = Array.from({ length: 6 }, (_, i) =>
      leak(`s${i}`, 32, { priorRelativeUncertainty: 0.1, toOutsideShare: 0.5 }),
    );
    expect(
      leakageReconciliation({ measurements: { total }, sites: surelySupply }).tellsMost!.standardUncertaintyCfm25,
    ).toBeLessThan(afterTotal.standardUncertaintyCfm25);
  });

  it("refuses exact measurements that contradict each other, naming just those", () => {
    const exactly = (cfm25: number) => ({ cfm25, standardUncertaintyCfm25: 0 });
    const pointersOf = (measurements: LeakageMeasurements) => {
      try {
        leakageReconciliation({ measurements, sites: [leak("a", 20)] });
      } catch (thrown) {
        if (thrown instanceof InputProblem) return thrown.errors.map((each) => each.pointer);
        throw thrown;
      }
      throw new Error("accepted");
    };
    expect(pointersOf({ total: exactly(100), toOutside: exactly(120), supply: exactly(60) })).toEqual([
      "#/measurements/total",
      "#/measurements/toOutside",
    ]);
    expect(pointersOf({ total: exactly(100), supply: exactly(60), return: exactly(50) })).toHaveLength(3);
    expect(pointersOf({ supply: exactly(40), supplyToOutside: exactly(41) })).toHaveLength(2);
    // A contradiction within doubts is a compromise, not an error.
    const softened = { total: exactly(100), toOutside: { cfm25: 120, standardUncertaintyCfm25: 10 } };
    expect(leakageReconciliation({ measurements: softened, sites: [] }).measurements[1]!.fittedCfm25).toBeLessThan(101);
  });

  it("refuses what is no leak or no measurement, by pointer", () => {
    const total = { cfm25: 100, standardUncertaintyCfm25: 5 };
    const with_ = (site: Partial<FoundLeak>) => () =>
      leakageReconciliation({ measurements: { total }, sites: [{ ...leak("a", 20), ...site }] });
    expect(with_({ toOutsideShare: 1.2 })).toThrow("#/sites/0/toOutsideShare");
    expect(with_({ priorCfm25: Number.NaN })).toThrow("#/sites/0/priorCfm25");
    expect(with_({ priorRelativeUncertainty: -1 })).toThrow("#/sites/0/priorRelativeUncertainty");
    expect(() => leakageReconciliation({ measurements: { total }, sites: [leak("a", 1), leak("a", 2)] })).toThrow(
      "twice",
    );
    expect(() =>
      leakageReconciliation({ measurements: { total: { cfm25: -1, standardUncertaintyCfm25: 5 } }, sites: [] }),
    ).toThrow("#/measurements/total/cfm25");
    expect(() => leakageReconciliation({ measurements: { total }, sites: [], cellVarianceShare: 0 })).toThrow(
      "cellVarianceShare",
    );
    expect(() => leakageReconciliation({ measurements: { total }, sites: [], draws: 1.5 })).toThrow("#/draws");
  });
});

describe("createReconciler", () => {
  it("may be solved again and again: the same inputs give the same bits, whatever was solved before", () => {
    const reconciler = createReconciler({ sides: ["supply", "return"], measurements: ["total", "supply"] });
    const fill = (a: number, b: number, total: number, supply: number) => {
      reconciler.priorsCfm25.set([a, b]);
      reconciler.spreadsCfm25.set([a / 2 + 1, b / 2 + 1, 50, 50, 50, 50]);
      reconciler.toOutsideShares.set([1, 0.5]);
      reconciler.measuredCfm25.set([total, supply]);
      reconciler.standardUncertaintiesCfm25.set([4, 0]);
      reconciler.solve();
      return [...reconciler.leaksCfm25, ...reconciler.fittedCfm25];
    };
    const first = fill(20, 30, 150, 90);
    fill(500, 1, 40, 3);
    expect(fill(20, 30, 150, 90)).toEqual(first);
  });

  it("says so when exact measurements contradict each other or numbers are none", () => {
    const reconciler = createReconciler({ sides: [], measurements: ["supply", "supplyToOutside"] });
    reconciler.spreadsCfm25.fill(50);
    reconciler.measuredCfm25.set([40, 60]);
    expect(() => reconciler.solve()).toThrow(ReconciliationFailed);
    reconciler.measuredCfm25.set([Number.NaN, 60]);
    expect(() => reconciler.solve()).toThrow(ReconciliationFailed);
  });
});
