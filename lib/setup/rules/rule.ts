import type { SetupAnswers } from "#lib/setup/setup-answers.ts";
import type { TestTraits } from "#lib/setup/test-traits.ts";
import type { Citation } from "#lib/sources/source.ts";

/** In the order of the work. */
export const SETUP_PHASES = ["make-safe", "prepare", "connect", "run", "put-back"] as const;
export type SetupPhase = (typeof SETUP_PHASES)[number];

/** What a rule sees: the answers and what the test needs. */
export type RuleContext = SetupAnswers & { traits: TestTraits };

/** One line of a checklist, and when it belongs there. */
export interface SetupRule {
  id: string;
  phase: SetupPhase;
  applies: (context: RuleContext) => boolean;
  step: (context: RuleContext) => string;
  why: (context: RuleContext) => string;
  /** Common practice, or a standard. */
  basis: Citation;
}

export const PRACTICE = { sourceId: "practice" } as const satisfies Citation;
export const DUCT_STANDARD = { sourceId: "astm-e1554", locator: "form of" } as const satisfies Citation;
export const RATING_STANDARD = { sourceId: "resnet-icc-380", locator: "form of" } as const satisfies Citation;
export const DERIVED = { sourceId: "derived" } as const satisfies Citation;
