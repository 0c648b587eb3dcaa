import type { Cents, KilowattHours, Therms } from "#lib/units/quantity.ts";
import { claimFigures, claimRebate } from "./claim-figures.ts";
import type { Claim } from "./claim-schema.ts";
import { evidenceFlags } from "./flags/evidence-flags.ts";
import type { ProgramRule } from "./program-rule.ts";

/** What a deemed rule credits a year. */
export interface DeemedFigures {
  coolingKWh: KilowattHours;
  heatingTherms: Therms;
  blowerKWh: KilowattHours;
}

/** How one claim stands under one rule. */
export interface ClaimUnderRule {
  rebateUsdCents: Cents;
  /** Why it would not be taken in, each in words. */
  outside: readonly string[];
  missingEvidenceCount: number;
  /** What the program counts over the measure's life: saved a year × net to gross × measure life. */
  lifetimeElectricityKWh: KilowattHours;
  lifetimeNaturalGasTherms: Therms;
  /** Null where the rule credits by measurement only, or has no deemed figure for such a house. */
  deemed: DeemedFigures | null;
}

/** What a change of the rule does to one claim. */
export interface RuleTouch {
  before: ClaimUnderRule;
  after: ClaimUnderRule;
  isTouched: boolean;
}

type ReplayedClaim = Pick<Claim, "job" | "numbers">;

/**
 * How a claim stands under a rule: what it pays, whether house and tests may take part, what evidence is missing; beside
 * these the deemed figures that `deemedUnderRules` found.
 */
export function claimUnderRule(
  claim: ReplayedClaim,
  rule: ProgramRule,
  deemed: DeemedFigures | null = null,
): ClaimUnderRule {
  const { kind = "site-built" } = claim.job.house;
  const counts = claim.job.tests.filter(({ stage }) => stage === "retest" || stage === "final");
  const figures = claimFigures(claim);
  const rebate = claimRebate(figures, rule);
  const counted = rule.netToGrossRatio * rule.measureLifeYears;
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
    lifetimeElectricityKWh: outside.length > 0 ? 0 : figures.savedElectricityKWh * counted,
    lifetimeNaturalGasTherms: outside.length > 0 ? 0 : figures.savedNaturalGasTherms * counted,
    deemed,
  };
}

const sameDeemed = (one: DeemedFigures | null, other: DeemedFigures | null): boolean =>
  one?.coolingKWh === other?.coolingKWh &&
  one?.heatingTherms === other?.heatingTherms &&
  one?.blowerKWh === other?.blowerKWh;

/**
 * Replays a change of rule over one claim. Touched is whose rebate, eligibility, missing evidence or deemed figures are
 * others; what the program counts over the measure's life is the program's own matter.
 */
export function replayRule(
  claim: ReplayedClaim,
  from: ProgramRule,
  to: ProgramRule,
  deemed: { before: DeemedFigures | null; after: DeemedFigures | null } = { before: null, after: null },
): RuleTouch {
  const before = claimUnderRule(claim, from, deemed.before);
  const after = claimUnderRule(claim, to, deemed.after);
  const isTouched =
    before.rebateUsdCents !== after.rebateUsdCents ||
    before.missingEvidenceCount !== after.missingEvidenceCount ||
    before.outside.join() !== after.outside.join() ||
    !sameDeemed(before.deemed, after.deemed);
  return { before, after, isTouched };
}
