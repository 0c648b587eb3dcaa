import type { ClaimState } from "#lib/claims/claim-state.ts";
import type { RecomputeState } from "#lib/store/repositories/claims.ts";

/** Where a claim stands, as both sides say it. */
export const CLAIM_STATE_WORDS: Readonly<Record<ClaimState, string>> = {
  draft: "Not handed in yet",
  submitted: "Handed in",
  in_review: "Being looked at",
  question_open: "A question is open",
  approved: "Approved",
  declined: "Declined",
  paid: "Paid",
  withdrawn: "Taken back",
};

/** What a step is called on the button that takes it. */
export const STEP_WORDS: Readonly<Record<ClaimState, string>> = {
  draft: "Keep as a draft",
  submitted: "Hand in",
  in_review: "Look at it",
  question_open: "Ask the contractor",
  approved: "Approve",
  declined: "Decline",
  paid: "Mark as paid",
  withdrawn: "Take it back",
};

export const OUTCOME_WORDS: Readonly<Record<RecomputeState | "not-yet", string>> = {
  same: "Same numbers",
  differs: "Other numbers",
  invalid: "Cannot be recomputed",
  "not-yet": "Not recomputed yet",
};

/** What the record calls an act on a claim. */
export const CLAIM_ACTS: Readonly<Record<string, string>> = {
  "claim.submitted": "Handed in",
  "claim.received": "Came in by file",
  "claim.checked": "Recomputed and looked through",
  "claim.commented": "Comment added",
  "claim.decided": "Decided",
  "claim.inspected": "Inspection recorded",
};

export const isClaimState = (text: string | undefined): text is ClaimState =>
  text !== undefined && Object.hasOwn(CLAIM_STATE_WORDS, text);

export const isOutcome = (text: string | undefined): text is RecomputeState | "not-yet" =>
  text !== undefined && Object.hasOwn(OUTCOME_WORDS, text);

export const day = (date: Date): string =>
  date.toLocaleDateString("en-US", { year: "numeric", month: "short", day: "numeric", timeZone: "UTC" });
