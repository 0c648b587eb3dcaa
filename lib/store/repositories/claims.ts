import { randomUUID } from "node:crypto";
import type { ClaimState } from "#lib/claims/claim-state.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { textHash } from "#lib/hash/content-hash.ts";
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
}

/** How many claims there are, and what they ask for, by one thing. */
export interface ClaimCount {
  name: string;
  claims: number;
  rebateUsdCents: number;
}

const LEFT_OUT = { packet: true, batchId: true, batchChunk: true, updatedAt: true } as const;

export function claims({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;

  /** Row-level security says the same; said here too, so that an index answers. */
  const mine = { OR: [{ organizationId }, { programOrganizationId: organizationId }] };

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
      const { state, programId, contractorId, jobId, outcome, isFlagged, reference } = filter;
      const rows = await sql.claim.findMany({
        where: {
          ...(state && { state }),
          ...(programId && { programId: requireId(programId, "program") }),
          ...(contractorId && { organizationId: requireId(contractorId, "contractor") }),
          ...(jobId && { jobId: requireId(jobId, "job") }),
          ...(outcome && { recomputeOutcome: outcome === "not-yet" ? null : outcome }),
          ...(isFlagged !== undefined && { flagCount: isFlagged ? { gt: 0 } : 0 }),
          ...(reference && { reference: { startsWith: reference } }),
          AND: [mine, afterCursor("submittedAt", filter)],
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
    async summary(): Promise<
      Record<"state" | "recomputeOutcome" | "organizationId", ClaimCount[]> & { flagged: number }
    > {
      const countBy = async (by: "state" | "recomputeOutcome" | "organizationId"): Promise<ClaimCount[]> => {
        const rows = await sql.claim.groupBy({ by: [by], where: mine, _count: true, _sum: { rebateUsdCents: true } });
        return rows.map((row) => ({
          name: String(row[by] ?? "not-yet"),
          claims: row._count,
          rebateUsdCents: row._sum.rebateUsdCents ?? 0,
        }));
      };
      return {
        state: await countBy("state"),
        recomputeOutcome: await countBy("recomputeOutcome"),
        organizationId: await countBy("organizationId"),
        flagged: await sql.claim.count({ where: { ...mine, flagCount: { gt: 0 } } }),
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
