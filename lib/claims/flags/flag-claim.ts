import type { Feet } from "#lib/units/quantity.ts";
import { claimFacts } from "../claim-facts.ts";
import type { Claim } from "../claim-schema.ts";
import type { ClaimFlag } from "./claim-flag.ts";
import { type EvidenceRule, evidenceFlags } from "./evidence-flags.ts";
import { instrumentFlags } from "./instrument-flags.ts";
import { type NeighborClaim, neighborFlags } from "./neighbor-flags.ts";
import { originFlags } from "./origin-flags.ts";
import { physicsFlags } from "./physics-flags.ts";
import { timeFlags } from "./time-flags.ts";

export interface FlagRequest {
  claim: Claim;
  elevationFt: Feet;
  contractorId: string;
  measureLifeYears: number;
  others: readonly NeighborClaim[];
  evidence?: EvidenceRule;
}

/**
 * All checks of one claim but the recomputation, which is asked for by itself. Pure: the other claims are handed in.
 * A flag is a reason to ask, with what was seen and how it may well have come about.
 */
export function flagClaim({
  claim,
  elevationFt,
  contractorId,
  measureLifeYears,
  others,
  evidence,
}: FlagRequest): ClaimFlag[] {
  return [
    ...evidenceFlags(claim, evidence),
    ...originFlags(claim),
    ...physicsFlags(claim, elevationFt),
    ...timeFlags(claim),
    ...instrumentFlags(claim),
    ...neighborFlags({ own: claimFacts(claim), contractorId, measureLifeYears, others }),
  ];
}
