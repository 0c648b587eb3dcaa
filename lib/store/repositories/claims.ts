import { randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { textHash } from "#lib/hash/content-hash.ts";
import { notFound, requireId } from "../not-found.ts";
import { afterCursor, type Page, type PageRequest, pageLimit, toPage } from "../page.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export type ClaimState =
  | "draft"
  | "submitted"
  | "in_review"
  | "question_open"
  | "approved"
  | "declined"
  | "paid"
  | "withdrawn";

/** A claim in a list: what it says, without the packet. */
export interface ClaimSummary {
  id: string;
  /** The contractor's. */
  organizationId: string;
  programOrganizationId: string;
  programId: string;
  jobId: string | null;
  reference: string;
  state: ClaimState;
  packetHash: string;
  engineVersion: string;
  premiseKey: string;
  completedOn: Date;
  beforeToOutsideCfm25: number;
  afterToOutsideCfm25: number;
  savedElectricityKWh: number;
  savedNaturalGasTherms: number;
  rebateUsdCents: number;
  recomputeOutcome: "same" | "differs" | "invalid" | null;
  flagCount: number;
  submittedAt: Date;
}

export interface NewClaim
  extends Omit<
    ClaimSummary,
    "id" | "organizationId" | "state" | "packetHash" | "recomputeOutcome" | "flagCount" | "submittedAt" | "jobId"
  > {
  jobId?: string;
  /** RFC 8785 canonical text; its hash is taken here. */
  packet: string;
  readingsHash: string;
  photoHashes: string[];
  gaugeSerialNumbers: string[];
}

export interface ClaimFilter extends PageRequest {
  state?: ClaimState;
  programId?: string;
}

const LEFT_OUT = {
  packet: true,
  batchId: true,
  readingsHash: true,
  photoHashes: true,
  gaugeSerialNumbers: true,
  recomputedAt: true,
  recomputedEngineVersion: true,
  updatedAt: true,
} as const;

export function claims({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  return {
    /** Hands a claim in. From here on nobody changes its packet. */
    async submit(claim: NewClaim): Promise<ClaimSummary> {
      return await sql.claim.create({
        data: { id: randomUUID(), organizationId, ...claim, packetHash: textHash(claim.packet) },
        omit: LEFT_OUT,
      });
    },

    async find(id: string): Promise<ClaimSummary & { packet: string }> {
      const row = await sql.claim.findUnique({
        where: { id: requireId(id, "claim") },
        omit: { ...LEFT_OUT, packet: false },
      });
      if (!row) throw notFound("claim");
      return row;
    },

    /** The claims that this organization made or receives, newest first. */
    async list(filter: ClaimFilter = {}): Promise<Page<ClaimSummary>> {
      const limit = pageLimit(filter);
      const rows = await sql.claim.findMany({
        where: {
          ...(filter.state && { state: filter.state }),
          ...(filter.programId && { programId: requireId(filter.programId, "program") }),
          AND: [afterCursor("submittedAt", filter)],
        },
        omit: LEFT_OUT,
        orderBy: [{ submittedAt: "desc" }, { id: "asc" }],
        take: limit + 1,
      });
      return toPage(
        rows,
        limit,
        (row) => row.submittedAt,
        (row) => row,
      );
    },

    /** Takes a claim one state further, with a reason that stays. @throws InputProblem `conflict` when it has moved on. */
    async decide({
      id,
      from,
      to,
      reason,
    }: {
      id: string;
      from: ClaimState;
      to: ClaimState;
      reason: string;
    }): Promise<void> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "A claim is decided by a member of the organization");
      const claim = await this.find(id);
      const { count } = await sql.claim.updateMany({ where: { id, state: from }, data: { state: to } });
      if (count === 0) {
        throw new InputProblem("conflict", [], `This claim is ${claim.state} now, not ${from}. Load it again.`);
      }
      const { organizationId: contractorId, programOrganizationId } = claim;
      await sql.claimDecision.create({
        data: {
          claimId: id,
          organizationId: contractorId,
          programOrganizationId,
          fromState: from,
          toState: to,
          reason,
          authorId: actorId,
        },
      });
    },
  };
}
