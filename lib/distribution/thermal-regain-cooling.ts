import { requireBetween } from "#lib/errors/require-number.ts";
import type { Ratio } from "#lib/units/quantity.ts";
import { requireShare } from "./duct-guards.ts";
import { requireDelivery } from "./thermal-regain.ts";

/**
 * Delivery effectiveness in cooling with the part of the losses that comes back to the rooms through the zone.
 * DE + F_s (1 − DE − L_r) + F_r c_r: F_s of all supply losses, F_r of what the return conducts. Latent gain of a return
 * leak is never regained. Valid for regains of 0 to 1. Source: ashrae-152 (form of), and derived. Left out: as in heating.
 * @throws InputProblem when a regain is outside 0 to 1 or a fraction is impossible.
 */
export function thermalRegainCooling({
  deliveryEffectiveness,
  returnGainFraction,
  returnConductionFraction,
  supplyRegain,
  returnRegain,
}: {
  deliveryEffectiveness: Ratio;
  returnGainFraction: Ratio;
  returnConductionFraction: Ratio;
  supplyRegain: Ratio;
  returnRegain: Ratio;
}): { deliveryEffectiveness: Ratio } {
  requireDelivery(deliveryEffectiveness);
  const fraction = {
    low: -1000,
    high: 1000,
    fix: "Enter a ratio of the capacity, as delivery-effectiveness-cooling gives it.",
  };
  requireBetween({ field: "returnGainFraction", label: "Return gain", value: returnGainFraction, ...fraction });
  requireBetween({
    field: "returnConductionFraction",
    label: "Return conduction",
    value: returnConductionFraction,
    ...fraction,
  });
  requireShare("supplyRegain", "Supply regain", supplyRegain);
  requireShare("returnRegain", "Return regain", returnRegain);
  return {
    deliveryEffectiveness:
      deliveryEffectiveness +
      supplyRegain * (1 - deliveryEffectiveness - returnGainFraction) +
      returnRegain * returnConductionFraction,
  };
}
