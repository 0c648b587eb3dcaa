import { fillHeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import { BTU_PER_KWH } from "#lib/units/conversions.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseState } from "./house-state.ts";
import { loadScaleForUse } from "./load-scale.ts";
import type { ModeState } from "./mode-state.ts";

interface Input {
  house: HouseModel;
  state: HouseState;
  parameters: Float64Array;
  /** Yearly need of the whole group, Btu, by load group. */
  loadBtu: Float64Array;
}

const MONTHS = 12;

/** Fills one system's use for its yearly load and returns the yearly input in Btu, without the blower. */
function fillUse(mode: ModeState, loadBtu: number, degradationCoefficient: number): number {
  if (mode.heatPump) {
    const season = mode.heatPump;
    fillHeatPumpSeason({
      season: mode.bins,
      loadBtu,
      usefulBtuPerH: mode.usefulBtuPerH,
      perCapacityFactor: mode.useful.perCapacityFactor,
      capacityBtuPerH: mode.capacityBtuPerH,
      cop: mode.cop,
      degradationCoefficient,
      out: season,
    });
    for (let month = 0; month < MONTHS; month++) {
      mode.inputBtuByMonth[month] = season.electricKWhByMonth[month]! * BTU_PER_KWH;
      mode.supplementaryBtuByMonth[month] = season.supplementaryKWhByMonth[month]! * BTU_PER_KWH;
      mode.runHoursByMonth[month] = season.runHoursByMonth[month]!;
    }
    return season.electricKWh * BTU_PER_KWH;
  }
  const inputBtuPerH = mode.ratedBtuPerH / mode.efficiencyRatio;
  for (let month = 0; month < MONTHS; month++) {
    const hours = loadBtu * mode.fixed.runHoursPerBtuByMonth[month]!;
    mode.runHoursByMonth[month] = hours;
    mode.inputBtuByMonth[month] = hours * inputBtuPerH;
  }
  return loadBtu * mode.fixed.runHoursPerBtu * inputBtuPerH;
}

function servedOf(house: HouseModel, groupIndex: number): number {
  let served = 0;
  for (const s of house.loads.groups[groupIndex]!.systemIndexes) served += house.systems[s]!.servedShare;
  return served;
}

function inputOfGroup({ house, state }: Input, groupIndex: number, groupLoadBtu: number): number {
  const { mode, systemIndexes } = house.loads.groups[groupIndex]!;
  const served = servedOf(house, groupIndex);
  let total = 0;
  for (const s of systemIndexes) {
    const { servedShare, heating } = house.systems[s]!;
    const degradation = mode === "heating" ? heating!.degradationCoefficient : 0;
    total += fillUse(state.systems[s]!.modes[mode]!, (groupLoadBtu * servedShare) / served, degradation);
  }
  return total;
}

/**
 * Finds the yearly need of each load group in the state before the work: from the building, or such that the systems
 * use exactly what is known to have been used. The need is the same after the work; only the use changes.
 */
export function findLoads(input: Input): void {
  const { house, parameters, loadBtu } = input;
  for (let g = 0; g < house.loads.groups.length; g++) {
    const group = house.loads.groups[g]!;
    const factor = parameters[group.loadFactorAt]!;
    const building = group.buildingLoadBtu * servedOf(house, g);
    loadBtu[g] =
      group.knownUseBtu === null
        ? building * factor
        : building * loadScaleForUse(group.knownUseBtu * factor, (scale) => inputOfGroup(input, g, building * scale));
  }
}

/** Fills the energy of every system and mode for the needs found. */
export function fillEnergy(input: Input): void {
  for (let g = 0; g < input.house.loads.groups.length; g++) inputOfGroup(input, g, input.loadBtu[g]!);
}
