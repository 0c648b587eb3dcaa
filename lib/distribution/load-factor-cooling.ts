import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerPound, PoundsPerCubicFoot, Ratio } from "#lib/units/quantity.ts";
import { extraInfiltrationLbPerH, type OnTimeInfiltration } from "./extra-infiltration.ts";

/**
 * How much less the delivered cooling is worth because the running blower draws in more outdoor air, with its moisture.
 * 1 − 60 ρ (Q_on − Q_off)(h_out − h_in)/(DE·capacity); above 1 when the blower draws in less, or drier and cooler air.
 * On-time only. Source: ashrae-152 (form of). Left out: the flow through the ducts while the blower rests.
 * @throws InputProblem when nothing is delivered or a value is impossible.
 */
export function loadFactorCooling({
  indoorEnthalpyBtuPerLb,
  outdoorEnthalpyBtuPerLb,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  ...given
}: Omit<OnTimeInfiltration, "airDensityLbPerFt3"> & {
  indoorEnthalpyBtuPerLb: BtuPerPound;
  outdoorEnthalpyBtuPerLb: BtuPerPound;
  airDensityLbPerFt3?: PoundsPerCubicFoot;
}): { loadFactor: Ratio } {
  const enthalpy = { unit: "Btu/lb", low: -20, high: 200 };
  requireBetween({
    field: "indoorEnthalpyBtuPerLb",
    label: "Indoor enthalpy",
    value: indoorEnthalpyBtuPerLb,
    ...enthalpy,
  });
  requireBetween({
    field: "outdoorEnthalpyBtuPerLb",
    label: "Outdoor enthalpy",
    value: outdoorEnthalpyBtuPerLb,
    ...enthalpy,
  });
  const extraLbPerH = extraInfiltrationLbPerH({ ...given, airDensityLbPerFt3 });
  const delivered = given.deliveryEffectiveness * given.capacityBtuPerH;
  return { loadFactor: 1 - (extraLbPerH * (outdoorEnthalpyBtuPerLb - indoorEnthalpyBtuPerLb)) / delivered };
}
