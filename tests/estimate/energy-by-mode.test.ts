import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { EXAMPLE_FILES, exampleWithReference } from "./example-jobs.ts";

describe("energy by what it is for", () => {
  it.each(EXAMPLE_FILES)("adds up to every fuel in every month, before and after, to 1e-9: %s", async (file) => {
    const { job, reference } = await exampleWithReference(file);
    const chosenMeasures = [{ siteId: job.sites[0]!.id, repairId: "backed-mastic" }];
    const { energyByMode, energyByMonth } = await estimate(
      { ...job, plan: { ...job.plan, chosenMeasures } },
      reference,
    );
    const sum = (fuel: string, month: number, when: "beforeByMonth" | "afterByMonth") =>
      energyByMode.filter((each) => each.fuel === fuel).reduce((all, each) => all + each[when][month]!, 0);
    energyByMonth.forEach(({ electricity, naturalGas, propane, fuelOil }, month) => {
      const pairs = [
        [sum("electricity", month, "beforeByMonth"), electricity.beforeKWh.value],
        [sum("electricity", month, "afterByMonth"), electricity.afterKWh.value],
        [sum("naturalGas", month, "beforeByMonth"), naturalGas.beforeTherms.value],
        [sum("naturalGas", month, "afterByMonth"), naturalGas.afterTherms.value],
        [sum("propane", month, "afterByMonth"), propane.afterGallons.value],
        [sum("fuelOil", month, "afterByMonth"), fuelOil.afterGallons.value],
      ] as const;
      for (const [parts, whole] of pairs)
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * Math.max(1, whole));
    });
    expect(energyByMode.some(({ purpose }) => purpose === "blower")).toBe(true);
  });
});
