import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals, PoundsPerCubicFoot } from "#lib/units/quantity.ts";
import { type FanCurve, fanPressureOnCurve } from "./fan-curve.ts";
import { STANDARD_AIR_DENSITY } from "./standard-air.ts";

/** One flow restrictor (or the open fan) with its curve and the span of fan pressure that it was calibrated over. */
export interface CalibratedRestrictor extends FanCurve {
  restrictorId: string;
  restrictorLabel: string;
  minFanPressurePa: Pascals;
  maxFanPressurePa: Pascals;
}

export interface RestrictorReading {
  restrictorId: string;
  restrictorLabel: string;
  /** What the gauge would show at the flow. */
  fanPressurePa: Pascals;
  /** Inside the span, and how far from its nearer end: the ratio of the pressures, at least 1. Below 1: outside. */
  marginRatio: number;
}

/**
 * What each flow restrictor would read at a flow, the best first: the one deepest inside its calibrated span.
 * P = (Q/C)^(1/n); margin = min(P/P_min, P_max/P). Valid for restrictors of one fan and one direction. Source: own-method.
 * Left out: whether the fan has the power to reach the flow against the duct pressure.
 * @throws InputProblem when there is no restrictor or the flow is not above 0.
 */
export function rankRestrictors({
  restrictors,
  flowCfm,
  fanAirDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  calibrationDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
}: {
  restrictors: readonly CalibratedRestrictor[];
  flowCfm: Cfm;
  fanAirDensityLbPerFt3?: PoundsPerCubicFoot;
  calibrationDensityLbPerFt3?: PoundsPerCubicFoot;
}): readonly RestrictorReading[] {
  if (restrictors.length === 0) {
    refuse({
      field: "restrictors",
      detail: "The fan has no calibration in this direction",
      fix: "Enter the calibration of its flow restrictors for this direction.",
    });
  }
  requireAbove({ field: "flowCfm", label: "Flow", value: flowCfm, unit: "cfm" });
  return restrictors
    .map((restrictor) => {
      const { restrictorId, restrictorLabel, minFanPressurePa, maxFanPressurePa } = restrictor;
      const fanPressurePa = fanPressureOnCurve(restrictor, flowCfm, fanAirDensityLbPerFt3, calibrationDensityLbPerFt3);
      const marginRatio = Math.min(fanPressurePa / minFanPressurePa, maxFanPressurePa / fanPressurePa);
      return { restrictorId, restrictorLabel, fanPressurePa, marginRatio };
    })
    .sort((a, b) => b.marginRatio - a.marginRatio || a.restrictorId.localeCompare(b.restrictorId, "en-US"));
}
