import { cyclingFactor } from "#lib/distribution/distribution-efficiency.ts";
import { prepareDucts } from "#lib/distribution/duct-system.ts";
import { unbalancedInfiltration } from "#lib/distribution/unbalanced-infiltration.ts";
import type { ZoneLines } from "#lib/distribution/weather-columns.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { PlaceModel } from "../complete/complete-places.ts";
import { fillMode } from "./fill-mode.ts";
import type { HouseState, SystemState } from "./house-state.ts";

/** The temperatures of the places, for the indoor temperature of each mode. */
export interface Zones {
  heating: ZoneLines;
  cooling: ZoneLines;
}

/** Regain over all duct surface outside the rooms: what cycling loses there comes back the same way. */
function surfaceRegain({ running }: SystemState, places: readonly PlaceModel[]): number {
  let sum = 0;
  let regained = 0;
  for (let p = 0; p < places.length; p++) {
    if (places[p]!.isConditioned) continue;
    const conductance = running.supplyConductanceBtuPerHF[p]! + running.returnConductanceBtuPerHF[p]!;
    sum += conductance;
    regained += conductance * running.regainFactor[p]!;
  }
  return sum > 0 ? regained / sum : 0;
}

/** Fills the efficiency of every system in every mode, and of the design day, for the leaks and airflow of a state. */
export function fillDistribution({
  house,
  state,
  zones,
  parameters,
}: {
  house: HouseModel;
  state: HouseState;
  zones: Zones;
  parameters: Float64Array;
}): void {
  const { systems, places, loads } = house;
  let supplyLeakageCfm = 0;
  let returnLeakageCfm = 0;
  for (let s = 0; s < systems.length; s++) {
    supplyLeakageCfm += state.systems[s]!.leaks.supplyOutsideCfm;
    returnLeakageCfm += state.systems[s]!.leaks.returnOutsideCfm;
  }
  const naturalInfiltrationCfm = parameters[loads.naturalInfiltrationAt]!;
  state.infiltrationOnCfm = unbalancedInfiltration({
    naturalInfiltrationCfm,
    supplyLeakageCfm,
    returnLeakageCfm,
  }).infiltrationCfm;
  const extraInfiltrationCfm = state.infiltrationOnCfm - naturalInfiltrationCfm;
  const allFlowCfm = state.systems.reduce((sum, system) => sum + system.fanFlowCfm, 0);
  for (let s = 0; s < systems.length; s++) {
    const { ducts } = systems[s]!;
    const systemState = state.systems[s]!;
    const { running } = systemState;
    const factor = parameters[ducts.conductanceFactorAt]!;
    for (let p = 0; p < places.length; p++) {
      running.supplyConductanceBtuPerHF[p] = factor * ducts.supplyConductance[p]!;
      running.returnConductanceBtuPerHF[p] = factor * ducts.returnConductance[p]!;
      const { regainAt, isInsideBoundary, toOutsideShareAt } = places[p]!;
      running.regainFactor[p] = parameters[regainAt]!;
      // Outside the boundary only leakage that reaches outdoors counts, and all of it is traded there.
      const outsideShare = isInsideBoundary ? parameters[toOutsideShareAt]! : 1;
      running.roomAirShare[p] = 1 - outsideShare;
      running.outdoorAirShare[p] = outsideShare;
    }
    running.fanFlowCfm = systemState.fanFlowCfm;
    // The house has one shell: what all blowers draw in is shared by their flows.
    running.extraInfiltrationCfm = (extraInfiltrationCfm * systemState.fanFlowCfm) / allFlowCfm;
    running.cyclingFactor = cyclingFactor({
      cyclingLoss: ducts.cyclingLoss,
      outsideAreaShare: ducts.outsideAreaShare,
      regain: surfaceRegain(systemState, places),
    });
    prepareDucts(running, systemState.prepared);
    for (const mode of ["heating", "cooling"] as const) {
      const modeState = systemState.modes[mode];
      if (!modeState) continue;
      fillMode(modeState, {
        system: systems[s]!,
        ducts: systemState.prepared,
        zones: zones[mode],
        indoor: loads.indoor,
        parameters,
        fanFlowCfm: systemState.fanFlowCfm,
      });
    }
  }
}
