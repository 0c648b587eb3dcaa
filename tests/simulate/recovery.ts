import { InputProblem } from "#lib/errors/input-problem.ts";
import type { FanTest } from "#lib/job/duct-test.ts";
import { blowerDoorSubtraction } from "#lib/measure/blower-door-subtraction.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import { readFanTest } from "#lib/measure/read-fan-test.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import type { Observer } from "#lib/simulate/observer.ts";
import { readBlowerDoorSubtraction } from "#lib/simulate/readings/blower-door-subtraction.ts";
import { signOf } from "#lib/simulate/readings/duct-fan-reading.ts";
import { readLeakageToOutside } from "#lib/simulate/readings/leakage-to-outside.ts";
import { readSideLeakage, readTotalLeakage } from "#lib/simulate/readings/total-leakage.ts";
import type { TrueHouse } from "#lib/simulate/true-house.ts";
import { trueLeakage } from "#lib/simulate/truth.ts";
import { observerNumber, randomHouseNumber } from "./known-house.ts";

/** One method in one house: what it found and how sure it said it was, or that it cannot tell. */
export type Attempt =
  | { said: "value"; foundCfm: number; uncertaintyCfm: number; truthCfm: number }
  | { said: "cannot"; why: string; truthCfm: number };

export interface Recovery {
  values: number;
  cannots: number;
  /** Share of the values whose truth lies within twice the stated standard uncertainty. */
  covered: number;
  /** Mean of (found − truth)/truth. */
  bias: number;
  /** Root mean square of (found − truth) over that of the stated uncertainty: 1 when it says what it does. */
  errorOverStated: number;
}

export function summarize(attempts: readonly Attempt[]): Recovery {
  const values = attempts.filter((attempt) => attempt.said === "value");
  const mean = (of: (attempt: (typeof values)[number]) => number) =>
    values.reduce((sum, attempt) => sum + of(attempt), 0) / values.length;
  return {
    values: values.length,
    cannots: attempts.length - values.length,
    covered: mean((a) => (Math.abs(a.foundCfm - a.truthCfm) <= 2 * a.uncertaintyCfm ? 1 : 0)),
    bias: mean((a) => a.foundCfm / a.truthCfm - 1),
    errorOverStated: Math.sqrt(mean((a) => ((a.foundCfm - a.truthCfm) / a.uncertaintyCfm) ** 2)),
  };
}

type Method = (house: TrueHouse, observer: Observer, k: number) => Attempt;

const directionOf = (k: number) => (k % 2 === 0 ? "pushing" : "pulling") as "pushing" | "pulling";

/** Runs a method over the houses; an input that the product refuses counts as "cannot". */
export function overHouses(count: number, method: Method): Attempt[] {
  return Array.from({ length: count }, (_, k) => method(randomHouseNumber(k), observerNumber(k), k));
}

export function attempt(
  truthCfm: number,
  measure: () => { foundCfm: number; uncertaintyCfm: number } | string,
): Attempt {
  try {
    const found = measure();
    return typeof found === "string" ? { said: "cannot", why: found, truthCfm } : { said: "value", ...found, truthCfm };
  } catch (problem) {
    if (!(problem instanceof InputProblem)) throw problem;
    return { said: "cannot", why: problem.errors[0]!.code, truthCfm };
  }
}

const asMeasured = ({ cfm25, standardUncertaintyCfm25 }: Measurement) => ({
  foundCfm: cfm25,
  uncertaintyCfm: standardUncertaintyCfm25,
});
const read = (test: FanTest) =>
  asMeasured(readFanTest({ test, testIndex: 0, fan: DEMO_FAN, gauge: DEMO_GAUGE, elevationFt: 0 }));
/** The air at which the demonstration fan's calibration holds: 0.075 lb/ft³. */
const common = { id: "t", stage: "existing", indoorTemperatureF: 69.2 } as const;

export const totalInOneStep: Method = (house, observer, k) =>
  attempt(trueLeakage(house).totalCfm25, () => {
    const setUp = { fan: DEMO_FAN, direction: directionOf(k) };
    const reading = readTotalLeakage({ house, observer, setUp });
    const { heldPressurePa, fanPressurePa, calibration } = reading;
    const point = { ductPressurePa: heldPressurePa, fanPressurePa, restrictorId: calibration.restrictorId };
    return read({ ...common, kind: "total-leakage", direction: setUp.direction, points: [point] });
  });

export const totalInFiveSteps: Method = (house, observer, k) =>
  attempt(trueLeakage(house).totalCfm25, () => {
    const direction = directionOf(k);
    const points = [10, 20, 30, 40, 50].map((pressurePa) => {
      const targetPa = signOf(direction) * pressurePa;
      const reading = readTotalLeakage({ house, observer, setUp: { fan: DEMO_FAN, direction, targetPa } });
      const { heldPressurePa, fanPressurePa, calibration } = reading;
      return { ductPressurePa: heldPressurePa, fanPressurePa, restrictorId: calibration.restrictorId };
    });
    return read({ ...common, kind: "total-leakage", direction, points });
  });

export const oneSide =
  (side: "supply" | "return"): Method =>
  (house, observer, k) =>
    attempt(trueLeakage(house)[side === "supply" ? "supplyCfm25" : "returnCfm25"], () => {
      const direction = directionOf(k);
      const reading = readSideLeakage({ house, observer, setUp: { fan: DEMO_FAN, direction }, side });
      const { heldPressurePa, fanPressurePa, calibration } = reading;
      const point = { ductPressurePa: heldPressurePa, fanPressurePa, restrictorId: calibration.restrictorId };
      return read({ ...common, kind: "total-leakage", part: side, direction, points: [point] });
    });

export const toOutside: Method = (house, observer, k) =>
  attempt(trueLeakage(house).toOutsideCfm25, () => {
    const direction = directionOf(k);
    const reading = readLeakageToOutside({ house, observer, setUp: { fan: DEMO_FAN, direction } });
    const { heldPressurePa, houseToOutsidePressurePa, fanPressurePa, calibration } = reading;
    return read({
      ...common,
      kind: "leakage-to-outside",
      direction,
      houseToOutsidePressurePa,
      ductToHousePressurePa: heldPressurePa,
      points: [{ ductPressurePa: heldPressurePa, fanPressurePa, restrictorId: calibration.restrictorId }],
    });
  });

/** Each of the two flows is off by its own 3 %, as between two set-ups of a house fan, or two gusts. */
const FLOW_UNCERTAINTY = 0.03;
function subtracted(house: TrueHouse, observer: Observer) {
  const reading = readBlowerDoorSubtraction({ house, observer: { ...observer, houseFanErrorShare: 0 } });
  const off = () => 1 + FLOW_UNCERTAINTY * observer.nextNormal();
  return blowerDoorSubtraction({
    ...reading,
    wholeHouseCfm50: reading.wholeHouseCfm50 * off(),
    envelopeCfm50: reading.envelopeCfm50 * off(),
  });
}

/** What it tells, freed from the bias of telling only large differences; else it says that it cannot. */
export const subtraction: Method = (house, observer) =>
  attempt(trueLeakage(house).toOutsideCfm25, () => {
    const { told } = subtracted(house, observer);
    if (!told) return "difference-within-doubt";
    return { foundCfm: told.leakageCfm25, uncertaintyCfm: told.standardUncertaintyCfm25 };
  });

/** The highest leakage that it allows, where it cannot tell: whether the truth lies below. */
export const subtractionAtMost: Method = (house, observer) =>
  attempt(trueLeakage(house).toOutsideCfm25, () => {
    const { told, leakageHighCfm50, leakageToOutsideCfm25, leakageToOutsideCfm50 } = subtracted(house, observer);
    if (told || leakageToOutsideCfm50 === 0) return "told";
    return { foundCfm: (leakageHighCfm50 * leakageToOutsideCfm25) / leakageToOutsideCfm50, uncertaintyCfm: 1 };
  });
