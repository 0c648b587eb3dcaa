import { AIR_SPECIFIC_HEAT } from "#lib/air/standard-air.ts";
import type { BtuPerHour } from "#lib/units/quantity.ts";
import { type AirPath, deliveredWithRegain, type Surroundings, total, weighted } from "./air-path.ts";
import type { PreparedDucts } from "./duct-system.ts";

/**
 * Follows the air through a heating system at one moment and keeps account of the equipment's output.
 * House → return duct (conducts, then leaks) → equipment → supply duct (conducts, then leaks) → rooms, each side with
 * runs in several places. Regain: F of all supply losses and of what the full flow conducts away on the return side.
 * With all ducts of a side in one place it equals delivery-effectiveness-heating, thermal-regain and load-factor.
 * Valid for prepared ducts and a capacity above 0. Source: ashrae-152 (form of), derived. Unguarded, allocates nothing.
 */
export function followHeating(
  ducts: PreparedDucts,
  around: Surroundings,
  capacityBtuPerH: BtuPerHour,
  out: AirPath,
): void {
  const { airHeatRateBtuPerHF, supplyLeakFactor, returnLeakFactor } = ducts;
  const { indoorTemperatureF, zoneTemperatureF } = around;

  const returnZoneF = meanAround(ducts.returnConductanceShare, zoneTemperatureF, indoorTemperatureF);
  out.returnDuctEndF = returnZoneF + (indoorTemperatureF - returnZoneF) * ducts.returnConductionFactor;
  out.equipmentEnteringF = returnLeakFactor * out.returnDuctEndF + weighted(ducts.returnLeakShare, zoneTemperatureF);
  out.supplyPlenumF = out.equipmentEnteringF + capacityBtuPerH / airHeatRateBtuPerHF;
  const supplyZoneF = meanAround(ducts.supplyConductanceShare, zoneTemperatureF, indoorTemperatureF);
  out.registerF = supplyZoneF + (out.supplyPlenumF - supplyZoneF) * ducts.supplyConductionFactor;

  const registerExcessBtuPerH = airHeatRateBtuPerHF * (out.registerF - indoorTemperatureF);
  out.deliveredBtuPerH = supplyLeakFactor * registerExcessBtuPerH;
  out.supplyLeakBtuPerH = (1 - supplyLeakFactor) * registerExcessBtuPerH;
  out.supplyConductionBtuPerH = airHeatRateBtuPerHF * (out.supplyPlenumF - out.registerF);
  out.returnConductionBtuPerH = airHeatRateBtuPerHF * (indoorTemperatureF - out.returnDuctEndF);
  out.returnLeakBtuPerH = airHeatRateBtuPerHF * (out.returnDuctEndF - out.equipmentEnteringF);
  out.returnLeakLatentBtuPerH = 0;

  const supplyMeanF = supplyZoneF + (out.supplyPlenumF - supplyZoneF) * ducts.supplyMeanFactor;
  const returnMeanF = returnZoneF + (indoorTemperatureF - returnZoneF) * ducts.returnMeanFactor;
  out.supplyConductionRegainedBtuPerH =
    ducts.supplyRegainSumBtuPerHF * supplyMeanF - weighted(ducts.supplyRegainBtuPerHF, zoneTemperatureF);
  out.returnConductionRegainedBtuPerH =
    ducts.returnRegainSumBtuPerHF * returnMeanF - weighted(ducts.returnRegainBtuPerHF, zoneTemperatureF);
  out.returnLeakRegainedBtuPerH = belowRooms(ducts.returnTradeBtuPerHF, around) - outdoorsBelow(ducts, around);
  out.supplyLeakRegainedBtuPerH =
    ducts.supplyLeakRegainFactor * registerExcessBtuPerH - belowRooms(ducts.supplyTradeBtuPerHF, around);

  out.infiltrationBtuPerH =
    ducts.extraAirMassRateLbPerH * AIR_SPECIFIC_HEAT.value * (indoorTemperatureF - around.outdoorTemperatureF);
  out.usefulBtuPerH = ducts.cyclingFactor * (deliveredWithRegain(out) - out.infiltrationBtuPerH);
}

/** What places of these conductances draw from the rooms, Btu/h: below 0 from warmer places. */
export function belowRooms(
  conductanceBtuPerHF: Float64Array,
  { indoorTemperatureF, zoneTemperatureF }: Pick<Surroundings, "indoorTemperatureF" | "zoneTemperatureF">,
): number {
  return total(conductanceBtuPerHF) * indoorTemperatureF - weighted(conductanceBtuPerHF, zoneTemperatureF);
}

/** What outdoor air drawn through places inside the house costs in heating, Btu/h: below 0 when it is warmer. */
export function outdoorsBelow(
  { returnDrawnBtuPerHF }: PreparedDucts,
  { outdoorTemperatureF, zoneTemperatureF }: Surroundings,
): number {
  return weighted(returnDrawnBtuPerHF, zoneTemperatureF) - total(returnDrawnBtuPerHF) * outdoorTemperatureF;
}

/** Conductance-weighted temperature around a side; the house's own where the side has no surface. */
export function meanAround(shares: Float64Array, zoneTemperatureF: Float64Array, indoorTemperatureF: number): number {
  let sum = indoorTemperatureF;
  for (let p = 0; p < shares.length; p++) sum += shares[p]! * (zoneTemperatureF[p]! - indoorTemperatureF);
  return sum;
}
