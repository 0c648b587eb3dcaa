import { requireAllowed } from "#lib/access/can.ts";
import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { readClaim } from "#lib/claims/read-claim.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import {
  commentOnClaim,
  decideOnClaim,
  getClaim,
  getPacket,
  listClaims,
  listPrograms,
  receiveHouse,
  submitClaim as submitOperation,
} from "#lib/exchange/api/operations/claims.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { ClaimSummary } from "#lib/store/repositories/claims.ts";
import { commentClaim, decideClaim } from "../../claims/decide-claim.ts";
import { programRuleOn } from "../../claims/program-rule-on.ts";
import { receiveHpxml } from "../../claims/receive-hpxml.ts";
import { type ClaimDraft, claimReference, completionDate, draftClaim, submitClaim } from "../../claims/submit-claim.ts";
import { type ApiContext, type Served, served } from "../served.ts";

const recordOf = (claim: ClaimSummary) => ({
  id: claim.id,
  contractorId: claim.organizationId,
  programId: claim.programId,
  reference: claim.reference,
  state: claim.state,
  packetHash: claim.packetHash,
  engineVersion: claim.engineVersion,
  completedOn: claim.completedOn.toISOString().slice(0, "YYYY-MM-DD".length),
  beforeToOutsideCfm25: claim.beforeToOutsideCfm25,
  afterToOutsideCfm25: claim.afterToOutsideCfm25,
  savedElectricityKWh: claim.savedElectricityKWh,
  savedNaturalGasTherms: claim.savedNaturalGasTherms,
  rebateUsdCents: claim.rebateUsdCents,
  recomputeOutcome: claim.recomputeOutcome,
  flagCount: claim.flagCount,
  submittedAt: claim.submittedAt.toISOString(),
});

async function detail({ store, actor }: ApiContext, id: string) {
  return await store.withOrganization(actor, async ({ claims, claimReview }) => {
    const claim = await claims.find(id);
    requireAllowed(actor, "claim.view", claim.programOrganizationId === actor.organizationId ? {} : claim);
    const [flags, events] = [await claimReview.flags(id), await claimReview.events(id)];
    return {
      ...recordOf(claim),
      flags: flags.map(({ code, evidence, innocentExplanation }) => ({ code, evidence, innocentExplanation })),
      events: events.map(({ kind, text, fromState, toState, createdAt }) => ({
        kind,
        text,
        ...(fromState && { fromState }),
        ...(toState && { toState }),
        createdAt: createdAt.toISOString(),
      })),
    };
  });
}

/** A packet that was made elsewhere: its hash and signature must hold before anyone takes it in. */
function readPacket(packet: unknown): Claim {
  const read = readClaim(packet);
  if ("errors" in read)
    throw new InputProblem(
      "claim-invalid",
      read.errors.map((each) => ({ ...each, pointer: `#/claim${each.pointer.slice(1)}` })),
    );
  return read.claim;
}

async function draftOf(
  { store, actor }: ApiContext,
  body: { programId: string } & ({ jobId: string } | { reference: string; claim: unknown }),
): Promise<{ draft: ClaimDraft; reference: string; jobId?: string }> {
  const today = new Date().toISOString().slice(0, "YYYY-MM-DD".length);
  return await store.withOrganization(actor, async (scope) => {
    const program = (await scope.programs.list()).find(({ id }) => id === body.programId);
    if (!program) throw new InputProblem("not-found", [], "No such program has invited this organization.");
    if ("jobId" in body) {
      const { revision } = await scope.jobs.findCurrent(body.jobId);
      if (!revision) throw new InputProblem("not-found", [], "The job has no saved revision.");
      const job = parseJob(revision.document);
      const draft = await draftClaim(scope, { job, program, claimedBy: actor.name, claimedOn: today });
      return { draft, jobId: body.jobId, reference: claimReference(job.id, revision.revision) };
    }
    const claim = readPacket(body.claim);
    const rule = await programRuleOn(scope, program.id, new Date(completionDate(claim.job, claim.claimedOn)));
    return { draft: { claim, packet: canonicalJson(body.claim), program, rule }, reference: body.reference };
  });
}

/** Claims that the organization of the key made or receives. */
export const CLAIMS: readonly Served[] = [
  served(listPrograms, async ({ store, actor }) => {
    requireAllowed(actor, "claim.view");
    const items = await store.withOrganization(actor, ({ programs }) => programs.list());
    return {
      items: items.map(({ id, organizationId, name, description }) => ({ id, organizationId, name, description })),
    };
  }),

  served(listClaims, async ({ store, actor }, { query }) => {
    requireAllowed(actor, "claim.view");
    const page = await store.withOrganization(actor, ({ claims }) => claims.list(query));
    return { ...page, items: page.items.map(recordOf) };
  }),

  served(submitOperation, async (context, { body }) => {
    requireAllowed(context.actor, "claim.submit");
    const id = await submitClaim(context.store, context.actor, await draftOf(context, body));
    return await detail(context, id);
  }),

  served(receiveHouse, async (context, { body: { hpxml, fileName, ...whose } }) => {
    const received = { text: hpxml, sourceName: fileName, ...whose };
    const { claimId, unread } = await receiveHpxml(context.store, context.actor, received);
    return { claim: await detail(context, claimId), unread };
  }),

  served(getClaim, async (context, { path }) => detail(context, path.claimId ?? "")),

  served(getPacket, async (context, { path }) => {
    const { store, actor } = context;
    requireAllowed(actor, "claim.view");
    const { packet } = await store.withOrganization(actor, ({ claims }) => claims.find(path.claimId ?? ""));
    return claimSchema.parse(JSON.parse(packet));
  }),

  served(commentOnClaim, async (context, { path, body: { text } }) => {
    const id = path.claimId ?? "";
    await commentClaim(context.store, context.actor, { id, text });
    return await detail(context, id);
  }),

  served(decideOnClaim, async (context, { path, body }) => {
    const id = path.claimId ?? "";
    await decideClaim(context.store, context.actor, { id, ...body });
    return await detail(context, id);
  }),
];
