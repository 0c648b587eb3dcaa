import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { type PracticeEvidence, shownText } from "./practice-evidence.ts";
import { diagnoseFans } from "./practice-fan-diagnosis.ts";
import { diagnoseHoses } from "./practice-hose-diagnosis.ts";

/**
 * What is wrong with a learner's set-up, in the order in which to put it right: house, hoses, then fans. A fault that
 * would hide behind another comes after it. Source: practice.
 */
export function diagnosePractice(evidence: PracticeEvidence): ValidityNote[] {
  const house = diagnoseHouse(evidence);
  const hoses = diagnoseHoses(evidence);
  // Fans are judged by the gauge, so only when the gauge can be believed.
  return [...house, ...hoses, ...(hoses.length === 0 ? diagnoseFans(evidence) : [])];
}

function diagnoseHouse({ setup, hasFilmBlownOff, readings }: PracticeEvidence): ValidityNote[] {
  const notes: ValidityNote[] = [];
  const problem = (code: string, what: string, why: string, nextMove: string) =>
    notes.push({ code, severity: "problem", what, why, nextMove });
  if (setup.isAirHandlerOn) {
    problem(
      "air-handler-on",
      "The air handler runs during the test.",
      "Its own pressures, tens of pascals, stand on top of the test fan's.",
      "Switch it off at the disconnect.",
    );
  }
  if (setup.forgottenBranchIds.length > 0) {
    problem(
      "register-open",
      `${setup.forgottenBranchIds.length === 1 ? "A register is" : `${setup.forgottenBranchIds.length} registers are`} without a cover.`,
      "Its air counts as leakage, and the ducts hardly come up to pressure.",
      "Walk the rooms, count the registers, cover what is open.",
    );
  }
  if (hasFilmBlownOff) {
    problem(
      "film-blown-off",
      "The cling film has come off the registers.",
      "Pushing lifts the ducts above the rooms, and plain film does not hold against that.",
      "Take adhesive film, or turn the fan round and pull.",
    );
  }
  if (setup.testKind === "total-leakage" && !setup.isOutsideDoorOpen) {
    problem(
      "door-shut",
      `All doors are shut; house to outside shows ${shownText(readings.house)}.`,
      "The fan moves air between house and ducts, so the house leaves outdoor pressure and the leaks feel less than 25 Pa.",
      "Open a door or a large window to outside.",
    );
  }
  if (setup.testKind === "leakage-to-outside" && setup.isOutsideDoorOpen) {
    problem(
      "door-open",
      `A door is open; house to outside shows ${shownText(readings.house)}.`,
      "The house fan cannot bring an open house to pressure.",
      "Close doors and windows.",
    );
  }
  if (setup.isFilterIn) {
    problem(
      "filter-in",
      "The filter is still in.",
      "It holds back the test air, so the far side of it stands nearer to zero than the near side.",
      "Take it out and close the slot.",
    );
  }
  return notes;
}
