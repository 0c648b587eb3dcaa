import { MINUTES_PER_HOUR } from "#lib/air/standard-air.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Cfm, PoundsPerCubicFoot, Ratio } from "#lib/units/quantity.ts";

/** What a running blower changes in the exchange of air with outdoors, and what it is compared with. */
export interface OnTimeInfiltration {
  /** With regain, where there is any. */
  deliveryEffectiveness: Ratio;
  capacityBtuPerH: BtuPerHour;
  infiltrationOnCfm: Cfm;
  infiltrationOffCfm: Cfm;
  airDensityLbPerFt3: PoundsPerCubicFoot;
}

/**
 * Outdoor air that enters the rooms only because the blower runs, in lb/h: 60 ρ (Q_on − Q_off); below 0 when less enters.
 * Source: ashrae-152 (form of).
 * @throws InputProblem when nothing is delivered to compare with, or a value is impossible.
 */
export function extraInfiltrationLbPerH(given: OnTimeInfiltration): number {
  requireAbove({
    field: "deliveryEffectiveness",
    label: "Delivery effectiveness",
    value: given.deliveryEffectiveness,
    fix: "Enter a ratio above 0. Where nothing arrives in the rooms there is no load to compare with.",
  });
  requireAbove({ field: "capacityBtuPerH", label: "Capacity", value: given.capacityBtuPerH, unit: "Btu/h" });
  const flow = { unit: "cfm", low: 0, high: 1e5 };
  const { infiltrationOnCfm, infiltrationOffCfm } = given;
  requireBetween({ field: "infiltrationOnCfm", label: "Infiltration, blower on", value: infiltrationOnCfm, ...flow });
  requireBetween({
    field: "infiltrationOffCfm",
    label: "Infiltration, blower off",
    value: infiltrationOffCfm,
    ...flow,
  });
  requireAbove({ field: "airDensityLbPerFt3", label: "Air density", value: given.airDensityLbPerFt3, unit: "lb/ft³" });
  return MINUTES_PER_HOUR * given.airDensityLbPerFt3 * (infiltrationOnCfm - infiltrationOffCfm);
}
