import { type FanCurve, flowOnFanCurve } from "#lib/air/fan-curve.ts";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals, PoundsPerCubicFoot } from "#lib/units/quantity.ts";

/**
 * Flow that a calibrated test fan moves, from the pressure its flow tap shows.
 * Q = C·P^n·√(ρ_cal/ρ), ρ of the air that passes the fan. Valid inside the span of the calibration, which
 * `flowFromCalibration` guards; exponent 0.4 to 0.7. Source: astm-e779 (form of). Left out: humidity, 1 % at most.
 * @throws InputProblem when a value is not possible.
 */
export function fanFlow({
  coefficient,
  exponent,
  fanPressurePa,
  fanAirDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  calibrationDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
}: FanCurve & {
  fanPressurePa: Pascals;
  fanAirDensityLbPerFt3?: PoundsPerCubicFoot;
  calibrationDensityLbPerFt3?: PoundsPerCubicFoot;
}): { flowCfm: Cfm } {
  requireAbove({ field: "coefficient", label: "Coefficient of the calibration", value: coefficient });
  requireBetween({ field: "exponent", label: "Exponent of the calibration", value: exponent, low: 0.4, high: 0.7 });
  requireAbove({ field: "fanPressurePa", label: "Fan pressure", value: fanPressurePa, unit: "Pa" });
  for (const [field, label, value] of [
    ["fanAirDensityLbPerFt3", "Density of the air in the fan", fanAirDensityLbPerFt3],
    ["calibrationDensityLbPerFt3", "Density at the calibration", calibrationDensityLbPerFt3],
  ] as const) {
    requireBetween({ field, label, value, unit: "lb/ft³", low: 0.03, high: 0.12 });
  }
  const curve = { coefficient, exponent };
  return { flowCfm: flowOnFanCurve(curve, fanPressurePa, fanAirDensityLbPerFt3, calibrationDensityLbPerFt3) };
}
