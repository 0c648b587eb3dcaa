import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { FahrenheitDifference, Ratio } from "#lib/units/quantity.ts";
import { requireShare } from "./duct-guards.ts";

/**
 * Delivery effectiveness in heating with the part of the losses that comes back to the rooms through the zone.
 * DE + F_s (1 − DE) − [F_s − F_r − B_r (a_r F_s − F_r)] Δt_r/Δt_e: F_s of all supply losses and F_r of what the full
 * flow conducts away on the return side. Valid for regains of 0 to 1. Source: ashrae-152 (form of). Left out: what a
 * return leak takes from the zone never counts as regained; the zone's own temperature is not raised by the losses.
 * @throws InputProblem when a factor is outside 0 to 1 or the equipment's temperature rise is not above 0.
 */
export function thermalRegain({
  deliveryEffectiveness,
  returnLeakFactor,
  returnConductionFactor,
  supplyRegain,
  returnRegain,
  returnTemperatureDifferenceF,
  equipmentTemperatureRiseF,
}: {
  deliveryEffectiveness: Ratio;
  returnLeakFactor: Ratio;
  returnConductionFactor: Ratio;
  supplyRegain: Ratio;
  returnRegain: Ratio;
  returnTemperatureDifferenceF: FahrenheitDifference;
  equipmentTemperatureRiseF: FahrenheitDifference;
}): { deliveryEffectiveness: Ratio } {
  requireDelivery(deliveryEffectiveness);
  requireShare("returnLeakFactor", "Return leak factor", returnLeakFactor);
  requireShare("returnConductionFactor", "Return conduction factor", returnConductionFactor);
  requireShare("supplyRegain", "Supply regain", supplyRegain);
  requireShare("returnRegain", "Return regain", returnRegain);
  requireBetween({
    field: "returnTemperatureDifferenceF",
    label: "Indoor less return zone temperature",
    value: returnTemperatureDifferenceF,
    unit: "°F",
    low: -200,
    high: 200,
  });
  requireAbove({
    field: "equipmentTemperatureRiseF",
    label: "Temperature rise of the equipment",
    value: equipmentTemperatureRiseF,
    unit: "°F",
  });
  const withoutReturn = deliveryEffectiveness + supplyRegain * (1 - deliveryEffectiveness);
  const returnTerm =
    supplyRegain - returnRegain - returnConductionFactor * (returnLeakFactor * supplyRegain - returnRegain);
  return {
    deliveryEffectiveness: withoutReturn - (returnTerm * returnTemperatureDifferenceF) / equipmentTemperatureRiseF,
  };
}

/** Refuses what no duct system delivers: far beyond its capacity is a slip, not a house. */
export function requireDelivery(deliveryEffectiveness: Ratio): void {
  requireBetween({
    field: "deliveryEffectiveness",
    label: "Delivery effectiveness",
    value: deliveryEffectiveness,
    low: -1000,
    high: 10,
    fix: "Enter a ratio, such as 0.75, not a percentage.",
  });
}
