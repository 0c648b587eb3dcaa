import { AIR_SPECIFIC_HEAT, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import type { Fahrenheit, PoundsPerCubicFoot, Ratio } from "#lib/units/quantity.ts";
import { requireTemperature } from "./duct-guards.ts";
import { extraInfiltrationLbPerH, type OnTimeInfiltration } from "./extra-infiltration.ts";

/**
 * How much less the delivered heat is worth because the running blower draws in more outdoor air.
 * 1 − 60 ρ cp (Q_on − Q_off)(t_in − t_out)/(DE·capacity); above 1 when the blower draws in less. On-time only; the
 * leakage behind Q_on is that to outside at operating pressure, summed over the house's systems. Source: ashrae-152
 * (form of). Left out: the flow through the ducts while the blower rests.
 * @throws InputProblem when nothing is delivered or a value is impossible.
 */
export function loadFactor({
  indoorTemperatureF,
  outdoorTemperatureF,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  ...given
}: Omit<OnTimeInfiltration, "airDensityLbPerFt3"> & {
  indoorTemperatureF: Fahrenheit;
  outdoorTemperatureF: Fahrenheit;
  airDensityLbPerFt3?: PoundsPerCubicFoot;
}): { loadFactor: Ratio } {
  requireTemperature("indoorTemperatureF", "Indoor temperature", indoorTemperatureF);
  requireTemperature("outdoorTemperatureF", "Outdoor temperature", outdoorTemperatureF);
  const extraBtuPerHF = extraInfiltrationLbPerH({ ...given, airDensityLbPerFt3 }) * AIR_SPECIFIC_HEAT.value;
  const delivered = given.deliveryEffectiveness * given.capacityBtuPerH;
  return { loadFactor: 1 - (extraBtuPerHF * (indoorTemperatureF - outdoorTemperatureF)) / delivered };
}
