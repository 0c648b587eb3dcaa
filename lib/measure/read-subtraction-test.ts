import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { DuctTest } from "#lib/job/duct-test.ts";
import { blowerDoorSubtraction } from "./blower-door-subtraction.ts";
import type { Measurement } from "./measurement.ts";

type SubtractionTest = Extract<DuctTest, { kind: "blower-door-subtraction" }>;

/**
 * Reads a subtraction of two blower-door tests as leakage to outside at 25 Pa, or says that it cannot be told from none:
 * then there is no measurement, for a number that is only given when chance made it large would be too high.
 */
export function readSubtractionTest({ test, testIndex }: { test: SubtractionTest; testIndex: number }): {
  measurement: Measurement | null;
  notes: readonly ValidityNote[];
} {
  const { wholeHouseCfm50, envelopeCfm50, ductToHousePressurePa } = test;
  const { told, notes } = blowerDoorSubtraction({ wholeHouseCfm50, envelopeCfm50, ductToHousePressurePa });
  if (!told) return { measurement: null, notes };
  const measurement: Measurement = {
    testId: test.id,
    testIndex,
    methodId: "blower-door-subtraction",
    systemId: test.systemId ?? null,
    stage: test.stage,
    measure: "toOutside",
    cfm25: told.leakageCfm25,
    randomRelativeUncertainty: told.standardUncertaintyCfm25 / told.leakageCfm25,
    fanRelativeUncertainty: 0,
    exponentRelativeUncertainty: 0,
    fanKey: `blower door of ${test.id}`,
    setUp: { kind: test.kind, fanId: test.fanId, gaugeId: test.gaugeId },
    standardUncertaintyCfm25: told.standardUncertaintyCfm25,
    fit: null,
    steps: [
      { pressurePa: 50, flowCfm: wholeHouseCfm50 },
      { pressurePa: 50, flowCfm: envelopeCfm50 },
    ],
    notes,
  };
  return { measurement, notes };
}
