import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const FURNACE = "cold-attic-furnace.json";
const MEASURES = [
  { siteId: "plenum", repairId: "backed-mastic" },
  { siteId: "boots", repairId: "boot-sealant" },
];

async function withRule(change: (job: Job) => Job = (job) => job, deemedRuleId = "il-trm-method-1") {
  const { job, reference } = await exampleWithReference(FURNACE);
  const asked = change({ ...job, plan: { ...job.plan, chosenMeasures: MEASURES, deemedRuleId } });
  return estimate(asked, reference);
}

describe("a program's rule beside the estimate", () => {
  it("differs by parts that add up to the whole difference, gas and electricity each", async () => {
    const result = await withRule();
    const { deemed, energy } = result;
    const sum = (of: "electricityKWh" | "naturalGasTherms") => deemed!.parts.reduce((all, part) => all + part[of], 0);
    const exact = { relativeTolerance: 1e-9, reason: "a telescoping sum, to rounding" } as const;
    expectClose({
      actual: deemed!.heatingTherms + sum("naturalGasTherms"),
      expected: energy.naturalGas.savedTherms.value,
      ...exact,
    });
    expectClose({
      actual: deemed!.coolingKWh + deemed!.blowerKWh + sum("electricityKWh"),
      expected: energy.electricity.savedKWh.value,
      ...exact,
    });
    expect(deemed!.parts.map(({ id }) => id)).toEqual(["leakage-basis", "use", "surroundings", "regain", "blower"]);
  });

  it("leaves the rest of the result as it is without the rule", async () => {
    const { deemed: _, jobHash: __, ...withOne } = await withRule();
    const {
      deemed: ___,
      jobHash: ____,
      ...without
    } = await withRule((job) => ({
      ...job,
      plan: { ...job.plan, deemedRuleId: undefined },
    }));
    expect(withOne).toEqual(without);
  });

  it("has no part for regain where nothing comes back, and a larger one the more does", async () => {
    const regainOf = async (regainFactor: number) => {
      const { deemed } = await withRule((job) => ({
        ...job,
        places: job.places.map((place) => (place.kind === "conditioned" ? place : { ...place, regainFactor })),
      }));
      return deemed!.parts.find(({ id }) => id === "regain")!.naturalGasTherms;
    };
    expect(await regainOf(0)).toBeCloseTo(0, 9);
    expect(await regainOf(0.2)).toBeLessThan(0);
    expect(await regainOf(0.4)).toBeLessThan(await regainOf(0.2));
  });

  it("il-trm form: the peak is the cooling saved over its hours, as far as it falls into the program's", async () => {
    const { deemed } = await withRule();
    expect(deemed!.coincidentKW).toBeGreaterThan(0);
    const ratio = deemed!.engineeringCoincidentKW / deemed!.coincidentKW;
    const cooling = deemed!.parts.reduce(
      (all, { id, electricityKWh }) => all + (id === "blower" ? 0 : electricityKWh),
      0,
    );
    expectClose({
      actual: ratio,
      expected: (deemed!.coolingKWh + cooling) / deemed!.coolingKWh,
      relativeTolerance: 1e-12,
      reason: "the same hours and factor",
    });
    expect(deemed!.engineeringPeakKW).toBeGreaterThan(0);
  });
});
