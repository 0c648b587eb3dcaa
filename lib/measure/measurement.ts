import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { TestStage } from "#lib/job/duct-test.ts";
import type { Cfm, Ratio } from "#lib/units/quantity.ts";
import type { TestSetUp } from "./judge-tests-together.ts";

/** Which leakage a test measures. */
export const MEASURES = ["total", "toOutside", "supply", "return", "supplyToOutside", "returnToOutside"] as const;
export type Measure = (typeof MEASURES)[number];

/** One test, read: leakage at 25 Pa with its doubt split by what it shares with other tests. */
export interface Measurement {
  testId: string;
  testIndex: number;
  /** The method of the catalogue that read it. */
  methodId: "leakage-at-pressure" | "power-law-fit" | "blower-door-subtraction";
  /** Null: the whole house. */
  systemId: string | null;
  stage: TestStage;
  measure: Measure;
  cfm25: Cfm;
  /** Of this test alone: gauge, repeatability, fit. */
  randomRelativeUncertainty: Ratio;
  /** Of the fan, common to every test made with it. */
  fanRelativeUncertainty: Ratio;
  /** Of the exponent that carried the reading to 25 Pa. */
  exponentRelativeUncertainty: Ratio;
  /** Tests with the same key share the fan's error. */
  fanKey: string;
  setUp: TestSetUp;
  standardUncertaintyCfm25: Cfm;
  fit: { exponent: number; coefficient: number; rSquared: number } | null;
  steps: readonly { pressurePa: number; flowCfm: number }[];
  notes: readonly ValidityNote[];
}
