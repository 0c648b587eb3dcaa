import type { Cents } from "#lib/units/quantity.ts";
import { claimFigures, claimRebate } from "./claim-figures.ts";
import type { Claim } from "./claim-schema.ts";
import { evidenceFlags } from "./flags/evidence-flags.ts";
import type { ProgramRule } from "./program-rule.ts";

/** How one claim stands under one rule. */
export interface ClaimUnderRule {
  rebateUsdCents: Cents;
  /** Why it would not be taken in, each in words. */
  outside: readonly string[];
  missingEvidenceCount: number;
}

/** What a change of the rule does to one claim. */
export interface RuleTouch {
  before: ClaimUnderRule;
  after: ClaimUnderRule;
  isTouched: boolean;
}

type ReplayedClaim = Pick<Claim, "job" | "numbers">;

/**
 * How a claim stands under a rule: what it pays, whether house and tests may take part, what evidence is missing.
 * Left out: the deemed figures, which stand in the packet as they were claimed.
 */
export function claimUnderRule(claim: ReplayedClaim, rule: ProgramRule): ClaimUnderRule {
  const { kind = "site-built" } = claim.job.house;
  const counts = claim.job.tests.filter(({ stage }) => stage === "retest" || stage === "final");
  const rebate = claimRebate(claimFigures(claim), rule);
  const outside = [
    ...(rule.houseKinds.includes(kind) ? [] : [`A ${kind} house may not take part`]),
    ...(counts.some((test) => rule.testKinds.some((each) => each === test.kind))
      ? []
      : ["No test after the work is of a kind that counts"]),
  ];
  return {
    rebateUsdCents: outside.length > 0 ? 0 : rebate.amountUsdCents,
    outside,
    missingEvidenceCount: evidenceFlags(claim, rule.evidence).reduce((sum, { evidence }) => sum + evidence.length, 0),
  };
}

/** Replays a change of rule over one claim. Touched is whose rebate, eligibility or missing evidence is another. */
export function replayRule(claim: ReplayedClaim, from: ProgramRule, to: ProgramRule): RuleTouch {
  const [before, after] = [claimUnderRule(claim, from), claimUnderRule(claim, to)];
  const isTouched =
    before.rebateUsdCents !== after.rebateUsdCents ||
    before.missingEvidenceCount !== after.missingEvidenceCount ||
    before.outside.join() !== after.outside.join();
  return { before, after, isTouched };
}
