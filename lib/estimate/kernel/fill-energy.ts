import type { HouseModel } from "../complete/complete-house.ts";
import { equipmentCurve } from "./fill-distribution.ts";
import type { HouseState } from "./house-state.ts";
import { type EquipmentCurve, fillModeEnergy, loadScaleForUse } from "./mode-energy.ts";

interface Input {
  house: HouseModel;
  state: HouseState;
  parameters: Float64Array;
  curve: EquipmentCurve;
  /** Yearly need of the whole house, Btu, by load group. */
  loadBtu: Float64Array;
}

function servedOf(house: HouseModel, groupIndex: number): number {
  let served = 0;
  for (const s of house.loads.groups[groupIndex]!.systemIndexes) served += house.systems[s]!.servedShare;
  return served;
}

function inputOfGroup({ house, state, parameters, curve }: Input, groupIndex: number, groupLoadBtu: number): number {
  const group = house.loads.groups[groupIndex]!;
  const served = servedOf(house, groupIndex);
  let total = 0;
  for (const s of group.systemIndexes) {
    const modeState = state.systems[s]!.modes[group.mode]!;
    equipmentCurve(house, s, group.mode, parameters, curve);
    total += fillModeEnergy(modeState.energy, {
      bins: group.mode === "heating" ? house.loads.heating : house.loads.cooling,
      efficiency: modeState.season.efficiency,
      loadBtu: (groupLoadBtu * house.systems[s]!.servedShare) / served,
      curve,
    });
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
