import { houseNetwork } from "#lib/simulate/house-network.ts";
import { type Observer, pressureBehind, shownPressure } from "#lib/simulate/observer.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { AS_FOUND, HOUSE, OUTSIDE, type Situation, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Pascals } from "#lib/units/quantity.ts";

const heldAt = (house: TrueHouse, observer: Observer, targetPa: Pascals, changes: Partial<Situation>) =>
  solveNetwork(
    houseNetwork(house, {
      ...AS_FOUND,
      houseFan: { by: "channel", signal: HOUSE, reference: OUTSIDE, targetPa: pressureBehind(observer, targetPa) },
      ...changes,
    }),
  ).pressuresPa;

/** Each zone with reference to the house, the house held at a pressure: 0 is indoors, the house's own is outdoors. */
export function readZonePressures({
  house,
  observer,
  housePressurePa = -50,
}: {
  house: TrueHouse;
  observer: Observer;
  housePressurePa?: Pascals;
}): { zoneId: string; houseToZonePressurePa: Pascals }[] {
  const pressuresPa = heldAt(house, observer, housePressurePa, {});
  return house.zones.map(({ id }) => ({
    zoneId: id,
    houseToZonePressurePa: shownPressure(observer, pressuresPa[HOUSE]! - pressuresPa[id]!),
  }));
}

/** The pressure under a pan on one register after another, the others open, the house held at a pressure. */
export function readPressurePan({
  house,
  observer,
  housePressurePa = -50,
}: {
  house: TrueHouse;
  observer: Observer;
  housePressurePa?: Pascals;
}): { branchId: string; panPressurePa: Pascals }[] {
  return house.branches.map(({ id }) => {
    const pressuresPa = heldAt(house, observer, housePressurePa, { panBranchId: id, isFilterIn: false });
    return { branchId: id, panPressurePa: Math.abs(shownPressure(observer, pressuresPa[id]! - pressuresPa[HOUSE]!)) };
  });
}
