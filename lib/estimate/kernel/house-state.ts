import { QUARTERS } from "#lib/apportion/measurement-rows.ts";
import { createPreparedDucts, type PreparedDucts, type RunningDucts } from "#lib/distribution/duct-system.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { Mode } from "../season-bins.ts";
import { createLeakState, type LeakState } from "./leak-state.ts";
import { createModeState, type ModeState } from "./mode-state.ts";

export interface SystemState {
  leaks: LeakState;
  /** Shares its lists with `leaks`. */
  running: RunningDucts;
  prepared: PreparedDucts;
  fanFlowCfm: number;
  externalStaticPa: number;
  deliveredCfm: number;
  blowerPowerW: number;
  modes: Readonly<Record<Mode, ModeState | null>>;
}

/** The whole house before or after the work. Made once, filled at every evaluation. */
export interface HouseState {
  /** By site. */
  readonly siteCfm25: Float64Array;
  readonly siteOperatingCfm: Float64Array;
  /** Not yet found, by group and quarter. */
  readonly cellCfm25: readonly Float64Array[];
  readonly systems: readonly SystemState[];
  infiltrationOnCfm: number;
}

/** The four quarters of leakage that nobody has found yet, in the order of the reconciliation. */
export const CELLS = QUARTERS.map(({ side, outside }) => ({ side, isOutside: outside }));

function createSystemState(house: HouseModel, index: number): SystemState {
  const { length } = house.places;
  const leaks = createLeakState(length);
  const running: RunningDucts = {
    supplyConductanceBtuPerHF: new Float64Array(length),
    returnConductanceBtuPerHF: new Float64Array(length),
    supplyLeakageCfm: leaks.supplyToZone,
    returnLeakageCfm: leaks.returnToZone,
    regainFactor: new Float64Array(length),
    roomAirShare: new Float64Array(length),
    outdoorAirShare: new Float64Array(length),
    fanFlowCfm: 0,
    airDensityLbPerFt3: house.airDensityLbPerFt3,
    extraInfiltrationCfm: 0,
    cyclingFactor: 1,
  };
  return {
    leaks,
    running,
    prepared: createPreparedDucts(length),
    fanFlowCfm: 0,
    externalStaticPa: 0,
    deliveredCfm: 0,
    blowerPowerW: 0,
    modes: {
      heating: createModeState(house, index, "heating", running),
      cooling: createModeState(house, index, "cooling", running),
    },
  };
}

export function createHouseState(house: HouseModel): HouseState {
  return {
    siteCfm25: new Float64Array(house.sites.length),
    siteOperatingCfm: new Float64Array(house.sites.length),
    cellCfm25: house.groups.map(() => new Float64Array(CELLS.length)),
    systems: house.systems.map((_, index) => createSystemState(house, index)),
    infiltrationOnCfm: 0,
  };
}
