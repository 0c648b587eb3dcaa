import { QUARTERS } from "#lib/apportion/measurement-rows.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { Mode } from "../season-bins.ts";
import { createLeakState, type LeakState } from "./leak-state.ts";
import { createModeEfficiency, type ModeEfficiency } from "./mode-efficiency.ts";
import { createModeEnergy, type ModeEnergy } from "./mode-energy.ts";

/** One system in one mode and state. */
export interface ModeState {
  season: ModeEfficiency;
  design: ModeEfficiency;
  energy: ModeEnergy;
}

export interface SystemState {
  leaks: LeakState;
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
  /** Not yet found, by group: supply outside, supply inside, return outside, return inside. */
  readonly cellCfm25: readonly Float64Array[];
  readonly systems: readonly SystemState[];
  infiltrationOnCfm: number;
}

/** The four quarters of leakage that nobody has found yet, in the order of the reconciliation. */
export const CELLS = QUARTERS.map(({ side, outside }) => ({ side, isOutside: outside }));

export function createHouseState(house: HouseModel): HouseState {
  const { heating, cooling } = house.loads;
  const mode = (bins: number): ModeState => ({
    season: createModeEfficiency(bins),
    design: createModeEfficiency(1),
    energy: createModeEnergy(),
  });
  return {
    siteCfm25: new Float64Array(house.sites.length),
    siteOperatingCfm: new Float64Array(house.sites.length),
    cellCfm25: house.groups.map(() => new Float64Array(CELLS.length)),
    systems: house.systems.map((system) => ({
      leaks: createLeakState(house.places.length),
      fanFlowCfm: 0,
      externalStaticPa: 0,
      deliveredCfm: 0,
      blowerPowerW: 0,
      modes: {
        heating: system.heating ? mode(heating.count) : null,
        cooling: system.cooling ? mode(cooling.count) : null,
      },
    })),
    infiltrationOnCfm: 0,
  };
}
