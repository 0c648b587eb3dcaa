import { fillHeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import { fillStagedHeatPumpSeason } from "#lib/distribution/staged-heat-pump-season.ts";
import { BTU_PER_KWH, WATTS_PER_KILOWATT } from "#lib/units/conversions.ts";
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

/** Fills one system's use for its yearly load and returns the yearly input in Btu, without the blower. */
function fillUse(mode: ModeState, loadBtu: number, degradationCoefficient: number): number {
  const slots = mode.runHoursBySlot.length;
  if (mode.heatPump) {
    const { season, capacityBtuPerH, cop, usefulBtuPerH } = mode.heatPump;
    const asked = {
      season: mode.bins,
      loadBtu,
      usefulBtuPerH,
      perCapacityFactor: mode.useful.perCapacityFactor,
      capacityBtuPerH,
      cop,
      degradationCoefficient,
      out: season,
    };
    if (mode.low) {
      const low = mode.low.heatPump!;
      fillStagedHeatPumpSeason({ ...asked, low });
      mode.seasonalEfficiency = low.seasonalEfficiency;
    } else fillHeatPumpSeason(asked);
    for (let slot = 0; slot < slots; slot++) {
      mode.inputBtuBySlot[slot] = season.electricKWhBySlot[slot]! * BTU_PER_KWH;
      mode.supplementaryBtuBySlot[slot] = season.supplementaryKWhBySlot[slot]! * BTU_PER_KWH;
      mode.runHoursBySlot[slot] = season.runHoursBySlot[slot]!;
    }
    return season.electricKWh * BTU_PER_KWH;
  }
  const { inputBtu, inputBtuBySlot, runHoursBySlot } = mode.perNeed;
  for (let slot = 0; slot < slots; slot++) {
    mode.runHoursBySlot[slot] = loadBtu * runHoursBySlot[slot]!;
    mode.inputBtuBySlot[slot] = loadBtu * inputBtuBySlot[slot]!;
  }
  return loadBtu * inputBtu;
}

function servedOf(house: HouseModel, groupIndex: number): number {
  let served = 0;
  for (const s of house.loads.groups[groupIndex]!.systemIndexes) served += house.systems[s]!.servedShare;
  return served;
}

/** Yearly input of a group for its need, Btu, with or without its blowers. Fills the account of its systems. */
export function groupInputBtu(
  { house, state }: Pick<Input, "house" | "state">,
  groupIndex: number,
  groupLoadBtu: number,
  withBlower: boolean,
): number {
  const { mode, systemIndexes } = house.loads.groups[groupIndex]!;
  const served = servedOf(house, groupIndex);
  let total = 0;
  for (const s of systemIndexes) {
    const { servedShare, heating } = house.systems[s]!;
    const modeState = state.systems[s]!.modes[mode]!;
    const degradation = mode === "heating" ? heating!.degradationCoefficient : 0;
    total += fillUse(modeState, (groupLoadBtu * servedShare) / served, degradation);
    if (!withBlower) continue;
    let hours = 0;
    for (let slot = 0; slot < modeState.runHoursBySlot.length; slot++) hours += modeState.runHoursBySlot[slot]!;
    total += (hours * state.systems[s]!.blowerPowerW * BTU_PER_KWH) / WATTS_PER_KILOWATT;
  }
  return total;
}

/** The yearly need of a group that uses exactly so much, Btu: what the building needs, scaled until it does. */
export function groupLoadForUse(
  input: Pick<Input, "house" | "state">,
  groupIndex: number,
  useBtu: number,
  withBlower: boolean,
): number {
  const building = groupBuildingLoad(input.house, groupIndex);
  return building * loadScaleForUse(useBtu, (scale) => groupInputBtu(input, groupIndex, building * scale, withBlower));
}

/** Yearly need of a group from the building, Btu: its systems' share of the house's. */
export function groupBuildingLoad(house: HouseModel, groupIndex: number): number {
  return house.loads.groups[groupIndex]!.buildingLoadBtu * servedOf(house, groupIndex);
}

/**
 * Finds the yearly need of each load group in the state before the work: from the building, or such that the systems
 * use exactly what is known to have been used, and never more than the bills hold; less what other measures take off
 * before. The need is the same after the work; only the use changes.
 */
export function findLoads(input: Input): void {
  const { house, parameters, loadBtu } = input;
  for (let g = 0; g < house.loads.groups.length; g++) {
    const { used, mostUseBtu, mode, loadFactorAt } = house.loads.groups[g]!;
    const factor = parameters[loadFactorAt]!;
    if (used.useBtu === null) {
      const load = groupBuildingLoad(house, g) * factor;
      const isTooMuch = mostUseBtu !== null && groupInputBtu(input, g, load, used.includesBlower) > mostUseBtu;
      loadBtu[g] = isTooMuch ? groupLoadForUse(input, g, mostUseBtu, used.includesBlower) : load;
    } else {
      const useBtu = used.useBtu * factor;
      loadBtu[g] = groupLoadForUse(
        input,
        g,
        mostUseBtu !== null && mostUseBtu < useBtu ? mostUseBtu : useBtu,
        used.includesBlower,
      );
    }
    loadBtu[g]! *= parameters[house.loads.otherMeasures.needLeftAt[mode]]!;
  }
}

/** Fills the energy of every system and mode for the needs found, with what other measures leave of the input for them. */
export function fillEnergy(input: Input): void {
  const { house, state, parameters, loadBtu } = input;
  for (let g = 0; g < house.loads.groups.length; g++) {
    groupInputBtu(input, g, loadBtu[g]!, false);
    const { mode, systemIndexes } = house.loads.groups[g]!;
    const left = parameters[house.loads.otherMeasures.inputLeftAt[mode]]!;
    if (left === 1) continue;
    for (const s of systemIndexes) {
      const { inputBtuBySlot, supplementaryBtuBySlot } = state.systems[s]!.modes[mode]!;
      for (let slot = 0; slot < inputBtuBySlot.length; slot++) {
        inputBtuBySlot[slot]! *= left;
        supplementaryBtuBySlot[slot]! *= left;
      }
    }
  }
}
