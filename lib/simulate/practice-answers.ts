import type { TestFan } from "#lib/job/instrument-schema.ts";
import type { SetupAnswers } from "#lib/setup/setup-answers.ts";
import type { PracticeSetup } from "./practice-setup.ts";

/** A learner's set-up as the answers of a set-up sheet, which knows how it should have been. */
export function practiceAnswers(setup: PracticeSetup, fan: TestFan): SetupAnswers {
  const { testKind, direction, fanConnection, personAt, registerCover } = setup;
  return {
    testKind,
    direction,
    fanConnection,
    personAt,
    registerCover,
    fan,
    stage: "existing",
    hasAirHandler: true,
    registerCount: 1,
    hasCombustionAppliance: false,
  };
}
