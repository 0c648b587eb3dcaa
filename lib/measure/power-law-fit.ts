import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { studentTQuantile } from "#lib/numeric/distributions.ts";
import { fitLine } from "#lib/numeric/fit-line.ts";
import type { Cfm, Pascals, Ratio, Share } from "#lib/units/quantity.ts";
import { judgeFit } from "./judge-reading.ts";
import { REFERENCE_PRESSURE } from "./leakage-at-pressure.ts";

/** A factor of e^20 either way says nothing of the leakage. */
const WIDEST_LOG_INTERVAL = 20;

export interface PowerLawFit {
  /** C of Q = C·P^n, in cfm/Pa^n. */
  coefficient: number;
  exponent: Ratio;
  exponentLow: Ratio;
  exponentHigh: Ratio;
  rSquared: number;
  leakageCfm: Cfm;
  leakageLowCfm: Cfm;
  leakageHighCfm: Cfm;
  notes: readonly ValidityNote[];
}

/**
 * Leakage curve through readings at several pressures, and the leakage at the reference pressure with its interval.
 * ln Q = ln C + n·ln P by least squares; interval ± t·s·√(1/N + (ln P_ref − mean)²/Σ(ln P − mean)²) of ln Q, t with
 * N − 2. Valid from 3 points at two or more pressures; a compliant test needs 5. Sources: astm-e779 and iso-9972
 * (annexes, form of). Left out: what all points share, such as the fan's calibration.
 * @throws InputProblem with fewer than 3 points, or values that no leak gives.
 */
export function powerLawFit({
  points,
  referencePressurePa = REFERENCE_PRESSURE.value,
  confidence = 0.95,
}: {
  points: readonly { pressurePa: Pascals; flowCfm: Cfm }[];
  referencePressurePa?: Pascals;
  confidence?: Share;
}): PowerLawFit {
  requireAbove({ field: "referencePressurePa", label: "Reference pressure", value: referencePressurePa, unit: "Pa" });
  requireBetween({ field: "confidence", label: "Confidence", value: confidence, low: 0.5, high: 0.999 });
  points.forEach(({ pressurePa, flowCfm }, i) => {
    const fix = "Enter sizes without sign, after the baseline is taken off.";
    requireAbove({ field: `points/${i}/pressurePa`, label: "Pressure", value: pressurePa, unit: "Pa", fix });
    requireAbove({ field: `points/${i}/flowCfm`, label: "Flow", value: flowCfm, unit: "cfm", fix });
  });
  const line = fitLine({
    x: points.map((point) => Math.log(point.pressurePa)),
    y: points.map((point) => Math.log(point.flowCfm)),
  });
  const exponent = line.slope;
  if (!(exponent > 0)) {
    refuse({
      field: "points",
      detail: `The flow does not rise with the pressure (exponent ${exponent.toFixed(3)})`,
      fix: "Check each reading: pressure and flow may be in each other's field.",
    });
  }
  const t = studentTQuantile({ probability: (1 + confidence) / 2, degreesOfFreedom: line.count - 2 });
  const offset = Math.log(referencePressurePa) - line.meanX;
  const halfWidth = t * line.residualStandardDeviation * Math.sqrt(1 / line.count + (offset * offset) / line.squaresX);
  if (!(halfWidth < WIDEST_LOG_INTERVAL)) {
    refuse({
      field: "points",
      detail: "The pressures lie so close together that the leakage could be anything",
      fix: "Spread the steps, for instance from 10 to 50 Pa.",
    });
  }
  const exponentHalfWidth = (t * line.residualStandardDeviation) / Math.sqrt(line.squaresX);
  const leakageCfm = Math.exp(line.intercept + exponent * Math.log(referencePressurePa));
  const fit = {
    coefficient: Math.exp(line.intercept),
    exponent,
    exponentLow: exponent - exponentHalfWidth,
    exponentHigh: exponent + exponentHalfWidth,
    rSquared: line.rSquared,
    leakageCfm,
    leakageLowCfm: leakageCfm * Math.exp(-halfWidth),
    leakageHighCfm: leakageCfm * Math.exp(halfWidth),
  };
  return { ...fit, notes: judgeFit({ ...fit, pointCount: line.count }) };
}
