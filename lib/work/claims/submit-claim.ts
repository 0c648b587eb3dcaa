import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { createClaim } from "#lib/claims/create-claim.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { ProgramRecord } from "#lib/store/repositories/programs.ts";
import type { Scope } from "#lib/store/scope.ts";
import { checkClaim } from "./check-claim.ts";
import { claimRow } from "./claim-row.ts";
import { programRuleOn } from "./program-rule-on.ts";

const CLAIM_DRAWS = 10_000;
const CLAIM_SEED = 1;

export interface ClaimDraft {
  claim: Claim;
  packet: string;
  program: ProgramRecord;
  rule: ProgramRule;
}

/** Day of the last test after the work; the day of the claim where the test has none. */
export function completionDate(job: Job, today: string): string {
  const dates = job.tests
    .filter(({ stage }) => stage === "retest" || stage === "final")
    .flatMap(({ date }) => date ?? []);
  return dates.sort().at(-1) ?? today;
}

/** The packet of a job as it would be handed in. @throws InputProblem when there is no retest. */
export async function draftClaim(
  scope: Scope,
  {
    job,
    program,
    claimedBy,
    claimedOn,
    draws = CLAIM_DRAWS,
  }: { job: Job; program: ProgramRecord; claimedBy: string; claimedOn: string; draws?: number },
): Promise<ClaimDraft> {
  const rule = await programRuleOn(scope, program.id, new Date(completionDate(job, claimedOn)));
  const reference = await loadReferenceData(job);
  // Without a solver: the measures stated in the job are the scope, so that anyone recomputes the same.
  const result = await estimate(job, reference, { draws, seed: CLAIM_SEED });
  const claim = createClaim({
    job,
    reference,
    result,
    claimedBy,
    claimedOn,
    measureLifeYears: rule.measureLifeYears,
    netToGrossRatio: rule.netToGrossRatio,
  });
  return { claim: claimSchema.parse(claim), packet: canonicalJson(claim), program, rule };
}

/** Hands a claim in, with the record of who did it, and checks it at once. Returns its id. */
export async function submitClaim(
  store: Store,
  actor: MemberActor,
  { draft, jobId, reference }: { draft: ClaimDraft; jobId?: string; reference: string },
): Promise<string> {
  requireAllowed(actor, "claim.submit");
  const { claim, packet, program, rule } = draft;
  const { organizationId: programOrganizationId } = program;
  const id = await store.withOrganization(actor, async ({ claims, audit }) => {
    const row = claimRow(claim, packet, {
      programId: program.id,
      programOrganizationId,
      contractorId: actor.organizationId,
      reference,
      ...(jobId && { jobId }),
      rule,
    });
    const { id: claimId, packetHash } = await claims.submit(row);
    await audit.record({
      action: "claim.submitted",
      subjectKind: "claim",
      subjectId: claimId,
      detail: { reference, packetHash },
      programOrganizationId,
    });
    return claimId;
  });
  await recheckClaim(store, actor, { id, programOrganizationId });
  return id;
}

/**
 * Recomputes one stored claim with all its draws, looks it through, and keeps what came out. The neighbors are looked for
 * as the program sees them: a contractor sees its own claims only.
 */
export async function recheckClaim(
  store: Store,
  actor: MemberActor,
  { id, programOrganizationId }: { id: string; programOrganizationId: string },
): Promise<void> {
  requireAllowed(actor, "claim.recompute");
  const program = { organizationId: programOrganizationId, actorId: null };
  const stored = await store.withOrganization(program, async (scope) => {
    const claim = await scope.claims.find(id);
    const rule = await programRuleOn(scope, claim.programId, claim.completedOn);
    return { claim, rule, neighbors: await scope.claimReview.earlierNeighbors(id) };
  });
  const { outcome, check } = await checkClaim({
    claimId: id,
    contractorId: stored.claim.organizationId,
    packet: stored.claim.packet,
    rule: stored.rule,
    neighbors: stored.neighbors,
    withDraws: true,
  });
  await store.withOrganization(program, async ({ claimReview, audit }) => {
    await claimReview.saveCheck(check);
    await audit.record({
      action: "claim.checked",
      subjectKind: "claim",
      subjectId: id,
      detail: {
        outcome: outcome.outcome,
        flags: check.flags.map(({ code }) => code),
        engineVersion: check.engineVersion,
      },
      programOrganizationId: stored.claim.organizationId,
    });
  });
}

/** The number of a claim at the contractor who makes it: one for each revision of a job. */
export function claimReference(jobId: string, revision: number): string {
  return `${jobId}-${revision}`;
}
