import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Fahrenheit, FahrenheitDifference, Ratio } from "#lib/units/quantity.ts";
import { conductionFactor } from "./conduction-factor.ts";
import { type OnePlaceDucts, requireDucts, requireTemperature } from "./duct-guards.ts";
import { REGISTER_COLDER_THAN_ROOM, RETURN_LEAK_HELPS } from "./explanations.ts";

export interface HeatingDelivery {
  deliveryEffectiveness: Ratio;
  supplyLeakFactor: Ratio;
  returnLeakFactor: Ratio;
  supplyConductionFactor: Ratio;
  returnConductionFactor: Ratio;
  equipmentTemperatureRiseF: FahrenheitDifference;
  /** Indoor less the return zone. */
  returnTemperatureDifferenceF: FahrenheitDifference;
  supplyPlenumTemperatureF: Fahrenheit;
  registerTemperatureF: Fahrenheit;
  /** What is unusual: register air colder than the room, a return leak that brings in warmth. */
  notes: readonly ValidityNote[];
}

/**
 * Share of the heat put into the air that arrives through the registers, all ducts of a side in one place.
 * DE = a_s B_s − a_s B_s (1 − a_r B_r) Δt_r/Δt_e − a_s (1 − B_s) Δt_s/Δt_e; a = 1 − leakage/flow, B = exp(−A/(R m)),
 * m = 60 Q ρ cp, Δt = t_in − t_zone, Δt_e = capacity/m. Valid for steady operation. Source: ashrae-152 (form of), and
 * derived: an energy balance along the ducts. Left out: regain, cycling, infiltration (methods of their own); leaks are
 * taken at the end of a side, conduction at full flow.
 * @throws InputProblem when there is no flow, a leak is not below the flow, R is not above 0, or a value is impossible.
 */
export function deliveryEffectivenessHeating({
  indoorTemperatureF,
  supplyZoneTemperatureF,
  returnZoneTemperatureF,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  ...given
}: Omit<OnePlaceDucts, "airDensityLbPerFt3"> & {
  indoorTemperatureF: Fahrenheit;
  supplyZoneTemperatureF: Fahrenheit;
  returnZoneTemperatureF: Fahrenheit;
  airDensityLbPerFt3?: OnePlaceDucts["airDensityLbPerFt3"];
}): HeatingDelivery {
  const ducts = { ...given, airDensityLbPerFt3 };
  requireDucts(ducts);
  requireTemperature("indoorTemperatureF", "Indoor temperature", indoorTemperatureF);
  requireTemperature("supplyZoneTemperatureF", "Temperature around the supply ducts", supplyZoneTemperatureF);
  requireTemperature("returnZoneTemperatureF", "Temperature around the return ducts", returnZoneTemperatureF);

  const airHeatRateBtuPerHF = MINUTES_PER_HOUR * ducts.fanFlowCfm * airDensityLbPerFt3 * AIR_SPECIFIC_HEAT.value;
  const supplyLeakFactor = 1 - ducts.supplyLeakageCfm / ducts.fanFlowCfm;
  const returnLeakFactor = 1 - ducts.returnLeakageCfm / ducts.fanFlowCfm;
  const supplyConductionFactor = conductionFactor(ducts.supplyAreaFt2 / ducts.supplyRValue, airHeatRateBtuPerHF);
  const returnConductionFactor = conductionFactor(ducts.returnAreaFt2 / ducts.returnRValue, airHeatRateBtuPerHF);
  const equipmentTemperatureRiseF = ducts.capacityBtuPerH / airHeatRateBtuPerHF;
  const returnTemperatureDifferenceF = indoorTemperatureF - returnZoneTemperatureF;
  const supplyDifferenceF = indoorTemperatureF - supplyZoneTemperatureF;

  const returnLossF = (1 - returnLeakFactor * returnConductionFactor) * returnTemperatureDifferenceF;
  const supplyPlenumTemperatureF = indoorTemperatureF - returnLossF + equipmentTemperatureRiseF;
  const registerTemperatureF =
    supplyZoneTemperatureF + (supplyPlenumTemperatureF - supplyZoneTemperatureF) * supplyConductionFactor;
  const deliveryEffectiveness =
    supplyLeakFactor * supplyConductionFactor -
    (supplyLeakFactor * supplyConductionFactor * returnLossF) / equipmentTemperatureRiseF -
    (supplyLeakFactor * (1 - supplyConductionFactor) * supplyDifferenceF) / equipmentTemperatureRiseF;
  return {
    deliveryEffectiveness,
    supplyLeakFactor,
    returnLeakFactor,
    supplyConductionFactor,
    returnConductionFactor,
    equipmentTemperatureRiseF,
    returnTemperatureDifferenceF,
    supplyPlenumTemperatureF,
    registerTemperatureF,
    notes: [
      ...(registerTemperatureF < indoorTemperatureF ? [REGISTER_COLDER_THAN_ROOM] : []),
      ...(returnTemperatureDifferenceF < 0 && returnLeakFactor < 1 ? [RETURN_LEAK_HELPS.heating] : []),
    ],
  };
}
