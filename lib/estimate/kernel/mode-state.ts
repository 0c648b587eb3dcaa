import { createFixedEquipmentSeason, type FixedEquipmentSeason } from "#lib/distribution/fixed-equipment-season.ts";
import { heatPumpPerformance } from "#lib/distribution/heat-pump-performance.ts";
import { createHeatPumpSeason, type HeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import { createUsefulLine, type UsefulLine } from "#lib/distribution/useful-line.ts";
import type { HeatingModel } from "../complete/complete-equipment.ts";
import type { HouseModel } from "../complete/complete-house.ts";
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

/** One system in one mode, before or after the work: made once, filled at every evaluation. */
export interface ModeState {
  readonly mode: Mode;
  readonly bins: SeasonBins;
  readonly designBins: SeasonBins;
  readonly useful: UsefulLine;
  /** One of the two, by the kind of equipment: all but heat pumps give the same output in every bin. */
  readonly fixed: FixedEquipmentSeason;
  readonly heatPump: HeatPumpState | null;
  /** Rated output of this draw at this airflow, and output over input (COP, SEER or yearly efficiency). */
  ratedBtuPerH: number;
  efficiencyRatio: number;
  /** What wrong airflow leaves of the equipment's efficiency. */
  airflowFactor: number;
  designEfficiency: number;
  seasonalEfficiency: number;
  /** Filled by fill-energy: Btu of fuel or electricity without the blower, and blower hours, by slot of the bins. */
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
  const rows = Array.from(bins.temperatureF, (outdoorTemperatureF) =>
    heatPumpPerformance({
      outdoorTemperatureF,
      capacityAt47BtuPerH: ratedBtuPerH,
      capacityAt17BtuPerH: heating.capacityAt17Ratio * ratedBtuPerH,
      copAt47Ratio: heating.copAt47,
      copAt17Ratio: heating.copAt17,
      frostCapacityFactor: heating.frostCapacityFactor,
      frostPowerFactor: heating.frostPowerFactor,
      defrostHeatRatio: heating.defrostHeatRatio,
    }),
  );
  return {
    capacityRatio: Float64Array.from(rows, (row) => row.capacityBtuPerH / ratedBtuPerH),
    cop: Float64Array.from(rows, (row) => row.cop),
  };
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

/** What the equipment gives in one bin of its season, in this draw. */
export const capacityInBin = ({ heatPump, ratedBtuPerH }: ModeState, bin: number): number =>
  heatPump ? heatPump.capacityBtuPerH[bin]! : ratedBtuPerH;

/** What it gives on the design day. */
export const designCapacity = ({ heatPump, ratedBtuPerH }: ModeState): number =>
  heatPump ? ratedBtuPerH * heatPump.designCapacityRatio : ratedBtuPerH;

/** Null when the system does not work in this mode. */
export function createModeState(house: HouseModel, systemIndex: number, mode: Mode): ModeState | null {
  const { heating, cooling } = house.systems[systemIndex]!;
  if (mode === "heating" ? !heating : !cooling) return null;
  const bins = mode === "heating" ? house.loads.heating : house.loads.cooling;
  const slots = 12 * bins.slotsPerMonth;
  const designBins = mode === "heating" ? house.designHeating : house.designCooling;
  const isHeatPump = mode === "heating" && heating!.isHeatPump;
  const rated = house.space.parameters[(mode === "heating" ? heating! : cooling!).capacityAt]!.base;
  return {
    mode,
    bins,
    designBins,
    useful: createUsefulLine(),
    fixed: createFixedEquipmentSeason(slots),
    heatPump: isHeatPump ? createHeatPumpState(heating!, rated, { bins, designBins, slots }) : null,
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
