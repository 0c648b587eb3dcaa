import { DUCT_LEAK_EXPONENT, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { normalCdf, normalQuantile, studentTQuantile } from "#lib/numeric/distributions.ts";
import { CurveNotFitted, type CurveProblem, type FittedCurve, fitCurve } from "#lib/numeric/fit-curve.ts";
import { describeFit } from "#lib/numeric/polish-fit.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Ratio } from "#lib/units/quantity.ts";
import { type DeltaQLeaks, type DeltaQPoint, returnResponse, supplyResponse } from "./delta-q-model.ts";
import {
  type DeltaQValley,
  HIGHEST_PRESSURE_PA,
  type Interval,
  LOWEST_PRESSURE_PA,
  profileDeltaQ,
  rangeWithin,
} from "./delta-q-profile.ts";

const LARGEST_LEAK_CFM = 5000;
const UNKNOWNS = ["supplyLeakageCfm", "returnLeakageCfm", "supplyPressurePa", "returnPressurePa"] as const;
const LEAST_POINTS = 5;
/** A valley this much shallower than the deepest is not worth following. */
const DEEP_ENOUGH_RATIO = 1.5;
/** Readings that a curve meets to this share of their squares have no noise to speak of. */
const EXACT_RATIO = 1e-9;
/**
 * What no fit of one test can show: leaks at many pressures where the model has one a side, and a fan flow that splits
 * anew at each station. Standard uncertainty over the flow of the air handler; the lower end of what laboratory tests in
 * still air found, since what wind adds is in the scatter already. Source: lbnl-delta-q.
 */
export const DELTA_Q_MODEL_ACCURACY = {
  value: 0.013,
  unit: "ratio",
  source: { sourceId: "lbnl-delta-q", locator: "accuracy of 1.3 to 2.5 % of fan flow" },
} as const satisfies SourcedValue;
/** Confidence of one standard error of a normal quantity. */
const ONE_SIGMA = 2 * normalCdf(1) - 1;

const MODEL_DOUBT_LEFT_OUT: ValidityNote = {
  code: "model-doubt-left-out",
  severity: "note",
  what: "The doubt is that of the readings alone.",
  why: "Real leaks stand at many pressures, the model at one a side: that alone is worth 1.3 % of the air handler's flow.",
  nextMove: "Enter the flow of the air handler.",
};

export interface DeltaQFit extends DeltaQLeaks {
  standardErrors: DeltaQLeaks;
  /** Intervals of 95 %. */
  supplyLeakageLowCfm: number;
  supplyLeakageHighCfm: number;
  returnLeakageLowCfm: number;
  returnLeakageHighCfm: number;
  residualStandardDeviationCfm: number;
  notes: readonly ValidityNote[];
}

/**
 * Leakage to outside at operating pressures from a Delta-Q test, with its doubt.
 * Least squares of `deltaQModel` on leaks and pressures, pressures 2 to 600 Pa, leaks from 0: started from the best
 * valleys of a grid over both pressures. Standard errors are half the profile interval of one sigma (everything that
 * fits with S ≤ S_min·(1 + t²/ν)), or the linear ones where those are wider; the model's own 1.3 % of the air handler's
 * flow is added to each in squares. Valid from 5 pressures, both signs. Source:
 * astm-e1554 (method A, form of); accuracy: lbnl-delta-q. The fitted
 * pressures are loose by tens of pascals: never carry the leaks to 25 Pa with them. Left out: gusts that last longer
 * than one reading.
 * @throws InputProblem with fewer than 5 points, or pressures of one sign only.
 */
export function deltaQFit({
  points,
  exponent = DUCT_LEAK_EXPONENT.value,
  airHandlerFlowCfm,
}: {
  points: readonly DeltaQPoint[];
  exponent?: Ratio;
  /** Without it the doubt of the model is left out, and a note says so. */
  airHandlerFlowCfm?: Cfm | undefined;
}): DeltaQFit {
  guard(points, exponent);
  if (airHandlerFlowCfm !== undefined) {
    requireBetween({
      field: "airHandlerFlowCfm",
      label: "Flow of the air handler",
      value: airHandlerFlowCfm,
      unit: "cfm",
      low: 50,
      high: 10000,
    });
  }
  const modelDoubtCfm = DELTA_Q_MODEL_ACCURACY.value * (airHandlerFlowCfm ?? 0);
  const profile = profileDeltaQ(points, exponent);
  const fitted = lowestOf(points, exponent, profile.valleys);
  const degreesOfFreedom = points.length - UNKNOWNS.length;
  const intervalsAt = (confidence: number) => {
    const t = studentTQuantile({ probability: (1 + confidence) / 2, degreesOfFreedom });
    const ranges = rangeWithin(profile, fitted.sumOfSquares * (1 + (t * t) / degreesOfFreedom));
    return UNKNOWNS.map((name, i): Interval => {
      const value = fitted.parameters[i]!;
      const linear = t * (fitted.standardErrors?.[i] ?? 0);
      return {
        low: Math.max(0, Math.min(value - linear, ranges?.[name].low ?? value)),
        high: Math.max(value + linear, ranges?.[name].high ?? value),
      };
    });
  };
  const leaksOf = (values: readonly number[]): DeltaQLeaks => ({
    supplyLeakageCfm: values[0]!,
    returnLeakageCfm: values[1]!,
    supplyPressurePa: values[2]!,
    returnPressurePa: values[3]!,
  });
  const ofFit = leaksOf(intervalsAt(ONE_SIGMA).map(({ low, high }) => (high - low) / 2));
  const standardErrors = {
    ...ofFit,
    supplyLeakageCfm: Math.hypot(ofFit.supplyLeakageCfm, modelDoubtCfm),
    returnLeakageCfm: Math.hypot(ofFit.returnLeakageCfm, modelDoubtCfm),
  };
  const leaks = leaksOf(fitted.parameters);
  const [supply, back] = intervalsAt(0.95).map(({ low, high }, i): Interval => {
    const value = fitted.parameters[i]!;
    const reach = normalQuantile(0.975) * modelDoubtCfm;
    return { low: Math.max(0, value - Math.hypot(value - low, reach)), high: value + Math.hypot(high - value, reach) };
  });
  return {
    ...leaks,
    standardErrors,
    supplyLeakageLowCfm: supply!.low,
    supplyLeakageHighCfm: supply!.high,
    returnLeakageLowCfm: back!.low,
    returnLeakageHighCfm: back!.high,
    residualStandardDeviationCfm: fitted.residualStandardDeviation,
    notes: [...judge(leaks, standardErrors), ...(airHandlerFlowCfm === undefined ? [MODEL_DOUBT_LEFT_OUT] : [])],
  };
}

/**
 * The least sum of squares: what the search of the valleys found, or the library's fit from there where it is lower. A
 * kink of the curve at a reading can keep the library from settling; readings without noise need no more.
 */
function lowestOf(points: readonly DeltaQPoint[], exponent: Ratio, valleys: readonly DeltaQValley[]): FittedCurve {
  const problem: CurveProblem = {
    x: points.map((point) => point.envelopePressurePa),
    y: points.map((point) => point.deltaFlowCfm),
    curve:
      ([supplyCfm, returnCfm, supplyPa, returnPa]) =>
      (pressurePa) =>
        supplyCfm! * supplyResponse(pressurePa, supplyPa!, exponent) +
        returnCfm! * returnResponse(pressurePa, returnPa!, exponent),
    lower: [0, 0, LOWEST_PRESSURE_PA, LOWEST_PRESSURE_PA],
    upper: [LARGEST_LEAK_CFM, LARGEST_LEAK_CFM, HIGHEST_PRESSURE_PA, HIGHEST_PRESSURE_PA],
  };
  const followed = valleys.filter((valley) => valley.sumOfSquares <= DEEP_ENOUGH_RATIO * valleys[0]!.sumOfSquares);
  const starts = followed.map((valley) => UNKNOWNS.map((name) => valley[name]));
  const deepest = describeFit(problem, starts[0]!);
  const flowSquare = problem.y.reduce((sum, flow) => sum + flow * flow, 0);
  if (deepest.sumOfSquares <= EXACT_RATIO * flowSquare) return deepest;
  try {
    const fitted = fitCurve(problem, starts);
    return fitted.sumOfSquares < deepest.sumOfSquares ? fitted : deepest;
  } catch (thrown) {
    if (thrown instanceof CurveNotFitted) return deepest;
    throw thrown;
  }
}

function guard(points: readonly DeltaQPoint[], exponent: Ratio): void {
  requireLeakExponent(exponent);
  if (!(points.length >= LEAST_POINTS)) {
    refuse({
      field: "points",
      detail: `Four unknowns need at least ${LEAST_POINTS} pressures, not ${points.length}`,
      fix: "Read at more pressures, such as every 5 Pa from −25 to 25.",
    });
  }
  points.forEach(({ envelopePressurePa, deltaFlowCfm }, i) => {
    const pressure = { field: `points/${i}/envelopePressurePa`, label: "Envelope pressure", value: envelopePressurePa };
    requireBetween({ ...pressure, unit: "Pa", low: -200, high: 200 });
    const flow = { field: `points/${i}/deltaFlowCfm`, label: "Change of flow", value: deltaFlowCfm };
    requireBetween({ ...flow, unit: "cfm", low: -5000, high: 5000 });
  });
  const pressures = points.map((point) => point.envelopePressurePa);
  if (!(Math.min(...pressures) < 0 && Math.max(...pressures) > 0)) {
    refuse({
      field: "points",
      detail: "All pressures have the same sign",
      fix: "Read with the house above and below the outside: supply and return leaks part only there.",
    });
  }
}

function judge(leaks: DeltaQLeaks, errors: DeltaQLeaks): ValidityNote[] {
  const sides = [
    ["supply", leaks.supplyLeakageCfm, errors.supplyLeakageCfm],
    ["return", leaks.returnLeakageCfm, errors.returnLeakageCfm],
  ] as const;
  return sides
    .filter(([, cfm, error]) => !(cfm > 2 * error))
    .map(([side, cfm, error]) => ({
      code: `${side}-within-doubt`,
      severity: "doubt",
      what: `The ${side} leakage of ${Math.round(cfm)} cfm has a standard error of ${Math.round(error)} cfm.`,
      why: "It cannot be told from none: wind and the blower door's own scatter are as large.",
      nextMove: "Repeat in calm weather with more pressures, or measure the leakage with a fan on the ducts.",
    }));
}
