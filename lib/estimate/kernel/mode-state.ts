import { createPreparedDucts, type PreparedDucts, type RunningDucts } from "#lib/distribution/duct-system.ts";
import { createFixedEquipmentSeason, type FixedEquipmentSeason } from "#lib/distribution/fixed-equipment-season.ts";
import { heatPumpPerformance } from "#lib/distribution/heat-pump-performance.ts";
import { createHeatPumpSeason, type HeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import type { LowStageSeason } from "#lib/distribution/staged-heat-pump-season.ts";
import { createUsefulLine, type UsefulLine } from "#lib/distribution/useful-line.ts";
import type { CoolingModel, HeatingModel } from "../complete/complete-equipment.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { LowStageModel } from "../complete/complete-low-stage.ts";
import type { Parameter } from "../parameter-space.ts";
import type { Mode, SeasonBins } from "../season-bins.ts";

/** Output and COP of a heat pump over the bins of a season, at its ratings. */
interface Profile {
  capacityRatio: Float64Array;
  cop: Float64Array;
}

/** A heat pump's output, COP and what arrives of it by bin, for this draw, and its use for a season's load. */
export interface HeatPumpState {
  readonly profile: Profile;
  /** Of the rated output, on the design day. */
  readonly designCapacityRatio: number;
  readonly capacityBtuPerH: Float64Array;
  readonly cop: Float64Array;
  readonly usefulBtuPerH: Float64Array;
  readonly season: HeatPumpSeason;
}

/** A system at the low stage of its equipment: less air, lower pressure, ducts that lose another share. */
export interface LowStageState {
  readonly model: LowStageModel;
  /** Shares all lists but those of the leaks with the high stage. */
  readonly running: RunningDucts;
  readonly prepared: PreparedDucts;
  readonly useful: UsefulLine;
  /** One of the two, as of the high stage. */
  readonly fixed: FixedEquipmentSeason;
  readonly heatPump: (LowStageSeason & { readonly capacityBtuPerH: Float64Array }) | null;
  ratedBtuPerH: number;
  efficiencyRatio: number;
}

/** What a Btu of yearly need asks of equipment that is no heat pump: Btu of input, and hours of the blower at full power. */
export interface PerNeed {
  inputBtu: number;
  readonly inputBtuBySlot: Float64Array;
  readonly runHoursBySlot: Float64Array;
}

/** One system in one mode, before or after the work: made once, filled at every evaluation. */
export interface ModeState {
  readonly mode: Mode;
  readonly bins: SeasonBins;
  readonly designBins: SeasonBins;
  readonly useful: UsefulLine;
  /** One of the two, by the kind of equipment: all but heat pumps give the same output in every bin. */
  readonly fixed: FixedEquipmentSeason;
  readonly heatPump: HeatPumpState | null;
  /** Null for equipment of one stage. */
  readonly low: LowStageState | null;
  /** How an air conditioner follows the outdoor temperature. */
  readonly coolingLines: CoolingModel["lines"] | null;
  readonly perNeed: PerNeed;
  /** Rated output of this draw at this airflow, and output over input (COP, SEER or yearly efficiency). */
  ratedBtuPerH: number;
  efficiencyRatio: number;
  /** What wrong airflow leaves of the equipment's efficiency. */
  airflowFactor: number;
  designEfficiency: number;
  seasonalEfficiency: number;
  /** Filled by fill-energy: Btu of fuel or electricity without the blower, and its hours at full power, by slot. */
  readonly inputBtuBySlot: Float64Array;
  readonly supplementaryBtuBySlot: Float64Array;
  readonly runHoursBySlot: Float64Array;
}

/** Several states of one house share the profile of a heat pump over a season. */
const keptProfiles = new WeakMap<HeatingModel, Map<SeasonBins, Profile>>();

function heatPumpProfile(heating: HeatingModel, ratedBtuPerH: number, bins: SeasonBins): Profile {
  const ofHeating = keptProfiles.get(heating) ?? new Map<SeasonBins, Profile>();
  const known = ofHeating.get(bins);
  if (known) return known;
  const made = makeHeatPumpProfile(heating, ratedBtuPerH, bins);
  keptProfiles.set(heating, ofHeating.set(bins, made));
  return made;
}

function makeHeatPumpProfile(heating: HeatingModel, ratedBtuPerH: number, bins: SeasonBins): Profile {
  const profile = { capacityRatio: new Float64Array(bins.count), cop: new Float64Array(bins.count) };
  for (let bin = 0; bin < bins.count; bin++) {
    const { capacityBtuPerH, cop } = heatPumpPerformance({
      outdoorTemperatureF: bins.temperatureF[bin]!,
      capacityAt47BtuPerH: ratedBtuPerH,
      capacityAt17BtuPerH: heating.capacityAt17Ratio * ratedBtuPerH,
      copAt47Ratio: heating.copAt47,
      copAt17Ratio: heating.copAt17,
      frostCapacityFactor: heating.frostCapacityFactor,
      frostPowerFactor: heating.frostPowerFactor,
      defrostHeatRatio: heating.defrostHeatRatio,
    });
    profile.capacityRatio[bin] = capacityBtuPerH / ratedBtuPerH;
    profile.cop[bin] = cop;
  }
  return profile;
}

function createHeatPumpState(
  heating: HeatingModel,
  ratedBtuPerH: number,
  { bins, designBins, slots }: { bins: SeasonBins; designBins: SeasonBins; slots: number },
): HeatPumpState {
  return {
    profile: heatPumpProfile(heating, ratedBtuPerH, bins),
    designCapacityRatio: heatPumpProfile(heating, ratedBtuPerH, designBins).capacityRatio[0]!,
    capacityBtuPerH: new Float64Array(bins.count),
    cop: new Float64Array(bins.count),
    usefulBtuPerH: new Float64Array(bins.count),
    season: createHeatPumpSeason(slots),
  };
}

/** What the equipment gives in one bin of its season, in this draw, at its high stage. */
export const capacityInBin = ({ heatPump, coolingLines, ratedBtuPerH, bins }: ModeState, bin: number): number =>
  heatPump
    ? heatPump.capacityBtuPerH[bin]!
    : coolingLines
      ? ratedBtuPerH * (coolingLines.capacityConstant + coolingLines.capacityPerF * bins.temperatureF[bin]!)
      : ratedBtuPerH;

/** What it gives on the design day. */
export const designCapacity = ({ heatPump, coolingLines, ratedBtuPerH, designBins }: ModeState): number =>
  heatPump
    ? ratedBtuPerH * heatPump.designCapacityRatio
    : coolingLines
      ? ratedBtuPerH * (coolingLines.capacityConstant + coolingLines.capacityPerF * designBins.temperatureF[0]!)
      : ratedBtuPerH;

/** What the low stage gives in one bin; 0 for equipment of one stage. */
export function lowCapacityInBin({ low, coolingLines, bins }: ModeState, bin: number): number {
  if (!low) return 0;
  if (low.heatPump) return low.heatPump.capacityBtuPerH[bin]!;
  if (!coolingLines) return low.ratedBtuPerH;
  return low.ratedBtuPerH * (coolingLines.capacityConstant + coolingLines.capacityPerF * bins.temperatureF[bin]!);
}

/** Part of a bin's need that the low stage meets, at the best estimates. */
export function lowShareInBin({ low }: ModeState, bin: number, parameters: readonly Parameter[]): number {
  if (!low) return 0;
  return low.heatPump ? low.heatPump.loadShareInBin[bin]! : parameters[low.model.loadShareAt]!.base;
}

function createLowStage(
  model: LowStageModel | null,
  running: RunningDucts,
  { bins, slots, isHeatPump }: { bins: SeasonBins; slots: number; isHeatPump: boolean },
): LowStageState | null {
  if (!model) return null;
  const { length } = running.regainFactor;
  return {
    model,
    running: {
      ...running,
      supplyLeakageCfm: new Float64Array(length),
      returnLeakageCfm: new Float64Array(length),
    },
    prepared: createPreparedDucts(length),
    useful: createUsefulLine(),
    fixed: createFixedEquipmentSeason(slots),
    heatPump: isHeatPump
      ? {
          capacityRatio: model.capacityRatio,
          blowerPowerRatio: model.blowerPowerRatio,
          capacityBtuPerH: new Float64Array(bins.count),
          usefulBtuPerH: new Float64Array(bins.count),
          loadShareInBin: new Float64Array(bins.count),
          seasonalEfficiency: 0,
        }
      : null,
    ratedBtuPerH: 0,
    efficiencyRatio: 1,
  };
}

/** Null when the system does not work in this mode. `running` is the system's, which the low stage shares lists with. */
export function createModeState(
  house: HouseModel,
  systemIndex: number,
  mode: Mode,
  running: RunningDucts,
): ModeState | null {
  const { heating, cooling } = house.systems[systemIndex]!;
  const equipment = mode === "heating" ? heating : cooling;
  if (!equipment) return null;
  const bins = mode === "heating" ? house.loads.heating : house.loads.cooling;
  const slots = 12 * bins.slotsPerMonth;
  const designBins = mode === "heating" ? house.designHeating : house.designCooling;
  const isHeatPump = mode === "heating" && heating!.isHeatPump;
  const rated = house.space.parameters[equipment.capacityAt]!.base;
  return {
    mode,
    bins,
    designBins,
    useful: createUsefulLine(),
    fixed: createFixedEquipmentSeason(slots),
    heatPump: isHeatPump ? createHeatPumpState(heating!, rated, { bins, designBins, slots }) : null,
    low: createLowStage(equipment.low, running, { bins, slots, isHeatPump }),
    coolingLines: mode === "cooling" ? cooling!.lines : null,
    perNeed: { inputBtu: 0, inputBtuBySlot: new Float64Array(slots), runHoursBySlot: new Float64Array(slots) },
    ratedBtuPerH: rated,
    efficiencyRatio: 1,
    airflowFactor: 1,
    designEfficiency: 0,
    seasonalEfficiency: 0,
    inputBtuBySlot: new Float64Array(slots),
    supplementaryBtuBySlot: new Float64Array(slots),
    runHoursBySlot: new Float64Array(slots),
  };
}
