import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { TripStepId } from "./trip-steps.ts";

/** A field that keeps the job from being answered, in the words of the form. */
export interface MissingField {
  pointer: string;
  path: string;
  step: TripStepId;
  text: string;
  /** Nothing was entered yet, as against something that cannot be used. */
  isMissing: boolean;
}

const STEP_OF: readonly (readonly [RegExp, TripStepId])[] = [
  [/^places/, "ducts"],
  [/^systems\/\d+\/(runs|airHandlerPlaceId|returnsCount)/, "ducts"],
  [/^systems/, "equipment"],
  [/^(tests|instruments)/, "readings"],
  [/^sites/, "leaks"],
  [/^(energy|rates)/, "energy"],
  [/^(plan|priceBook)/, "plan"],
];

/** At which step of the trip a field is asked. */
export function stepOfPath(path: string): TripStepId {
  return STEP_OF.find(([pattern]) => pattern.test(path))?.[1] ?? "house";
}

/** The technical name that the command line needs stands in brackets; the form shows the label alone. */
const withoutNames = (text: string): string => text.replaceAll(/ \([a-z][A-Za-z0-9]*(\[\d+\])?\)/g, "");

const MISSING_CODES = new Set([
  "missing",
  "place-missing",
  "equipment-missing",
  "reading-missing",
  "reference-missing",
]);

export function missingFields(problems: readonly FieldProblem[], units: UnitSystem): MissingField[] {
  return problems.map(({ pointer, detail, fix, code }) => {
    const path = pointer.replace(/^#\//, "");
    const isMissing = MISSING_CODES.has(code);
    return {
      pointer,
      path,
      step: stepOfPath(path),
      isMissing,
      text: sentenceInSystem(withoutNames(isMissing && code !== "missing" ? fix : detail), units),
    };
  });
}
