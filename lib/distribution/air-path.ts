import type { BtuPerHour, BtuPerPound, Fahrenheit } from "#lib/units/quantity.ts";

/** The air inside and around the ducts at one moment. Zone lists have one entry a place. */
export interface Surroundings {
  indoorTemperatureF: Fahrenheit;
  outdoorTemperatureF: Fahrenheit;
  readonly zoneTemperatureF: Float64Array;
  /** Read in cooling only. */
  indoorEnthalpyBtuPerLb: BtuPerPound;
  outdoorEnthalpyBtuPerLb: BtuPerPound;
  readonly zoneEnthalpyBtuPerLb: Float64Array;
}

/**
 * The air's trip from the rooms through the equipment and back, and where the equipment's output goes. In heating heat
 * is lost, in cooling it is gained: both count as lost capacity, above 0 when the rooms get less.
 * Capacity = delivered + supply conduction + supply leak + return conduction + return leak.
 */
export interface AirPath {
  returnDuctEndF: Fahrenheit;
  equipmentEnteringF: Fahrenheit;
  supplyPlenumF: Fahrenheit;
  registerF: Fahrenheit;
  deliveredBtuPerH: BtuPerHour;
  supplyConductionBtuPerH: BtuPerHour;
  supplyLeakBtuPerH: BtuPerHour;
  returnConductionBtuPerH: BtuPerHour;
  returnLeakBtuPerH: BtuPerHour;
  /** The part of the return leak that is moisture; 0 in heating. */
  returnLeakLatentBtuPerH: BtuPerHour;
  /** What comes back to the rooms of the losses above. */
  supplyConductionRegainedBtuPerH: BtuPerHour;
  supplyLeakRegainedBtuPerH: BtuPerHour;
  returnConductionRegainedBtuPerH: BtuPerHour;
  /** What comes back of the rooms' air drawn through a place, less what outdoor air drawn through it costs. */
  returnLeakRegainedBtuPerH: BtuPerHour;
  /** Load of the outdoor air that enters only because the blower runs. */
  infiltrationBtuPerH: BtuPerHour;
  /** What an hour of running is worth to the rooms: delivered and regained, less infiltration, times what cycling leaves. */
  usefulBtuPerH: BtuPerHour;
}

export function createAirPath(): AirPath {
  return {
    returnDuctEndF: 0,
    equipmentEnteringF: 0,
    supplyPlenumF: 0,
    registerF: 0,
    deliveredBtuPerH: 0,
    supplyConductionBtuPerH: 0,
    supplyLeakBtuPerH: 0,
    returnConductionBtuPerH: 0,
    returnLeakBtuPerH: 0,
    returnLeakLatentBtuPerH: 0,
    supplyConductionRegainedBtuPerH: 0,
    supplyLeakRegainedBtuPerH: 0,
    returnConductionRegainedBtuPerH: 0,
    returnLeakRegainedBtuPerH: 0,
    infiltrationBtuPerH: 0,
    usefulBtuPerH: 0,
  };
}

/** Delivered and regained, Btu/h: the delivery effectiveness with regain times the capacity. */
export function deliveredWithRegain(path: AirPath): BtuPerHour {
  return (
    path.deliveredBtuPerH +
    path.supplyConductionRegainedBtuPerH +
    path.supplyLeakRegainedBtuPerH +
    path.returnConductionRegainedBtuPerH +
    path.returnLeakRegainedBtuPerH
  );
}

/** Σ weights·values, one entry a place. */
export function weighted(weights: Float64Array, values: Float64Array): number {
  let sum = 0;
  for (let p = 0; p < weights.length; p++) sum += weights[p]! * values[p]!;
  return sum;
}

/** Σ values. */
export function total(values: Float64Array): number {
  let sum = 0;
  for (let p = 0; p < values.length; p++) sum += values[p]!;
  return sum;
}
