import type { Cents, Cfm, Dollars, Hours, Ratio, Share } from "#lib/units/quantity.ts";

/** One way to repair one leak. */
export interface CandidateRepair {
  id: string;
  /** What the customer pays for it, tax included; costs shared with other repairs stand apart. */
  costUsdCents: Cents;
  /** The part of it that counts toward the least charge. */
  beforeTaxUsdCents: Cents;
  /** Person hours. */
  labourHours: Hours;
  /** Expected share of the leak that is left. */
  remainingShare: Share;
  /** Standard deviation of that share from one leak to the next. */
  remainingSpreadShare: Share;
}

export interface ScopeLeak {
  id: string;
  systemId: string;
  placeId: string;
  cfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
  toOutsideShare: Share;
  /** Flow while the system runs; energy follows it, the target follows CFM25. */
  operatingCfm: Cfm;
  /** Worth of closing it wholly, over the life of the repair, in today's money. */
  lifetimeValueUsd: Dollars;
  repairs: readonly CandidateRepair[];
}

/** A repair of a whole system at once: sealant sprayed from inside. It also reaches what nobody has found. */
export interface SystemRepair extends CandidateRepair {
  systemId: string;
  /** Leaks small enough for it. One that was also repaired by hand is sealed by both. */
  reachesLeakIds: readonly string[];
  /** Leaks too wide for it, which must be repaired by hand before. */
  needsRepairedLeakIds: readonly string[];
  /** Leaks that it closes so well that they are not sealed by hand as well. */
  sparesHandAtLeakIds?: readonly string[];
}

/** Leakage of a system that no found leak explains. It cannot be repaired by hand until it is found. */
export interface UnfoundLeakage {
  systemId: string;
  cfm25: Cfm;
  toOutsideCfm25: Cfm;
  lifetimeValueUsd: Dollars;
}

/** Paid once as soon as one of the repairs that need it is chosen: opening the attic, the test after, a permit. */
export interface SharedCost {
  id: string;
  title: string;
  costUsdCents: Cents;
  beforeTaxUsdCents: Cents;
  labourHours: Hours;
  neededFor:
    | { kind: "any-work" }
    | { kind: "place"; placeId: string }
    | { kind: "repairs"; repairIds: readonly string[] };
}

export interface RepairOfLeak {
  leakId: string;
  repairId: string;
}

export interface ScopeProblem {
  /** Which leakage the target limits and every figure at 25 Pa counts. */
  measure: "total" | "to-outside";
  /** That leakage now, and how well it is known. */
  beforeCfm25: Cfm;
  beforeStandardUncertaintyCfm25: Cfm;
  leaks: readonly ScopeLeak[];
  systemRepairs: readonly SystemRepair[];
  notYetFound: readonly UnfoundLeakage[];
  sharedCosts: readonly SharedCost[];
  /** Every so many person hours begun cost another trip; null when trips cost nothing. */
  visits: { labourHoursEach: Hours; costUsdCents: Cents; beforeTaxUsdCents: Cents } | null;
  /** Least charge before tax; what is added to reach it is taxed at these rates. */
  minimumCharge: { minimumUsdCents: Cents; topUpTaxRates: readonly Ratio[] } | null;
  /** Pairs that cannot both be done. */
  exclusions: readonly (readonly [RepairOfLeak, RepairOfLeak])[];
  /** A repair that makes sense only after another one; with no repair named, after any repair of that leak. */
  prerequisites: readonly { repair: RepairOfLeak; needs: { leakId: string; repairId: string | null } }[];
}

/** What the scope is for. Limits may be combined; the target holds with the stated probability. */
export interface ScopeGoal {
  want: "least-price" | "most-net-value" | "most-value" | "most-sealed";
  target?: { limitCfm25: Cfm; probability: Share };
  /** Expected leakage removed, at least. */
  leastRemovedCfm25?: Cfm;
  budgetUsdCents?: Cents;
  /** Person hours: crew hours × people in the crew. */
  labourHours?: Hours;
}

/** A choice of repairs and all that follows from it. */
export interface ChosenScope {
  measures: readonly RepairOfLeak[];
  systemRepairIds: readonly string[];
  sharedCostIds: readonly string[];
  visitsCount: number;
  priceUsdCents: Cents;
  labourHours: Hours;
  lifetimeValueUsd: Dollars;
  removedCfm25: Cfm;
  /** Expected leakage left, of the problem's measure. */
  predictedCfm25: Cfm;
  predictedStandardUncertaintyCfm25: Cfm;
  /** Null without a target. */
  probabilityOfReachingTarget: Share | null;
  provenOptimal: boolean;
  /** (found − proven bound)/|found| of the objective; 0 when proven, null when nothing was optimized. */
  gapRatio: Ratio | null;
}

/** Why a target is out of reach, in cfm at 25 Pa. */
export interface OutOfReach {
  /** The lowest limit that can be met with the probability asked for. */
  reachableCfm25: Cfm;
  closest: ChosenScope;
  /** Leakage that no one has found and nothing chosen reaches. */
  notYetFoundCfm25: Cfm;
  /** Found leaks for which no repair is known or allowed. */
  withoutRepairCfm25: Cfm;
  /** What the chosen repairs are expected to leave. */
  leftByRepairsCfm25: Cfm;
  /** What the asked probability adds for doubt. */
  doubtCfm25: Cfm;
  /** The budget or the hours, and not the leaks, stand in the way. */
  isHeldBackByLimits: boolean;
}

export type ScopeOutcome = { kind: "scope"; scope: ChosenScope } | { kind: "out-of-reach"; why: OutOfReach };
