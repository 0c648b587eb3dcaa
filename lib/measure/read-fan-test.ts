import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { FanTest } from "#lib/job/duct-test.ts";
import {
  DEFAULT_FLOW_ACCURACY_SHARE,
  DEFAULT_GAUGE_ACCURACY_PA,
  DEFAULT_GAUGE_ACCURACY_SHARE,
  type Gauge,
} from "#lib/job/instrument-schema.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import { judgeFanTest, judgeFit } from "./judge-reading.ts";
import { leakageAtPressure } from "./leakage-at-pressure.ts";
import type { Measure, Measurement } from "./measurement.ts";
import { powerLawFit } from "./power-law-fit.ts";
import { type FanTestContext, spanRelativeUncertainty, stepFlow } from "./step-flow.ts";

export const REFERENCE_PRESSURE_PA: Pascals = 25;
/** Wind and people move a reading from one minute to the next. Source: practice. */
const REPEATABILITY_RATIO = 0.01;
/**
 * House and ducts never stand at quite one pressure: what passes the equipment leaves its two sides apart, and leaks into
 * the rooms do not rest; a fan on the return stands at a little more than the supply, where the pressure is read. Standard
 * uncertainty of a result. Source: own-method, from 500 simulated houses.
 */
const UNEVEN_PRESSURE_RATIO = { "leakage-to-outside": 0.025, "total-leakage": 0.02 } as const;
/** A bound read as a rectangular distribution. Source: jcgm-100 §4.3.7. */
const RECTANGULAR = Math.sqrt(3);
/** The fewest steps that make a line. Source: astm-e779, form of. */
const LEAST_STEPS_TO_FIT = 3;

const restrictorsOf = ({ points }: FanTest): string[] =>
  [...new Set(points.flatMap(({ restrictorId }) => restrictorId ?? []))].sort();

/** Mean of the baselines before and after; 0 when none was noted. */
export function baselineOf({ baselineBeforePa, baselineAfterPa }: FanTest): number {
  const readings = [baselineBeforePa, baselineAfterPa].filter((each) => each !== undefined);
  return readings.length === 0 ? 0 : readings.reduce((sum, each) => sum + each, 0) / readings.length;
}

/** What the gauge alone makes doubtful of a leakage: its bound over the pressure, through the exponent. */
function gaugeRelativeUncertainty(pressurePa: number, exponent: number, gauge: Gauge | null): number {
  const share = gauge?.accuracyShare ?? DEFAULT_GAUGE_ACCURACY_SHARE;
  const boundPa = Math.max(share * pressurePa, gauge?.accuracyPa ?? DEFAULT_GAUGE_ACCURACY_PA);
  return (exponent * boundPa) / RECTANGULAR / pressurePa;
}

function measureOf(test: FanTest): Measure {
  const isOutside = test.kind === "leakage-to-outside";
  if (test.part === "supply") return isOutside ? "supplyToOutside" : "supply";
  if (test.part === "return") return isOutside ? "returnToOutside" : "return";
  return isOutside ? "toOutside" : "total";
}

/**
 * Reads a test made with a fan on the ducts: baseline taken off, one step carried to 25 Pa or several fitted.
 * In a to-outside test the ducts stand at the house's pressure to outside, which is what drives the leak.
 * Sources: form of astm-e1554 and resnet-icc-380 for the test, jcgm-100 for the doubt. Bounds of instruments are
 * taken as rectangular. The raw reading is kept in the job; nothing is changed silently.
 */
export function readFanTest(context: FanTestContext): Measurement {
  const { test, testIndex, fan, gauge } = context;
  const baselinePa = baselineOf(test);
  const steps = test.points.map((point) => ({
    pressurePa: Math.abs(
      test.kind === "leakage-to-outside"
        ? test.houseToOutsidePressurePa + test.ductToHousePressurePa - baselinePa
        : point.ductPressurePa - baselinePa,
    ),
    flowCfm: stepFlow(point, context),
  }));
  const notes: ValidityNote[] = [...judgeFanTest({ test, fan, baselinePa, elevationFt: context.elevationFt })];
  const fanRelativeUncertainty = (fan?.flowAccuracyShare ?? DEFAULT_FLOW_ACCURACY_SHARE) / RECTANGULAR;
  const common = {
    testId: test.id,
    testIndex,
    systemId: test.systemId ?? null,
    stage: test.stage,
    measure: measureOf(test),
    fanRelativeUncertainty,
    fanKey: test.fanId ?? "fan not named",
    setUp: {
      kind: test.kind,
      direction: test.direction,
      fanId: test.fanId,
      gaugeId: test.gaugeId,
      restrictorIds: restrictorsOf(test),
    },
    steps,
  };
  const isOneStep = steps.length < LEAST_STEPS_TO_FIT || test.kind === "leakage-to-outside";
  if (isOneStep) {
    // The step nearest 25 Pa says most of the flow at 25 Pa.
    const step = steps.reduce((best, each) =>
      Math.abs(each.pressurePa - REFERENCE_PRESSURE_PA) < Math.abs(best.pressurePa - REFERENCE_PRESSURE_PA)
        ? each
        : best,
    );
    const { leakageCfm, relativeStandardUncertaintyOfExponent } = leakageAtPressure({
      flowCfm: step.flowCfm,
      ductPressurePa: step.pressurePa,
    });
    const random = Math.hypot(
      REPEATABILITY_RATIO,
      gaugeRelativeUncertainty(step.pressurePa, 0.6, gauge),
      spanRelativeUncertainty([test.points[steps.indexOf(step)]!], context),
      UNEVEN_PRESSURE_RATIO[test.kind],
    );
    return {
      ...common,
      methodId: "leakage-at-pressure",
      cfm25: leakageCfm,
      randomRelativeUncertainty: random,
      exponentRelativeUncertainty: relativeStandardUncertaintyOfExponent,
      standardUncertaintyCfm25:
        leakageCfm * Math.hypot(random, fanRelativeUncertainty, relativeStandardUncertaintyOfExponent),
      fit: null,
      notes,
    };
  }
  const fit = powerLawFit({ points: steps });
  notes.push(...judgeFit(fit));
  const halfWidth = (fit.leakageHighCfm - fit.leakageLowCfm) / 2 / 1.96;
  const random = Math.hypot(
    halfWidth / fit.leakageCfm,
    gaugeRelativeUncertainty(REFERENCE_PRESSURE_PA, fit.exponent, gauge),
    spanRelativeUncertainty(test.points, context),
    UNEVEN_PRESSURE_RATIO[test.kind],
  );
  return {
    ...common,
    methodId: "power-law-fit",
    cfm25: fit.leakageCfm,
    randomRelativeUncertainty: random,
    exponentRelativeUncertainty: 0,
    standardUncertaintyCfm25: fit.leakageCfm * Math.hypot(random, fanRelativeUncertainty),
    fit: { exponent: fit.exponent, coefficient: fit.coefficient, rSquared: fit.rSquared },
    notes,
  };
}
