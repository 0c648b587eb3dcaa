import type { Cfm, Pascals, PoundsPerCubicFoot, Ratio } from "#lib/units/quantity.ts";

/** The curve of a calibrated test fan with one flow restrictor, in one direction. */
export interface FanCurve {
  /** C of Q = C·P^n, in cfm/Pa^n, at the density of the calibration. */
  coefficient: number;
  exponent: Ratio;
}

/** Flow over the calibrated flow, for the density of the air in the fan: √(ρ_cal/ρ). */
const densityCorrection = (calibrationLbPerFt3: PoundsPerCubicFoot, actualLbPerFt3: PoundsPerCubicFoot) =>
  Math.sqrt(calibrationLbPerFt3 / actualLbPerFt3);

/**
 * Flow of a test fan from its fan pressure: Q = C·P^n·√(ρ_cal/ρ). Unguarded. Source: astm-e779 (form of; density
 * correction of a fan that reads a pressure difference).
 */
export function flowOnFanCurve(
  curve: FanCurve,
  fanPressurePa: Pascals,
  fanAirDensityLbPerFt3: PoundsPerCubicFoot,
  calibrationDensityLbPerFt3: PoundsPerCubicFoot,
): Cfm {
  return (
    curve.coefficient *
    fanPressurePa ** curve.exponent *
    densityCorrection(calibrationDensityLbPerFt3, fanAirDensityLbPerFt3)
  );
}

/** Fan pressure at which a test fan moves a flow: the inverse of `flowOnFanCurve`. Unguarded. */
export function fanPressureOnCurve(
  curve: FanCurve,
  flowCfm: Cfm,
  fanAirDensityLbPerFt3: PoundsPerCubicFoot,
  calibrationDensityLbPerFt3: PoundsPerCubicFoot,
): Pascals {
  const calibratedCfm = flowCfm / densityCorrection(calibrationDensityLbPerFt3, fanAirDensityLbPerFt3);
  return (calibratedCfm / curve.coefficient) ** (1 / curve.exponent);
}
