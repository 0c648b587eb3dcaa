import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { exampleWithReference } from "./example-jobs.ts";

/** All ducts and leaks in one basement at the rooms' temperature, ducts so insulated that leaks alone lose. */
async function basementHouse({ regainFactor, zonePa }: { regainFactor: number; zonePa: number }) {
  const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
  const [system] = job.systems;
  const house: Job = {
    ...job,
    places: [
      {
        id: "basement",
        kind: "basement",
        regainFactor,
        unconditionedFactor: 0,
        houseToZonePressurePa: zonePa,
        houseToOutsidePressurePa: 50,
      },
    ],
    systems: [
      {
        ...system!,
        airHandlerPlaceId: "basement",
        runs: (["supply", "return"] as const).map((side) => ({
          id: side,
          side,
          placeId: "basement",
          areaFt2: 100,
          insulationRValue: 60,
        })),
      },
    ],
    sites: [
      {
        id: "open",
        systemId: system!.id,
        side: "supply",
        placeId: "basement",
        kind: "plenum-joint",
        size: { from: "estimate", estimateCfm25: 120 },
      },
    ],
    tests: [],
    plan: undefined,
  };
  const result = await estimate(house, reference);
  const [only] = result.systems;
  const [site] = result.sites;
  return {
    efficiency: only!.distribution.heating!.seasonalBefore.value,
    leakShare: site!.operatingCfm.value / only!.airflow.fanFlowBeforeCfm,
  };
}

describe("leakage to a zone inside the pressure boundary is credited once, by regain (METHODS “which leakage goes where”)", () => {
  it("with nothing coming back all of it is lost, however little reaches outside", async () => {
    for (const zonePa of [2, 25, 48]) {
      const { efficiency, leakShare } = await basementHouse({ regainFactor: 0, zonePa });
      expect(leakShare).toBeGreaterThan(0.1);
      expect(efficiency, `${zonePa} Pa`).toBeLessThan(1 - leakShare + 0.01);
    }
  });

  it("with all of it coming back nothing is lost but the air that goes outdoors, and never less than nothing", async () => {
    const tight = await basementHouse({ regainFactor: 1, zonePa: 1 });
    expect(tight.efficiency).toBeGreaterThan(0.97);
    expect(tight.efficiency).toBeLessThanOrEqual(1);
    const open = await basementHouse({ regainFactor: 1, zonePa: 48 });
    expect(open.efficiency).toBeLessThan(tight.efficiency);
    expect(open.efficiency).toBeGreaterThan(1 - open.leakShare);
  });

  it("half of it coming back credits half of it, not half of what reaches outside", async () => {
    const lossOf = async (regainFactor: number) => 1 - (await basementHouse({ regainFactor, zonePa: 2 })).efficiency;
    const [none, half, all] = [await lossOf(0), await lossOf(0.5), await lossOf(1)];
    expect(Math.abs(half - (none + all) / 2)).toBeLessThan(0.1 * none);
  });
});
