import { randomUUID } from "node:crypto";
import type { ClaimState } from "#lib/claims/claim-state.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { textHash } from "#lib/hash/sha256.ts";
import { Prisma } from "../generated/client.ts";
import { notFound, requireId } from "../not-found.ts";
import { afterCursor, type Page, type PageRequest, pageLimit, toPage } from "../page.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export type RecomputeState = "same" | "differs" | "invalid";

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
  readingsHash: string;
  completedOn: Date;
  beforeToOutsideCfm25: number;
  afterToOutsideCfm25: number;
  savedElectricityKWh: number;
  savedNaturalGasTherms: number;
  rebateUsdCents: number;
  recomputeOutcome: RecomputeState | null;
  recomputedAt: Date | null;
  recomputedEngineVersion: string | null;
  flagCount: number;
  submittedAt: Date;
}

/** What a claim may share with another one. */
export interface ClaimMark {
  kind: "photo" | "instrument_day";
  mark: string;
}

export interface NewClaim {
  programOrganizationId: string;
  programId: string;
  jobId?: string;
  reference: string;
  /** RFC 8785 canonical text; its hash is taken here. */
  packet: string;
  engineVersion: string;
  premiseKey: string;
  readingsHash: string;
  completedOn: Date;
  beforeToOutsideCfm25: number;
  afterToOutsideCfm25: number;
  savedElectricityKWh: number;
  savedNaturalGasTherms: number;
  rebateUsdCents: number;
  marks: readonly ClaimMark[];
}

export interface ClaimFilter extends PageRequest {
  state?: ClaimState;
  programId?: string;
  contractorId?: string;
  jobId?: string;
  outcome?: RecomputeState | "not-yet";
  isFlagged?: boolean;
  /** Start of the claim's number. */
  reference?: string;
  /** Work done on this day or later. */
  completedFrom?: Date;
}

/** How many claims there are, and what they ask for, by one thing. */
export interface ClaimCount {
  name: string;
  claims: number;
  rebateUsdCents: number;
}

type CountedBy = "state" | "recomputeOutcome" | "organizationId";

const LEFT_OUT = { packet: true, batchId: true, batchChunk: true, updatedAt: true } as const;

export function claims({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;

  /**
   * Row-level security says the same; said here too, and for the one side on which an organization stands, so that an
   * index answers, in its order.
   */
  async function mine(): Promise<{ organizationId: string } | { programOrganizationId: string }> {
    const own = await sql.organization.findUnique({ where: { id: organizationId }, select: { kind: true } });
    return own?.kind === "program" ? { programOrganizationId: organizationId } : { organizationId };
  }

  async function find(id: string): Promise<ClaimSummary & { packet: string }> {
    const row = await sql.claim.findUnique({
      where: { id: requireId(id, "claim") },
      omit: { ...LEFT_OUT, packet: false },
    });
    if (!row) throw notFound("claim");
    return row;
  }

  return {
    find,

    /** Hands a claim in. From here on nobody changes its packet. @throws InputProblem `conflict` when it was handed in. */
    async submit({ marks, ...claim }: NewClaim): Promise<ClaimSummary> {
      const id = randomUUID();
      const { programOrganizationId } = claim;
      const { count } = await sql.claim.createMany({
        data: [{ id, organizationId, ...claim, packetHash: textHash(claim.packet) }],
        skipDuplicates: true,
      });
      if (count === 0) throw new InputProblem("conflict", [], `The claim ${claim.reference} was handed in before.`);
      await sql.claimMark.createMany({
        data: marks.map((each) => ({ organizationId, programOrganizationId, claimId: id, ...each })),
      });
      const { packet: _packet, ...summary } = await find(id);
      return summary;
    },

    /** The claims that this organization made or receives, newest first. */
    async list(filter: ClaimFilter = {}): Promise<Page<ClaimSummary>> {
      const limit = pageLimit(filter);
      const { state, programId, contractorId, jobId, outcome, isFlagged, reference, completedFrom } = filter;
      const rows = await sql.claim.findMany({
        where: {
          ...(state && { state }),
          ...(programId && { programId: requireId(programId, "program") }),
          ...(contractorId && { organizationId: requireId(contractorId, "contractor") }),
          ...(jobId && { jobId: requireId(jobId, "job") }),
          ...(outcome && { recomputeOutcome: outcome === "not-yet" ? null : outcome }),
          ...(isFlagged !== undefined && { flagCount: isFlagged ? { gt: 0 } : 0 }),
          ...(completedFrom && { completedOn: { gte: completedFrom } }),
          ...(reference && { reference: { startsWith: reference } }),
          AND: [await mine(), afterCursor("submittedAt", filter)],
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

    /** Counts over all claims in sight: by state, by outcome of the recomputation, by contractor. */
    async summary(): Promise<Record<CountedBy, ClaimCount[]> & { flagged: number }> {
      // One pass for all of them; what is counted is small, however many claims there are.
      const side = "programOrganizationId" in (await mine()) ? "programOrganizationId" : "organizationId";
      const rows = await sql.$queryRaw<
        (Record<CountedBy, string> & { claims: number; rebateUsdCents: number; flagged: number })[]
      >`SELECT state::text, coalesce("recomputeOutcome"::text, 'not-yet') AS "recomputeOutcome", "organizationId"::text,
          claims, "rebateUsdCents", flagged
        FROM (SELECT state, "recomputeOutcome", "organizationId", count(*)::float8 AS claims,
            sum("rebateUsdCents")::float8 AS "rebateUsdCents", (count(*) FILTER (WHERE "flagCount" > 0))::float8 AS flagged
          FROM "Claim" WHERE ${Prisma.raw(`"${side}"`)} = ${organizationId}::uuid GROUP BY 1, 2, 3) AS counted`;
      const countBy = (by: CountedBy): ClaimCount[] =>
        [...new Set(rows.map((row) => row[by]))].map((name) => {
          const ofName = rows.filter((row) => row[by] === name);
          return {
            name,
            claims: ofName.reduce((sum, row) => sum + row.claims, 0),
            rebateUsdCents: ofName.reduce((sum, row) => sum + row.rebateUsdCents, 0),
          };
        });
      return {
        state: countBy("state"),
        recomputeOutcome: countBy("recomputeOutcome"),
        organizationId: countBy("organizationId"),
        flagged: rows.reduce((sum, row) => sum + row.flagged, 0),
      };
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
      const claim = await find(id);
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
