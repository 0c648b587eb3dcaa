import { claimFacts, type InstrumentUse } from "#lib/claims/claim-facts.ts";
import { claimFigures, claimRebate } from "#lib/claims/claim-figures.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import type { ClaimMark, NewClaim } from "#lib/store/repositories/claims.ts";

export interface ClaimTarget {
  programId: string;
  programOrganizationId: string;
  contractorId: string;
  reference: string;
  jobId?: string;
  rule: ProgramRule;
}

/** A serial number tells an instrument apart everywhere; a name only within its owner. */
function dayMark({ instrument, hasSerialNumber, date }: InstrumentUse, contractorId: string): string | undefined {
  if (date === undefined) return undefined;
  return `${hasSerialNumber ? "#" : contractorId} ${instrument} ${date}`;
}

/** A claim as it is stored: the packet, what lists show of it, and what it may share with others. */
export function claimRow(claim: Claim, packet: string, target: ClaimTarget): NewClaim {
  const facts = claimFacts(claim);
  const figures = claimFigures(claim);
  const days = new Set(facts.instrumentUses.flatMap((use) => dayMark(use, target.contractorId) ?? []));
  const marks: ClaimMark[] = [
    ...facts.photoHashes.map((mark) => ({ kind: "photo" as const, mark })),
    ...[...days].map((mark) => ({ kind: "instrument_day" as const, mark })),
  ];
  return {
    programId: target.programId,
    programOrganizationId: target.programOrganizationId,
    reference: target.reference,
    ...(target.jobId && { jobId: target.jobId }),
    packet,
    engineVersion: claim.engineVersion,
    premiseKey: facts.premiseKey,
    readingsHash: facts.readingsHash,
    completedOn: new Date(facts.completedOn),
    beforeToOutsideCfm25: figures.beforeToOutsideCfm25,
    afterToOutsideCfm25: figures.afterToOutsideCfm25,
    savedElectricityKWh: figures.savedElectricityKWh,
    savedNaturalGasTherms: figures.savedNaturalGasTherms,
    rebateUsdCents: claimRebate(figures, target.rule).amountUsdCents,
    marks,
  };
}
