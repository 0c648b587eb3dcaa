import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";
import { plainEstimate } from "./plain-house.ts";

/** Ten digits less what the two searches for the leaks leave: 1e-11 of the largest reading, divided by the smallest leak. */
const SAME = { relativeTolerance: 1e-9, reason: "the same formulas in another order; searches end at 1e-11" } as const;

/** Repairs whose shares left stand in plain-house.ts. */
const MEASURES = [
  { siteId: "plenum", repairId: "backed-mastic" },
  { siteId: "bed-2-off", repairId: "band-and-mastic" },
  { siteId: "boots", repairId: "boot-sealant" },
  { siteId: "filter", repairId: "filter-slot-cover" },
  { siteId: "cavity", repairId: "line-cavity" },
];

async function both(change: (job: Job) => Job = (job) => job) {
  const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
  const withWork = change({ ...job, plan: { ...job.plan, chosenMeasures: MEASURES } });
  const { bins, months } = reference.climate;
  return { engine: await estimate(withWork, reference), plain: plainEstimate({ ...bins, ...months }) };
}

describe("a second, simpler implementation of the cold attic furnace (plain loops, closed forms of METHODS)", () => {
  it("agrees on the leakage of the house and of each leak", async () => {
    const { engine, plain } = await both();
    expectClose({ actual: engine.leakage.totalCfm25.value, expected: plain.totalCfm25, ...SAME });
    expectClose({ actual: engine.leakage.toOutsideCfm25.value, expected: plain.toOutsideCfm25, ...SAME });
    expect(engine.sites).toHaveLength(plain.siteCfm25.length);
    engine.sites.forEach(({ cfm25 }, i) => {
      expectClose({ actual: cfm25.value, expected: plain.siteCfm25[i]!, ...SAME });
    });
    expectClose({ actual: engine.scope.options[0]!.predictedCfm25.value, expected: plain.leftCfm25, ...SAME });
  });

  it("agrees on the fan flow after sealing and the efficiency of the ducts in both seasons", async () => {
    const { engine, plain } = await both();
    const [system] = engine.systems;
    const { heating, cooling } = system!.distribution;
    expectClose({ actual: system!.airflow.fanFlowAfterCfm, expected: plain.fanFlowAfterCfm, ...SAME });
    expectClose({ actual: heating!.seasonalBefore.value, expected: plain.heatingBefore, ...SAME });
    expectClose({ actual: heating!.seasonalAfter.value, expected: plain.heatingAfter, ...SAME });
    expectClose({ actual: cooling!.seasonalBefore.value, expected: plain.coolingBefore, ...SAME });
    expectClose({ actual: cooling!.seasonalAfter.value, expected: plain.coolingAfter, ...SAME });
  });

  it("agrees on the year's gas and electricity before and after, and on the money saved", async () => {
    const { engine, plain } = await both();
    const { electricity, naturalGas } = engine.energy;
    expectClose({ actual: naturalGas.beforeTherms.value, expected: plain.useBefore.therms, ...SAME });
    expectClose({ actual: naturalGas.afterTherms.value, expected: plain.useAfter.therms, ...SAME });
    expectClose({ actual: electricity.beforeKWh.value, expected: plain.useBefore.kWh, ...SAME });
    expectClose({ actual: electricity.afterKWh.value, expected: plain.useAfter.kWh, ...SAME });
    expectClose({ actual: engine.savings.costUsdPerYear.value, expected: plain.savedUsd, ...SAME });
  });

  it("would notice one duct's insulation entered wrongly", async () => {
    const { engine, plain } = await both((job) => ({
      ...job,
      systems: job.systems.map((system) => ({
        ...system,
        runs: system.runs.map((run) => (run.id === "bed-1" ? { ...run, insulationRValue: 6 } : run)),
      })),
    }));
    const found = engine.systems[0]!.distribution.heating!.seasonalBefore.value;
    expect(Math.abs(found / plain.heatingBefore - 1)).toBeGreaterThan(1e-4);
  });
});
