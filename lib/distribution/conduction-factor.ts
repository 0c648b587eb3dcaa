import type { Ratio, ThermalConductance } from "#lib/units/quantity.ts";

/**
 * Share of the temperature difference between a duct's air and its surroundings that is left at the duct's end.
 * B = exp(−Σ(A/R)/m), m the heat that the full flow carries per °F. Unguarded. Source: ashrae-152 (form of); derived
 * (dt/dA = −(t − t_zone)/(R m)). Left out: the smaller flow beyond a leak.
 */
export function conductionFactor(
  conductanceBtuPerHF: ThermalConductance,
  airHeatRateBtuPerHF: ThermalConductance,
): Ratio {
  return Math.exp(-conductanceBtuPerHF / airHeatRateBtuPerHF);
}

/**
 * Mean over a duct's length of the share that is left: κ = (1 − B)/(−ln B), and 1 where nothing conducts.
 * It tells the mean air temperature, t_mean − t_zone = κ(t_start − t_zone), and so how much each of several places
 * around one duct takes. Unguarded. Source: derived (mean of the exponential).
 */
export function meanConductionFactor(
  conductanceBtuPerHF: ThermalConductance,
  airHeatRateBtuPerHF: ThermalConductance,
): Ratio {
  const exponent = conductanceBtuPerHF / airHeatRateBtuPerHF;
  return exponent > 0 ? -Math.expm1(-exponent) / exponent : 1;
}
