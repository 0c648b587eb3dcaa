import { cyclingFactor } from "#lib/distribution/distribution-efficiency.ts";
import { prepareDucts } from "#lib/distribution/duct-system.ts";
import { lowStageLeakRatio } from "#lib/distribution/low-stage.ts";
import { unbalancedInfiltration } from "#lib/distribution/unbalanced-infiltration.ts";
import type { ZoneLines } from "#lib/distribution/weather-columns.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { PlaceModel } from "../complete/complete-places.ts";
import { fillMode } from "./fill-mode.ts";
import type { HouseState, SystemState } from "./house-state.ts";
import type { LowStageState } from "./mode-state.ts";

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

/**
 * The ducts at the low stage: less air, leaks by their lower pressure, less air drawn in by unequal leaks. Of a house with
 * several systems all are taken to run at their low stages together.
 */
function fillLowStage(
  { model, running, prepared }: LowStageState,
  high: SystemState["running"],
  natural: { naturalInfiltrationCfm: number; supplyLeakageCfm: number; returnLeakageCfm: number; flowShare: number },
): void {
  const leakRatio = lowStageLeakRatio(model.flowRatio);
  for (let p = 0; p < high.supplyLeakageCfm.length; p++) {
    running.supplyLeakageCfm[p] = leakRatio * high.supplyLeakageCfm[p]!;
    running.returnLeakageCfm[p] = leakRatio * high.returnLeakageCfm[p]!;
  }
  const { naturalInfiltrationCfm, flowShare } = natural;
  const { infiltrationCfm } = unbalancedInfiltration({
    naturalInfiltrationCfm,
    supplyLeakageCfm: leakRatio * natural.supplyLeakageCfm,
    returnLeakageCfm: leakRatio * natural.returnLeakageCfm,
  });
  running.fanFlowCfm = model.flowRatio * high.fanFlowCfm;
  running.extraInfiltrationCfm = (infiltrationCfm - naturalInfiltrationCfm) * flowShare;
  running.cyclingFactor = high.cyclingFactor;
  prepareDucts(running, prepared);
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
      if (modeState.low) {
        const flowShare = systemState.fanFlowCfm / allFlowCfm;
        const house = { naturalInfiltrationCfm, supplyLeakageCfm, returnLeakageCfm, flowShare };
        fillLowStage(modeState.low, running, house);
      }
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
