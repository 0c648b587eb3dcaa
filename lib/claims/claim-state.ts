export const CLAIM_STATES = [
  "draft",
  "submitted",
  "in_review",
  "question_open",
  "approved",
  "declined",
  "paid",
  "withdrawn",
] as const;
export type ClaimState = (typeof CLAIM_STATES)[number];

/** Who takes a claim a step further: the contractor who made it, or the program that received it. */
export type ClaimSide = "contractor" | "program";

/** A claim's way. What is decided stays decided: a new claim corrects an old one. */
const STEPS: Readonly<Record<ClaimSide, Readonly<Partial<Record<ClaimState, readonly ClaimState[]>>>>> = {
  contractor: {
    submitted: ["withdrawn"],
    in_review: ["withdrawn"],
    question_open: ["in_review", "withdrawn"],
  },
  program: {
    submitted: ["in_review"],
    in_review: ["approved", "question_open", "declined"],
    question_open: ["in_review", "declined"],
    approved: ["paid"],
  },
};

/** Where a claim can go from here, by who asks. */
export function nextStates(state: ClaimState, side: ClaimSide): readonly ClaimState[] {
  return STEPS[side][state] ?? [];
}

/** Claims that still count against another one of the same premise. */
export function isStillStanding(state: ClaimState): boolean {
  return state !== "withdrawn" && state !== "declined" && state !== "draft";
}
