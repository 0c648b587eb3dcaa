import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import type { NetworkSolution } from "#lib/simulate/flow-network.ts";
import { houseNetwork } from "#lib/simulate/house-network.ts";
import { type Observer, shownPressure } from "#lib/simulate/observer.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { AS_FOUND, HOUSE, OUTSIDE, RETURN, type Situation, SUPPLY, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Cfm, FahrenheitDifference, Pascals } from "#lib/units/quantity.ts";

const running = (house: TrueHouse, changes: Partial<Situation> = {}): NetworkSolution =>
  solveNetwork(houseNetwork(house, { ...AS_FOUND, isAirHandlerOn: true, ...changes }));

/** Static pressures in both plenums with reference to the house while the air handler runs. */
export function readStaticPressures({ house, observer }: { house: TrueHouse; observer: Observer }): {
  supplyStaticPa: Pascals;
  returnStaticPa: Pascals;
} {
  const { pressuresPa } = running(house);
  return {
    supplyStaticPa: shownPressure(observer, pressuresPa[SUPPLY]! - pressuresPa[HOUSE]!),
    returnStaticPa: shownPressure(observer, pressuresPa[RETURN]! - pressuresPa[HOUSE]!),
  };
}

/**
 * How much warmer the air gets in the equipment: ΔT = q/(60 ρ cp Q). Source: derived. Left out: the blower's own heat.
 */
export function readTemperatureRise(house: TrueHouse): { temperatureRiseF: FahrenheitDifference } {
  const flowCfm = running(house).flowsCfm["air-handler"]!;
  const heatPerDegree = MINUTES_PER_HOUR * STANDARD_AIR_DENSITY.value * AIR_SPECIFIC_HEAT.value * flowCfm;
  return { temperatureRiseF: house.airHandler.heatingOutputBtuPerH / heatPerDegree };
}

/**
 * Fan flow by matched pressure: the return ducts are blanked off, a calibrated fan feeds the cabinet and the air
 * handler runs. The test fan is turned up until the supply plenum stands as in operation, or as far as it can.
 */
export function readMatchedPressure({
  house,
  observer,
  largestDeviceFlowCfm,
}: {
  house: TrueHouse;
  observer: Observer;
  largestDeviceFlowCfm: Cfm;
}): { normalPressurePa: Pascals; devicePressurePa: Pascals; deviceFlowCfm: Cfm } {
  const normal = running(house);
  const normalPa = normal.pressuresPa[SUPPLY]! - normal.pressuresPa[HOUSE]!;
  const device = { direction: "pushing", joins: RETURN, standsIn: HOUSE, restrictor: WIDE_OPEN } as const;
  const withDevice = (control: NonNullable<Situation["ductFan"]>["control"]) =>
    running(house, { hasBarrierBeforeEquipment: true, ductFan: { ...device, control } });
  const matched = withDevice({ by: "channel", signal: SUPPLY, reference: HOUSE, targetPa: normalPa });
  const isInReach = matched.flowsCfm["duct-fan"]! <= largestDeviceFlowCfm;
  const shown = isInReach ? matched : withDevice({ by: "flow", flowCfm: largestDeviceFlowCfm });
  return {
    normalPressurePa: shownPressure(observer, normalPa),
    devicePressurePa: shownPressure(observer, shown.pressuresPa[SUPPLY]! - shown.pressuresPa[HOUSE]!),
    deviceFlowCfm: shown.flowsCfm["duct-fan"]! / (1 + observer.ductFanErrorShare),
  };
}

/** A test fan large enough for the flow of an air handler, read without a flow restrictor. */
const WIDE_OPEN = { coefficient: 150, exponent: 0.5 };

/** Each room with reference to the hall, its door shut, while the air handler runs. */
export function readRoomToHall({ house, observer }: { house: TrueHouse; observer: Observer }): {
  roomId: string;
  roomToHallPressurePa: Pascals;
}[] {
  const { pressuresPa } = running(house, { areRoomDoorsShut: true });
  return house.rooms.map(({ id }) => ({
    roomId: id,
    roomToHallPressurePa: shownPressure(observer, pressuresPa[id]! - pressuresPa[HOUSE]!),
  }));
}

/** The zone of a combustion appliance with reference to outside, everything that takes air out running. */
export function readCombustionZone({
  house,
  observer,
  zoneId,
  exhaustFlowCfm,
}: {
  house: TrueHouse;
  observer: Observer;
  zoneId: string;
  exhaustFlowCfm: Cfm;
}): { zoneToOutsidePressurePa: Pascals } {
  const { pressuresPa } = running(house, { exhaustFlowCfm, areRoomDoorsShut: true });
  return { zoneToOutsidePressurePa: shownPressure(observer, pressuresPa[zoneId]! - pressuresPa[OUTSIDE]!) };
}
