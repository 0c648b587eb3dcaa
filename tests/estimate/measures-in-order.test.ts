import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { OtherMeasure } from "#lib/job/plan.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const FURNACE = "cold-attic-furnace.json";
const HEAT_PUMP = "mixed-crawlspace-heat-pump.json";
const KNOWN = {
  [FURNACE]: { heatingNaturalGasTherms: 800, coolingElectricityKWh: 1500 },
  [HEAT_PUMP]: { heatingElectricityKWh: 6000, coolingElectricityKWh: 1500 },
};
const FIGURES = ["electricityKWh", "naturalGasTherms", "costUsdPerYear"] as const;

async function withMeasures(file: keyof typeof KNOWN, otherMeasures: OtherMeasure[] | undefined): Promise<Result> {
  const { job, reference } = await exampleWithReference(file);
  const chosenMeasures = [{ siteId: job.sites[0]!.id, repairId: "backed-mastic" }];
  const plan = { ...job.plan, chosenMeasures, otherMeasures };
  return estimate({ ...job, energy: { knownUse: KNOWN[file] }, plan }, reference);
}

const insulation = {
  id: "insulation",
  title: "Attic insulation",
  order: "before-ducts",
  heatingReductionShare: 0.3,
} as const;
const furnace = {
  id: "furnace",
  title: "New furnace",
  order: "after-ducts",
  heatingEfficiencyBeforeRatio: 0.8,
  heatingEfficiencyAfterRatio: 0.96,
} as const;

const share = fc.double({ min: 0, max: 0.6, noNaN: true });
const better = fc.double({ min: 1, max: 2, noNaN: true });
const measure = fc.record({
  order: fc.constantFrom("before-ducts" as const, "after-ducts" as const),
  heatingReductionShare: share,
  coolingReductionShare: share,
  heatingBetter: better,
  coolingBetter: better,
});
const asListed = (drawn: readonly ReturnType<typeof measure.generate>["value"][]): OtherMeasure[] =>
  drawn.map(({ heatingBetter, coolingBetter, ...rest }, k) => ({
    ...rest,
    id: `m${k}`,
    title: `Measure ${k}`,
    heatingEfficiencyBeforeRatio: 1,
    heatingEfficiencyAfterRatio: heatingBetter,
    coolingEfficiencyBeforeRatio: 10,
    coolingEfficiencyAfterRatio: 10 * coolingBetter,
  }));

describe("measures in a stated order (derived: each saves of what those before it leave)", () => {
  it("worked by hand: 800 therms, 30 % less need, ducts, then 0.80 to 0.96", async () => {
    const alone = await withMeasures(FURNACE, undefined);
    expect(alone.measuresInOrder).toBeNull();
    const { measuresInOrder, energy, savings, warnings } = await withMeasures(FURNACE, [insulation, furnace]);
    const [first, ducts, last] = measuresInOrder!.turns;
    const exact = { relativeTolerance: 1e-9, reason: "a furnace's use is proportional to the need" } as const;
    const saved = 0.7 * alone.energy.naturalGas.savedTherms.value;
    expectClose({ actual: first!.naturalGasTherms, expected: 240, ...exact });
    expectClose({ actual: ducts!.naturalGasTherms, expected: saved, ...exact });
    expectClose({ actual: last!.naturalGasTherms, expected: (560 - saved) * (1 - 0.8 / 0.96), ...exact });
    // The turn of the ducts is the saving that stands everywhere else.
    expectClose({ actual: ducts!.naturalGasTherms, expected: energy.naturalGas.savedTherms.value, ...exact });
    expectClose({ actual: ducts!.costUsdPerYear, expected: savings.costUsdPerYear.value, ...exact });
    const notes = warnings.filter(({ code }) => code === "other-measures-first");
    expect(notes.map(({ path }) => path)).toEqual(["#/plan/otherMeasures/0/heatingReductionShare"]);
    expect(measuresInOrder!.turns.map(({ id, kind }) => [id, kind])).toEqual([
      ["insulation", "measure"],
      ["ducts", "ducts"],
      ["furnace", "measure"],
    ]);
  });

  it.each([FURNACE, HEAT_PUMP] as const)(
    "their order changes the split and not the sum, which stays within the use: %s (property)",
    async (file) => {
      const useBefore = (await withMeasures(file, undefined)).energy;
      await fc.assert(
        fc.asyncProperty(fc.array(measure, { minLength: 1, maxLength: 4 }), fc.boolean(), async (drawn, flips) => {
          const listed = asListed(drawn);
          const one = (await withMeasures(file, listed)).measuresInOrder!;
          const other = (
            await withMeasures(
              file,
              [...listed].reverse().map((each) => ({ ...each, order: flips ? "after-ducts" : "before-ducts" })),
            )
          ).measuresInOrder!;
          for (const figure of FIGURES) {
            const sum = one.turns.reduce((all, turn) => all + turn[figure], 0);
            expect(Math.abs(sum - one.together[figure])).toBeLessThan(1e-8);
            expect(Math.abs(other.together[figure] - one.together[figure])).toBeLessThan(1e-6);
          }
          expect(one.together.electricityKWh).toBeLessThanOrEqual(useBefore.electricity.beforeKWh.value);
          expect(one.together.naturalGasTherms).toBeLessThanOrEqual(useBefore.naturalGas.beforeTherms.value);
          for (const turn of one.turns) if (turn.kind === "measure") expect(turn.costUsdPerYear).toBeGreaterThan(-1e-6);
        }),
        { numRuns: 12 },
      );
    },
  );

  it("a single share of old jobs is one measure before the ducts", async () => {
    const { job, reference } = await exampleWithReference(FURNACE);
    const plan = { ...job.plan, chosenMeasures: [], otherHeatingReductionShare: 0.25, otherMeasures: [furnace] };
    const result = await estimate({ ...job, plan }, reference);
    expect(result.measuresInOrder!.turns.map(({ id }) => id)).toEqual(["other", "ducts", "furnace"]);
  });

  it("refuses half an efficiency and two measures of one id", async () => {
    const { job } = await exampleWithReference(FURNACE);
    const { heatingEfficiencyAfterRatio: _, ...half } = furnace;
    const parse = (otherMeasures: unknown[]) => () => parseJob({ ...job, plan: { ...job.plan, otherMeasures } });
    expect(parse([half])).toThrow(/one of the two efficiencies is missing/);
    expect(parse([furnace, furnace])).toThrow(/furnace/);
    expect(parse([insulation, furnace])).not.toThrow();
  });
});
