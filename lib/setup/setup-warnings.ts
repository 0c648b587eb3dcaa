import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { judgeInstruments } from "#lib/measure/judge-instruments.ts";
import { type CoverComparison, isFilmPushedOff } from "./register-cover.ts";
import type { RestrictorPlan } from "./restrictor-plan.ts";
import { STANDPOINT_LABELS } from "./rules/connect.ts";
import type { SetupAnswers } from "./setup-answers.ts";
import { TEST_TRAITS } from "./test-traits.ts";

const dollars = (cents: number) => `$${(cents / 100).toFixed(2)}`;

/** What in a planned set-up would go wrong or deserves a thought, the gravest first. Source: practice. */
export function setupWarnings({
  answers,
  covers,
  restrictorPlan,
}: {
  answers: SetupAnswers;
  covers?: CoverComparison;
  restrictorPlan?: RestrictorPlan;
}): ValidityNote[] {
  const notes = [
    ...coverNotes(answers, covers),
    ...restrictorNotes(restrictorPlan),
    ...connectionNotes(answers),
    ...standpointNotes(answers),
    ...calibrationNotes(answers),
  ];
  const weight = { problem: 0, doubt: 1, note: 2 } as const;
  return notes.sort((a, b) => weight[a.severity] - weight[b.severity]);
}

function coverNotes(answers: SetupAnswers, covers: CoverComparison | undefined): ValidityNote[] {
  if (!covers || answers.registerCover !== "cling-film") return [];
  const more = dollars(covers.differenceUsdCents);
  if (isFilmPushedOff(answers)) {
    return [
      {
        code: "cling-film-pushed-off",
        severity: "problem",
        what: "Plain cling film does not hold in this direction.",
        why: "The ducts stand above the rooms, and the air blows it off the registers.",
        nextMove: `Take adhesive film (about ${more} more for ${covers.registerCount} registers), or turn the direction round.`,
      },
    ];
  }
  return [
    {
      code: "cling-film-saves",
      severity: "note",
      what: `Plain cling film holds in this direction and saves about ${more}.`,
      why: "The air draws it onto the registers.",
      nextMove: "Do not turn the direction round in mid-test.",
    },
  ];
}

const RESTRICTOR_NOTES: Readonly<Record<Exclude<RestrictorPlan["verdict"], "chosen">, Omit<ValidityNote, "code">>> = {
  "no-calibration": {
    severity: "problem",
    what: "The fan's record has no calibration in this direction.",
    why: "Each direction has a calibration of its own; the other one does not hold.",
    nextMove: "Enter it from the fan's papers, or turn the direction round.",
  },
  "fan-too-small": {
    severity: "problem",
    what: "The expected flow is above what this fan can read.",
    why: "Every flow restrictor would stand above its span.",
    nextMove: "Take a larger fan, look for the large leak first, or read at the highest steady pressure and mark it.",
  },
  "restrictors-too-large": {
    severity: "doubt",
    what: "The expected flow is below what this fan can read.",
    why: "Every flow restrictor would stand below its span.",
    nextMove: "Take a smaller flow restrictor, or report the leakage as below the lowest flow that the fan reads.",
  },
  "gap-between-restrictors": {
    severity: "doubt",
    what: "The expected flow falls between two flow restrictors of this fan.",
    why: "One would stand below its span, the next above.",
    nextMove: "Read at a lower or higher pressure, where one of them is inside its span.",
  },
};

function restrictorNotes(plan: RestrictorPlan | undefined): ValidityNote[] {
  return !plan || plan.verdict === "chosen" ? [] : [{ code: plan.verdict, ...RESTRICTOR_NOTES[plan.verdict] }];
}

function connectionNotes({ testKind, fanConnection, direction, side }: SetupAnswers): ValidityNote[] {
  const notes: ValidityNote[] = [];
  if (!TEST_TRAITS[testKind].usesDuctFan) return notes;
  if (fanConnection === "branch-register") {
    notes.push({
      code: "fan-at-branch-end",
      severity: "doubt",
      what: "The fan is connected at the end of a branch.",
      why: "The narrow run throttles the test air: near the fan the ducts stand above, far from it below the target.",
      nextMove: "Connect at the largest opening nearest the air handler, normally the central return.",
    });
  }
  const isOtherSide = side === "supply" ? fanConnection === "central-return" : fanConnection === "supply-plenum";
  if (testKind.startsWith("side-leakage") && isOtherSide) {
    notes.push({
      code: "fan-on-other-side",
      severity: "problem",
      what: `The fan is on the ${side === "supply" ? "return" : "supply"} side, the test is of the ${side} side.`,
      why: "The blank at the equipment keeps its air from the ducts to be tested.",
      nextMove:
        side === "supply" ? "Connect at the supply plenum or a supply register." : "Connect at the central return.",
    });
  }
  if (testKind === "matched-pressure" && (direction === "pulling" || fanConnection !== "air-handler-cabinet")) {
    notes.push({
      code: "fan-must-feed-cabinet",
      severity: "problem",
      what: "For the fan flow the test fan must push air into the air handler's cabinet.",
      why: "It takes the place of the return ducts.",
      nextMove: "Choose pushing, and connect at the cabinet.",
    });
  }
  return notes;
}

function standpointNotes({ personAt, testKind }: SetupAnswers): ValidityNote[] {
  if (personAt === "house" || !TEST_TRAITS[testKind].usesDuctFan) return [];
  return [
    {
      code: "reference-from-house",
      severity: "note",
      what: `You stand ${STANDPOINT_LABELS[personAt]}, so an open reference port would read the air there.`,
      why: "Its pressure differs from the house's, most of all while the house fan runs.",
      nextMove: "Run a reference hose into the rooms for the duct channel.",
    },
  ];
}

function calibrationNotes({ fan, gauge, date, testKind }: SetupAnswers): ValidityNote[] {
  const traits = TEST_TRAITS[testKind];
  const used = [traits.usesDuctFan ? fan : undefined, gauge].filter((instrument) => instrument !== undefined);
  return judgeInstruments({ instruments: used, onDate: date });
}
