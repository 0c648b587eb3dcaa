import type { JobMeasures } from "#lib/scope/job-measures.ts";
import { measureId, type SprayOfSystem } from "#lib/scope/measure-details.ts";
import type { HouseModel } from "./complete/complete-house.ts";
import type { WorkPlan } from "./kernel/house-kernel.ts";

/** A plan that leaves every leak as it is. */
export function doNothing(house: HouseModel, id: string): WorkPlan {
  return {
    id,
    remainingAt: new Int32Array(house.sites.length).fill(-1),
    sprayAt: new Int32Array(house.sites.length).fill(-1),
    unfoundRemainingAt: new Int32Array(house.systems.length).fill(-1),
  };
}

/**
 * An option as the kernel needs it. What a repair leaves is a parameter, shared by all options that do the same repair
 * on the same leak, so that options are compared with the same luck.
 */
export function createWorkPlans({
  house,
  options,
  details,
  sprays,
}: {
  house: HouseModel;
  options: readonly { id: string; measures: readonly { siteId: string; repairId: string }[] }[];
  details: JobMeasures["details"];
  sprays: readonly Pick<SprayOfSystem, "id" | "reachesLeakIds">[];
}): WorkPlan[] {
  const { space } = house;
  const known = new Map<string, number>();
  const remainingAt = (siteId: string, repairId: string): number => {
    const key = measureId(siteId, repairId);
    const there = known.get(key);
    if (there !== undefined) return there;
    const { remainingShare, remainingSpreadShare } = details.get(key)!.repair;
    const at = space.add({
      key: `repairs/${key}`,
      group: "repairs",
      base: remainingShare,
      spread: { shape: "absolute", standardUncertainty: remainingSpreadShare, min: 0, max: 1 },
    });
    known.set(key, at);
    return at;
  };
  if (options.length === 0) return [doNothing(house, "nothing")];
  return options.map((option) => {
    const plan = doNothing(house, option.id);
    for (const { siteId, repairId } of option.measures) {
      const at = remainingAt(siteId, repairId);
      const site = house.sites.findIndex((each) => each.id === siteId);
      if (site >= 0) plan.remainingAt[site] = at;
      else {
        const system = house.systems.findIndex((each) => each.id === siteId);
        const spray = sprays.find((each) => each.id === measureId(siteId, repairId));
        plan.unfoundRemainingAt[system] = at;
        for (const leakId of spray?.reachesLeakIds ?? [])
          plan.sprayAt[house.sites.findIndex((each) => each.id === leakId)] = at;
      }
    }
    return plan;
  });
}
