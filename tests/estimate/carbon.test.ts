import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { exampleWithReference } from "./example-jobs.ts";

describe("carbon dioxide avoided", () => {
  it("by the plants that follow the load and by the average, each with region and year; the first is the saving's", async () => {
    const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
    const chosenMeasures = [{ siteId: "plenum", repairId: "backed-mastic" }];
    const { carbon, savings } = await estimate({ ...job, plan: { ...job.plan, chosenMeasures } }, reference);
    const [marginal, average] = carbon;
    expect(carbon.map(({ id }) => id)).toEqual(["non-baseload", "average"]);
    expect(marginal!.co2LbPerYear).toBeCloseTo(savings.co2LbPerYear.value, 6);
    // The two differ by the electricity alone.
    const perKWh = marginal!.electricityLbPerKWh - average!.electricityLbPerKWh;
    expect(marginal!.co2LbPerYear - average!.co2LbPerYear).toBeCloseTo(savings.electricityKWh.value * perKWh, 6);
    for (const { note, source } of carbon) {
      expect(note).toMatch(/2023/);
      expect(source.sourceId).toBe("egrid-2023");
    }
  });
});
