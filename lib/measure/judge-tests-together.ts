import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { DuctTest, TestStage } from "#lib/job/duct-test.ts";
import type { FanDirection } from "#lib/job/instrument-schema.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";
import { noteRepeatedReading, noteToOutsideAboveTotal } from "./reading-notes.ts";

/** A test as read, as far as comparing it with others needs. */
export interface ReadTest {
  testId: string;
  /** Null: the whole house. */
  systemId: string | null;
  stage: TestStage;
  measure: string;
  cfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
  steps: readonly { pressurePa: Pascals; flowCfm: Cfm }[];
  /** How the number was come by; what is not known is not compared. */
  setUp: TestSetUp;
}

export interface TestSetUp {
  kind: DuctTest["kind"];
  direction?: FanDirection | undefined;
  fanId?: string | undefined;
  gaugeId?: string | undefined;
  /** The flow restrictors used, sorted. */
  restrictorIds?: readonly string[] | undefined;
}

/** What one test makes doubtful of another: parts above the whole, copied numbers, a retest made in another way. */
export function judgeTestsTogether(tests: readonly ReadTest[]): (ValidityNote & { testId: string })[] {
  return tests.flatMap((later, i) =>
    tests.slice(0, i).flatMap((earlier) => {
      const isSamePart = later.systemId === earlier.systemId;
      const outside = [later, earlier].find((test) => test.measure === "toOutside");
      const total = [later, earlier].find((test) => test.measure === "total");
      const repeats = later.steps.some((step) =>
        earlier.steps.some((other) => other.flowCfm === step.flowCfm && other.pressurePa === step.pressurePa),
      );
      const notes = [
        isSamePart && outside && total && outside.stage === total.stage
          ? noteToOutsideAboveTotal({
              toOutsideCfm25: outside.cfm25,
              totalCfm25: total.cfm25,
              standardUncertaintyCfm25: Math.hypot(outside.standardUncertaintyCfm25, total.standardUncertaintyCfm25),
            })
          : null,
        repeats ? noteRepeatedReading({ where: `The tests ${earlier.testId} and ${later.testId}` }) : null,
        isRetestOf(later, earlier) || standsForRetestOf(later, earlier, tests)
          ? noteRetestInAnotherWay(later, earlier)
          : null,
      ];
      return notes.filter((note) => note !== null).map((note) => ({ ...note, testId: later.testId }));
    }),
  );
}

const isRetestOf = (later: ReadTest, earlier: ReadTest): boolean =>
  later.stage === "retest" &&
  earlier.stage !== "retest" &&
  later.systemId === earlier.systemId &&
  later.measure === earlier.measure;

const WHOLE_MEASURES = ["total", "toOutside"];

/**
 * A retest of the other leakage than was measured before: of total where only that to outside was, or the other way. Where
 * one leakage was measured at both ends, that is the comparison, and a second reading stands for none.
 */
const standsForRetestOf = (later: ReadTest, earlier: ReadTest, tests: readonly ReadTest[]): boolean =>
  WHOLE_MEASURES.includes(later.measure) &&
  WHOLE_MEASURES.includes(earlier.measure) &&
  isRetestOf(later, { ...earlier, measure: later.measure }) &&
  !tests.some((test) => test.systemId === later.systemId && tests.some((before) => isRetestOf(test, before)));

/**
 * A retest by another method, fan, gauge, direction or flow restrictor: what errs alike before and after cancels in the
 * difference, what errs differently does not. The gravest difference speaks. Source: practice.
 */
function noteRetestInAnotherWay(later: ReadTest, earlier: ReadTest): ValidityNote | null {
  const [now, was] = [later.setUp, earlier.setUp];
  const differs = <Value>(one: Value | undefined, other: Value | undefined) =>
    one !== undefined && other !== undefined && one !== other;
  const restrictors = ({ restrictorIds }: TestSetUp) => (restrictorIds?.length ? restrictorIds.join(", ") : undefined);
  const made = (how: string) => `The retest ${later.testId} was made ${how} than ${earlier.testId}.`;
  const differences: readonly (ValidityNote & { isSo: boolean })[] = [
    {
      isSo: differs(now.kind, was.kind),
      code: "retest-other-method",
      severity: "doubt",
      what: made("by another method"),
      why: "Two methods err in different ways, so their difference is not only what was sealed.",
      nextMove: "Test again by the method that was used before the work.",
    },
    {
      isSo: differs(now.fanId, was.fanId),
      code: "retest-other-fan",
      severity: "note",
      what: made("with another fan"),
      why: "The error of one fan cancels between before and after; that of two does not.",
      nextMove: "Use the same fan, restrictor and direction for both where you can.",
    },
    {
      isSo: differs(now.direction, was.direction),
      code: "retest-other-direction",
      severity: "note",
      what: made("in the other direction"),
      why: "Flaps, film and loose joints leak differently when air is pushed and when it is pulled.",
      nextMove: "Test again in the direction that was used before the work.",
    },
    {
      isSo: differs(restrictors(now), restrictors(was)),
      code: "retest-other-restrictor",
      severity: "note",
      what: made("with another flow restrictor"),
      why: "Each restrictor has a calibration of its own, so a part of its error does not cancel. After sealing it is often needed.",
      nextMove: "Where one restrictor reads both within its span, use that one; else leave it as it is.",
    },
    {
      isSo: differs(now.gaugeId, was.gaugeId),
      code: "retest-other-gauge",
      severity: "note",
      what: made("with another gauge"),
      why: "The error of one gauge cancels between before and after; that of two does not.",
      nextMove: "Use the same gauge for both where you can.",
    },
  ];
  const gravest = differences.find(({ isSo }) => isSo);
  if (!gravest) return null;
  const { isSo: _, ...note } = gravest;
  return note;
}
