import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cents } from "#lib/units/quantity.ts";
import { REGISTER_COVERS, type RegisterCover, type SetupAnswers } from "./setup-answers.ts";

interface CoverKind {
  label: string;
  holdsAgainstPush: boolean;
  costUsdCents: SourcedValue;
}

/** Price of covering one register, tape included: an order of size, to be replaced by what the crew pays. */
const costEach = (value: Cents): SourcedValue => ({
  value,
  unit: "US¢",
  source: { sourceId: "practice", locator: "one register, from memory" },
  low: value / 2,
  high: value * 2,
});

export const COVER_KINDS: Readonly<Record<RegisterCover, CoverKind>> = {
  "adhesive-film": { label: "Adhesive film", holdsAgainstPush: true, costUsdCents: costEach(60) },
  "cling-film": { label: "Plain cling film", holdsAgainstPush: false, costUsdCents: costEach(10) },
};

/**
 * Whether the test pushes the film off the registers: ducts above the rooms. A fan that pulls on the house does so too.
 * Source: practice.
 */
export function isFilmPushedOff({ testKind, direction }: Pick<SetupAnswers, "testKind" | "direction">): boolean {
  return testKind === "blower-door-subtraction" ? direction === "pulling" : direction === "pushing";
}

export interface CoverComparison {
  registerCount: number;
  covers: readonly { cover: RegisterCover; label: string; holds: boolean; totalUsdCents: Cents }[];
  /** What adhesive film costs more than cling film. */
  differenceUsdCents: Cents;
}

/** What each cover costs for all registers, and whether it holds in this test. Source: practice. */
export function compareCovers(
  answers: Pick<SetupAnswers, "testKind" | "direction" | "registerCount">,
): CoverComparison {
  const { registerCount } = answers;
  const total = (cover: RegisterCover) => registerCount * COVER_KINDS[cover].costUsdCents.value;
  const covers = REGISTER_COVERS.map((cover) => ({
    cover,
    label: COVER_KINDS[cover].label,
    holds: COVER_KINDS[cover].holdsAgainstPush || !isFilmPushedOff(answers),
    totalUsdCents: total(cover),
  }));
  return { registerCount, covers, differenceUsdCents: total("adhesive-film") - total("cling-film") };
}
