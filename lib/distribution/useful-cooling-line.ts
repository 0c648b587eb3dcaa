import { VAPOR_ENTHALPY, VAPOR_SPECIFIC_HEAT } from "#lib/air/moist-air.ts";
import { AIR_SPECIFIC_HEAT } from "#lib/air/standard-air.ts";
import type { BtuPerPound, Fahrenheit, Ratio, Share } from "#lib/units/quantity.ts";
import type { PreparedDucts } from "./duct-system.ts";
import type { UsefulLine } from "./useful-line.ts";
import { addZone, clearLine, type ZoneLines } from "./weather-columns.ts";

/**
 * Shrinks prepared ducts and the lines of their places to the straight line that followCooling computes.
 * As fillHeatingLine, with the register's enthalpy in place of its temperature; a place's air has outdoor moisture by its
 * share and the rooms' for the rest, h_p = 0.24 t_p + W_p (1061 + 0.444 t_p). Source: derived, and
 * ashrae-fundamentals-psychrometrics (form of). Unguarded, allocates nothing.
 */
export function fillCoolingLine({
  ducts,
  zones,
  indoorTemperatureF,
  indoorEnthalpyBtuPerLb,
  indoorHumidityRatio,
  sensibleHeatRatio,
  infiltrationMoistureShare,
  out,
}: {
  ducts: PreparedDucts;
  zones: ZoneLines;
  indoorTemperatureF: Fahrenheit;
  indoorEnthalpyBtuPerLb: BtuPerPound;
  indoorHumidityRatio: Ratio;
  sensibleHeatRatio: Ratio;
  /** Part of the moisture of the air drawn in from outdoors that counts as load; of a place's it stands in its lines. */
  infiltrationMoistureShare: Share;
  out: UsefulLine;
}): void {
  const { returnLeakFactor, supplyMeanFactor, cyclingFactor } = ducts;
  const cp = AIR_SPECIFIC_HEAT.value;
  const supplyConduction = 1 - ducts.supplyConductionFactor;
  const returnConduction = returnLeakFactor * (1 - ducts.returnConductionFactor);
  // Useful Btu/h per Btu/lb that the register air stays below the rooms' enthalpy.
  const perRegisterLb = (ducts.supplyLeakFactor + ducts.supplyLeakRegainFactor) * ducts.airMassRateLbPerH;
  const perMeanF = ducts.supplyRegainSumBtuPerHF;
  // Per °F that the plenum is below the rooms: warmth is gained on the way, part of it regained.
  const perPlenumF = perMeanF * supplyMeanFactor - perRegisterLb * cp * supplyConduction;
  const perReturnZoneF = returnLeakFactor * ducts.returnRegainSumBtuPerHF * (1 - ducts.returnMeanFactor);

  clearLine(out.line);
  clearLine(out.moistureLine);
  out.perCapacityFactor =
    cyclingFactor *
    (perRegisterLb / ducts.airMassRateLbPerH + (sensibleHeatRatio * perPlenumF) / ducts.airHeatRateBtuPerHF);
  let perIndoorF = 0;
  let perIndoorLb = 0;
  for (let p = 0; p < zones.constant.length; p++) {
    const supplyShare = ducts.supplyConductanceShare[p]!;
    const returnShare = ducts.returnConductanceShare[p]!;
    const leakShare = ducts.returnLeakShare[p]!;
    const perZoneF =
      cyclingFactor *
      (ducts.supplyRegainBtuPerHF[p]! +
        returnLeakFactor * ducts.returnRegainBtuPerHF[p]! +
        ducts.returnTradeBtuPerHF[p]! -
        ducts.supplyTradeBtuPerHF[p]! -
        perReturnZoneF * returnShare -
        perMeanF * (1 - supplyMeanFactor) * supplyShare -
        perRegisterLb * cp * (returnConduction * returnShare + supplyConduction * supplyShare) -
        perPlenumF * (returnConduction * returnShare + leakShare));
    const perZoneLb = -cyclingFactor * perRegisterLb * leakShare;
    const outdoorMoisture = zones.outdoorMoistureShare[p]!;
    const indoorMoisture = (1 - outdoorMoisture) * indoorHumidityRatio;
    perIndoorF -= perZoneF;
    perIndoorLb -= perZoneLb;
    const drawn = cyclingFactor * ducts.returnDrawnBtuPerHF[p]!;
    out.line.outdoor -= drawn;
    addZone(out.line, zones, p, perZoneF + drawn + perZoneLb * (cp + VAPOR_SPECIFIC_HEAT.value * indoorMoisture));
    out.line.constant += perZoneLb * VAPOR_ENTHALPY.value * indoorMoisture;
    addZone(out.moistureLine, zones, p, perZoneLb * outdoorMoisture * VAPOR_SPECIFIC_HEAT.value);
    out.moistureLine.constant += perZoneLb * outdoorMoisture * VAPOR_ENTHALPY.value;
  }
  const infiltrationPerLb = cyclingFactor * ducts.extraAirMassRateLbPerH;
  out.perEnthalpy = -infiltrationPerLb * infiltrationMoistureShare;
  // What is not counted of the moisture is counted as dry as the rooms.
  const dryPerLb = infiltrationPerLb * (1 - infiltrationMoistureShare);
  out.line.outdoor -= dryPerLb * (cp + VAPOR_SPECIFIC_HEAT.value * indoorHumidityRatio);
  out.line.constant +=
    perIndoorF * indoorTemperatureF +
    (perIndoorLb + infiltrationPerLb) * indoorEnthalpyBtuPerLb -
    dryPerLb * VAPOR_ENTHALPY.value * indoorHumidityRatio;
}
