import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
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

  /** Rule and parts, less what this estimate saves: 0 to rounding. */
  function missOf({ deemed, energy }: Awaited<ReturnType<typeof withRule>>, of: "electricityKWh" | "naturalGasTherms") {
    const parts = deemed!.parts.reduce((all, part) => all + part[of], 0);
    return of === "naturalGasTherms"
      ? deemed!.heatingTherms + parts - energy.naturalGas.savedTherms.value
      : deemed!.coolingKWh + deemed!.heatingKWh + deemed!.blowerKWh + parts - energy.electricity.savedKWh.value;
  }

  const kindOf = {
    "gas and cooling": (job: Job) => job,
    "gas alone": (job: Job) => withEquipment(job, (system) => ({ ...system, cooling: undefined })),
    "cooling alone": (job: Job) => withEquipment(job, (system) => ({ ...system, heating: undefined })),
    resistance: (job: Job) =>
      withEquipment(job, (system) => ({ ...system, heating: { kind: "electric-furnace", outputBtuPerH: 64000 } })),
    "heat pump": (job: Job) =>
      withEquipment(job, (system) => ({ ...system, heating: { kind: "heat-pump", outputBtuPerH: 36000 } })),
    propane: (job: Job) =>
      withEquipment(job, (system) => ({ ...system, heating: { kind: "propane-furnace", outputBtuPerH: 64000 } })),
  } as const satisfies Record<string, (job: Job) => Job>;
  const withEquipment = (job: Job, change: (system: Job["systems"][number]) => Job["systems"][number]): Job => ({
    ...job,
    energy: undefined,
    systems: job.systems.map(change),
  });
  const KINDS = Object.keys(kindOf) as (keyof typeof kindOf)[];

  it.each(DEEMED_RULES.flatMap(({ id }) => KINDS.map((kind) => [id, kind] as const)))(
    "adds up in every kind of house: %s, %s",
    async (ruleId, kind) => {
      const result = await withRule(kindOf[kind], ruleId);
      for (const of of ["electricityKWh", "naturalGasTherms"] as const)
        expect(Math.abs(missOf(result, of))).toBeLessThan(1e-9 * 10_000);
      const ids = result.deemed!.parts.map(({ id }) => id);
      expect(ids.includes("supplementary")).toBe(kind === "heat pump");
      expect(result.deemed!.heatingKWh > 0).toBe(kind === "heat pump" || kind === "resistance");
      expect(result.deemed!.heatingTherms > 0).toBe(kind.startsWith("gas"));
      expect(result.deemed!.coolingKWh > 0).toBe(kind !== "gas alone");
      expect(result.deemed!.difference.some((said) => said.includes("propane"))).toBe(kind === "propane");
    },
  );

  it("adds up whatever the house, the rule and what is known (property)", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.record({
          rule: fc.constantFrom(...DEEMED_RULES.map(({ id }) => id)),
          kind: fc.constantFrom(...KINDS),
          fanFlowCfm: fc.integer({ min: 700, max: 1800 }),
          regainFactor: fc.double({ min: 0, max: 0.8, noNaN: true }),
          seer: fc.double({ min: 8, max: 20, noNaN: true }),
          staging: fc.constantFrom("single" as const, "two-stage" as const),
        }),
        async ({ rule, kind, fanFlowCfm, regainFactor, seer, staging }) => {
          const result = await withRule((job) => {
            const changed = kindOf[kind](job);
            return {
              ...changed,
              places: changed.places.map((place) =>
                place.kind === "conditioned" ? place : { ...place, regainFactor },
              ),
              systems: changed.systems.map((system) => ({
                ...system,
                blower: { ...system.blower, fanFlowCfm },
                heating: system.heating && { ...system.heating, staging },
                cooling: system.cooling && { ...system.cooling, seer, staging },
              })),
            };
          }, rule);
          if (!result.deemed) return;
          for (const of of ["electricityKWh", "naturalGasTherms"] as const)
            expect(Math.abs(missOf(result, of))).toBeLessThan(1e-9 * 10_000);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("says so where the rule cannot be applied, and leaves the estimate", async () => {
    const small = (job: Job) =>
      withEquipment(
        { ...job, plan: { ...job.plan, chosenMeasures: [...MEASURES, { siteId: "cavity", repairId: "line-cavity" }] } },
        (system) => ({
          ...system,
          cooling: system.cooling && { ...system.cooling, capacityBtuPerH: 5000 },
          heating: system.heating && { ...system.heating, outputBtuPerH: 5000 },
        }),
      );
    const { deemed, warnings } = await withRule(small);
    expect(deemed).toBeNull();
    expect(warnings.map(({ code }) => code)).toContain("deemed-rule-does-not-apply");
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
