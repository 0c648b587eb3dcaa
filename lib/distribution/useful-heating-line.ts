import { AIR_SPECIFIC_HEAT } from "#lib/air/standard-air.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { PreparedDucts } from "./duct-system.ts";
import type { UsefulLine } from "./useful-line.ts";
import { addZone, clearLine, type ZoneLines } from "./weather-columns.ts";

/**
 * Shrinks prepared ducts and the lines of their places to the straight line that followHeating computes.
 * With D_p = t_p − t_in and e = capacity/m: entering air t_in + Σ ρ_p D_p, ρ_p = a_r(1 − B_r) w_rp + l_rp; register air
 * t_in + B_s (e + Σ ρD) + (1 − B_s) Σ w_s D; mean of the supply the same with κ_s for B_s.
 * Source: derived. Unguarded, allocates nothing.
 */
export function fillHeatingLine({
  ducts,
  zones,
  indoorTemperatureF,
  out,
}: {
  ducts: PreparedDucts;
  zones: ZoneLines;
  indoorTemperatureF: Fahrenheit;
  out: UsefulLine;
}): void {
  const { returnLeakFactor, supplyConductionFactor, supplyMeanFactor, cyclingFactor } = ducts;
  // Useful Btu/h per °F of register air and of the mean air in the supply ducts, above the rooms.
  const perRegisterF = (ducts.supplyLeakFactor + ducts.supplyLeakRegainFactor) * ducts.airHeatRateBtuPerHF;
  const perMeanF = ducts.supplyRegainSumBtuPerHF;
  const perPlenumF = perRegisterF * supplyConductionFactor + perMeanF * supplyMeanFactor;
  const perSupplyZoneF = perRegisterF * (1 - supplyConductionFactor) + perMeanF * (1 - supplyMeanFactor);
  const perReturnZoneF = ducts.returnRegainSumBtuPerHF * (1 - ducts.returnMeanFactor);
  const returnConduction = returnLeakFactor * (1 - ducts.returnConductionFactor);

  clearLine(out.line);
  clearLine(out.moistureLine);
  out.perEnthalpy = 0;
  out.perCapacityFactor = (cyclingFactor * perPlenumF) / ducts.airHeatRateBtuPerHF;
  let perIndoorF = 0;
  for (let p = 0; p < zones.constant.length; p++) {
    const returnShare = ducts.returnConductanceShare[p]!;
    const perZoneF =
      cyclingFactor *
      (perPlenumF * (returnConduction * returnShare + ducts.returnLeakShare[p]!) +
        perSupplyZoneF * ducts.supplyConductanceShare[p]! +
        perReturnZoneF * returnShare -
        ducts.supplyRegainBtuPerHF[p]! -
        ducts.returnRegainBtuPerHF[p]! -
        ducts.returnTradeBtuPerHF[p]! +
        ducts.supplyTradeBtuPerHF[p]!);
    const drawn = cyclingFactor * ducts.returnDrawnBtuPerHF[p]!;
    perIndoorF -= perZoneF;
    addZone(out.line, zones, p, perZoneF - drawn);
    out.line.outdoor += drawn;
  }
  const infiltrationPerF = cyclingFactor * ducts.extraAirMassRateLbPerH * AIR_SPECIFIC_HEAT.value;
  out.line.outdoor += infiltrationPerF;
  out.line.constant += (perIndoorF - infiltrationPerF) * indoorTemperatureF;
}
