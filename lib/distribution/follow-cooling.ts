import type { BtuPerHour, Ratio } from "#lib/units/quantity.ts";
import { type AirPath, deliveredWithRegain, type Surroundings, weighted } from "./air-path.ts";
import type { PreparedDucts } from "./duct-system.ts";
import { belowRooms, meanAround, outdoorsBelow } from "./follow-heating.ts";

/**
 * Follows the air through a cooling system at one moment, moisture included, and keeps account of the total capacity.
 * As followHeating, with enthalpies: the coil takes the total capacity, its sensible part lowers the temperature; a
 * return leak brings in the enthalpy of its place; conduction changes temperature only. Regain: F of all supply losses
 * and of what the return conducts; of a return leak's gain what the air that makes up for it brings. With all ducts of a side in one place it
 * equals delivery-effectiveness-cooling, thermal-regain-cooling and load-factor-cooling.
 * Valid for prepared ducts and a capacity above 0. Source: ashrae-152 (form of), derived. Unguarded, allocates nothing.
 */
export function followCooling(
  ducts: PreparedDucts,
  around: Surroundings,
  coil: { capacityBtuPerH: BtuPerHour; sensibleHeatRatio: Ratio },
  out: AirPath,
): void {
  const { airHeatRateBtuPerHF, airMassRateLbPerH, supplyLeakFactor, returnLeakFactor } = ducts;
  const { capacityBtuPerH, sensibleHeatRatio } = coil;
  const { indoorTemperatureF, indoorEnthalpyBtuPerLb, zoneTemperatureF } = around;

  const returnZoneF = meanAround(ducts.returnConductanceShare, zoneTemperatureF, indoorTemperatureF);
  out.returnDuctEndF = returnZoneF + (indoorTemperatureF - returnZoneF) * ducts.returnConductionFactor;
  out.equipmentEnteringF = returnLeakFactor * out.returnDuctEndF + weighted(ducts.returnLeakShare, zoneTemperatureF);
  out.supplyPlenumF = out.equipmentEnteringF - (sensibleHeatRatio * capacityBtuPerH) / airHeatRateBtuPerHF;
  const supplyZoneF = meanAround(ducts.supplyConductanceShare, zoneTemperatureF, indoorTemperatureF);
  out.registerF = supplyZoneF + (out.supplyPlenumF - supplyZoneF) * ducts.supplyConductionFactor;

  out.returnConductionBtuPerH = airHeatRateBtuPerHF * returnLeakFactor * (out.returnDuctEndF - indoorTemperatureF);
  out.returnLeakBtuPerH =
    airMassRateLbPerH *
    (weighted(ducts.returnLeakShare, around.zoneEnthalpyBtuPerLb) - (1 - returnLeakFactor) * indoorEnthalpyBtuPerLb);
  out.returnLeakLatentBtuPerH =
    out.returnLeakBtuPerH -
    airHeatRateBtuPerHF *
      (weighted(ducts.returnLeakShare, zoneTemperatureF) - (1 - returnLeakFactor) * indoorTemperatureF);
  out.supplyConductionBtuPerH = airHeatRateBtuPerHF * (out.registerF - out.supplyPlenumF);
  const registerDeficitBtuPerH =
    capacityBtuPerH - out.returnConductionBtuPerH - out.returnLeakBtuPerH - out.supplyConductionBtuPerH;
  out.deliveredBtuPerH = supplyLeakFactor * registerDeficitBtuPerH;
  out.supplyLeakBtuPerH = (1 - supplyLeakFactor) * registerDeficitBtuPerH;

  const supplyMeanF = supplyZoneF + (out.supplyPlenumF - supplyZoneF) * ducts.supplyMeanFactor;
  const returnMeanF = returnZoneF + (indoorTemperatureF - returnZoneF) * ducts.returnMeanFactor;
  out.supplyConductionRegainedBtuPerH =
    weighted(ducts.supplyRegainBtuPerHF, zoneTemperatureF) - ducts.supplyRegainSumBtuPerHF * supplyMeanF;
  out.returnConductionRegainedBtuPerH =
    returnLeakFactor *
    (weighted(ducts.returnRegainBtuPerHF, zoneTemperatureF) - ducts.returnRegainSumBtuPerHF * returnMeanF);
  out.returnLeakRegainedBtuPerH = outdoorsBelow(ducts, around) - belowRooms(ducts.returnTradeBtuPerHF, around);
  out.supplyLeakRegainedBtuPerH =
    ducts.supplyLeakRegainFactor * registerDeficitBtuPerH + belowRooms(ducts.supplyTradeBtuPerHF, around);

  out.infiltrationBtuPerH = ducts.extraAirMassRateLbPerH * (around.outdoorEnthalpyBtuPerLb - indoorEnthalpyBtuPerLb);
  out.usefulBtuPerH = ducts.cyclingFactor * (deliveredWithRegain(out) - out.infiltrationBtuPerH);
}
