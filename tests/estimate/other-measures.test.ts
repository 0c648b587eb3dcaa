import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const FURNACE = "cold-attic-furnace.json";

async function with30Percent(otherHeatingReductionShare?: number) {
  const { job, reference } = await exampleWithReference(FURNACE);
  const chosenMeasures = [{ siteId: "plenum", repairId: "backed-mastic" }];
  const known = { knownUse: { heatingNaturalGasTherms: 800, coolingElectricityKWh: 1500 } };
  return estimate(
    { ...job, energy: known, plan: { ...job.plan, chosenMeasures, otherHeatingReductionShare } },
    reference,
  );
}

describe("sealing beside other measures (derived: what both save is counted once)", () => {
  it("counts on what they leave, and says so", async () => {
    const alone = await with30Percent();
    const second = await with30Percent(0.3);
    const gas = (result: typeof alone) => result.energy.naturalGas;
    const exact = { relativeTolerance: 1e-9, reason: "a furnace's use is proportional to the need" } as const;
    expectClose({ actual: gas(second).beforeTherms.value, expected: 0.7 * 800, ...exact });
    expectClose({ actual: gas(second).savedTherms.value, expected: 0.7 * gas(alone).savedTherms.value, ...exact });
    expect(second.warnings.map(({ code }) => code)).toContain("other-measures-first");
    expect(alone.warnings.map(({ code }) => code)).not.toContain("other-measures-first");
    // The evidence is the house as it was billed.
    expect(second.loads.seasons[0]!.evidence[0]!.value).toBeCloseTo(800, 6);
  });

  it("adds up to the same in either order", async () => {
    const alone = (await with30Percent()).energy.naturalGas;
    const second = (await with30Percent(0.3)).energy.naturalGas;
    const othersFirst = 0.3 * 800 + second.savedTherms.value;
    const othersLast = alone.savedTherms.value + 0.3 * alone.afterTherms.value;
    expectClose({
      actual: othersFirst,
      expected: othersLast,
      relativeTolerance: 1e-9,
      reason: "one product, two ways",
    });
    expect(othersFirst).toBeLessThan(0.3 * 800 + alone.savedTherms.value);
  });
});
