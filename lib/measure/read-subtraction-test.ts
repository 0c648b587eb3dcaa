import type { DuctTest } from "#lib/job/duct-test.ts";
import { blowerDoorSubtraction } from "./blower-door-subtraction.ts";
import type { Measurement } from "./measurement.ts";

type SubtractionTest = Extract<DuctTest, { kind: "blower-door-subtraction" }>;

/**
 * Reads a subtraction of two blower-door tests as leakage to outside at 25 Pa.
 * Its doubt is that of a small difference of two large numbers, and stands beside it always.
 */
export function readSubtractionTest({ test, testIndex }: { test: SubtractionTest; testIndex: number }): Measurement {
  const { wholeHouseCfm50, envelopeCfm50, ductToHousePressurePa } = test;
  const found = blowerDoorSubtraction({ wholeHouseCfm50, envelopeCfm50, ductToHousePressurePa });
  const relative = found.leakageToOutsideCfm50 > 0 ? found.standardUncertaintyCfm50 / found.leakageToOutsideCfm50 : 1;
  return {
    testId: test.id,
    testIndex,
    methodId: "blower-door-subtraction",
    systemId: test.systemId ?? null,
    stage: test.stage,
    measure: "toOutside",
    cfm25: found.leakageToOutsideCfm25,
    randomRelativeUncertainty: relative,
    fanRelativeUncertainty: 0,
    exponentRelativeUncertainty: 0,
    fanKey: `blower door of ${test.id}`,
    setUp: { kind: test.kind, fanId: test.fanId, gaugeId: test.gaugeId },
    standardUncertaintyCfm25: relative * found.leakageToOutsideCfm25,
    fit: null,
    steps: [
      { pressurePa: 50, flowCfm: wholeHouseCfm50 },
      { pressurePa: 50, flowCfm: envelopeCfm50 },
    ],
    notes: found.notes,
  };
}
