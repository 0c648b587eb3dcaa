import { claimFacts } from "#lib/claims/claim-facts.ts";
import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { FLAGS } from "#lib/claims/flags/claim-flag.ts";
import { flagClaim } from "#lib/claims/flags/flag-claim.ts";
import type { NeighborClaim } from "#lib/claims/flags/neighbor-flags.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { type RecomputeOutcome, recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { ClaimCheck, NeighborRow } from "#lib/store/repositories/claim-review.ts";

export interface CheckRequest {
  claimId: string;
  contractorId: string;
  packet: string;
  rule: ProgramRule;
  neighbors: readonly NeighborRow[];
  /** Whether the ranges are recomputed too; may be asked of the packet itself. */
  withDraws: boolean | ((packet: unknown) => boolean);
}

export interface CheckedClaim {
  outcome: RecomputeOutcome;
  check: ClaimCheck;
}

/** In a chunk one claim is the neighbor of several: its facts are read once. */
const factsRead = new WeakMap<NeighborRow, NeighborClaim[]>();

/** Facts of a stored claim; one that no longer reads by the schema has none. */
function neighborOf(row: NeighborRow): NeighborClaim[] {
  const known = factsRead.get(row);
  if (known) return known;
  const parsed = claimSchema.safeParse(JSON.parse(row.packet));
  const { reference, organizationId: contractorId } = row;
  const facts = parsed.success ? [{ ...claimFacts(parsed.data), reference, contractorId }] : [];
  factsRead.set(row, facts);
  return facts;
}

/** Recomputes a stored claim and looks for what is worth asking about. Reads reference tables, writes nothing. */
export async function checkClaim(request: CheckRequest): Promise<CheckedClaim> {
  const { claimId, contractorId, rule, neighbors } = request;
  const packet: unknown = JSON.parse(request.packet);
  const withDraws = typeof request.withDraws === "function" ? request.withDraws(packet) : request.withDraws;
  const outcome = await recomputeClaim(packet, { loadReference: loadReferenceData, withDraws });
  const flags = outcome.outcome === "invalid" ? [] : await flagsOf(packet as Claim, { contractorId, rule, neighbors });
  return { outcome, check: { claimId, outcome: outcome.outcome, engineVersion: ENGINE_VERSION, flags } };
}

/** The recomputation has read the packet by the schema already. */
async function flagsOf(
  claim: Claim,
  { contractorId, rule, neighbors }: Pick<CheckRequest, "contractorId" | "rule" | "neighbors">,
): Promise<ClaimCheck["flags"]> {
  const { place, climate } = await loadReferenceData(claim.job);
  const flags = flagClaim({
    claim,
    elevationFt: claim.job.house.elevationFt ?? place.elevation?.value ?? climate.elevationFt,
    contractorId,
    measureLifeYears: rule.measureLifeYears,
    others: neighbors.flatMap(neighborOf),
    evidence: rule.evidence,
  });
  return flags.map(({ code, evidence }) => ({
    code,
    evidence: [...evidence],
    innocentExplanation: FLAGS[code].innocentExplanation,
  }));
}
