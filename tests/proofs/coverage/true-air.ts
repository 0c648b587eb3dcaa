import { houseNetwork } from "#lib/simulate/house-network.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { AS_FOUND, HOUSE, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { StudyHouse } from "./study-house.ts";

/** The air of a system while it runs: what its blower moves and what each leak passes, by place. */
export interface TrueAir {
  fanFlowCfm: number;
  /** By zone; the last entry is the rooms. */
  supplyPlenumLeaks: number[];
  supplyBranchLeaks: number[];
  returnPlenumLeaks: number[];
  returnBranchLeaks: number[];
  supplyOutdoorsCfm: number;
  returnOutdoorsCfm: number;
}

/** Solves the flow network of the running house for the leaks as they are. */
export function trueAir(study: StudyHouse, network: TrueHouse): TrueAir {
  const { flowsCfm } = solveNetwork(houseNetwork(network, { ...AS_FOUND, isAirHandlerOn: true }));
  const rooms = study.zones.length;
  const column = () => new Array<number>(rooms + 1).fill(0);
  const air: TrueAir = {
    fanFlowCfm: flowsCfm["air-handler"]!,
    supplyPlenumLeaks: column(),
    supplyBranchLeaks: column(),
    returnPlenumLeaks: column(),
    returnBranchLeaks: column(),
    supplyOutdoorsCfm: 0,
    returnOutdoorsCfm: 0,
  };
  for (const leak of network.leaks) {
    const zone = leak.zoneId === HOUSE ? rooms : study.zones.findIndex(({ id }) => id === leak.zoneId);
    const outdoorShare = zone === rooms ? 0 : study.zones[zone]!.outdoorShare;
    const isSupply = leak.side === "supply";
    // A leak in a run may draw the other way in a strange network; then it is none of either.
    const flow = Math.max(0, isSupply ? flowsCfm[leak.id]! : -flowsCfm[leak.id]!);
    const isBranch = leak.branchId !== undefined;
    if (isSupply) {
      air[isBranch ? "supplyBranchLeaks" : "supplyPlenumLeaks"][zone]! += flow;
      air.supplyOutdoorsCfm += outdoorShare * flow;
    } else {
      air[isBranch ? "returnBranchLeaks" : "returnPlenumLeaks"][zone]! += flow;
      air.returnOutdoorsCfm += outdoorShare * flow;
    }
  }
  return air;
}
