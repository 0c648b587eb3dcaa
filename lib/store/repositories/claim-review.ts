import { randomUUID } from "node:crypto";
import type { ClaimState } from "#lib/claims/claim-state.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";
import type { RecomputeState } from "./claims.ts";

export interface StoredFlag {
  code: string;
  evidence: unknown;
  innocentExplanation: string;
  createdAt: Date;
}

export type NewFlag = Pick<StoredFlag, "code" | "innocentExplanation"> & { evidence: readonly object[] };

/** One line of what was said and decided about a claim. */
export interface ClaimEvent {
  kind: "comment" | "decision";
  authorId: string;
  text: string;
  fromState?: ClaimState;
  toState?: ClaimState;
  createdAt: Date;
}

export interface ClaimCheck {
  claimId: string;
  outcome: RecomputeState;
  engineVersion: string;
  flags: readonly NewFlag[];
}

/** Another claim of the program that may share something with one. */
export interface NeighborRow {
  claimId: string;
  organizationId: string;
  reference: string;
  packet: string;
}

/** A claim with what a rule is replayed over. */
export interface PacketRow {
  id: string;
  reference: string;
  organizationId: string;
  state: ClaimState;
  completedOn: Date;
  packet: string;
}

const MOST_NEIGHBORS = 50;

/** What reviewers and contractors add to a claim; the claim itself never changes by it. */
export function claimReview({ sql, identity }: UnitOfWork) {
  const { actorId } = identity;

  async function sides(claimId: string) {
    const row = await sql.claim.findUnique({
      where: { id: requireId(claimId, "claim") },
      select: { organizationId: true, programOrganizationId: true },
    });
    if (!row) throw notFound("claim");
    return row;
  }

  function requireActor(): string {
    if (actorId === null) throw new InputProblem("not-allowed", [], "This is for a member of an organization");
    return actorId;
  }

  return {
    async flags(claimId: string): Promise<StoredFlag[]> {
      return await sql.claimFlag.findMany({
        where: { claimId: requireId(claimId, "claim") },
        select: { code: true, evidence: true, innocentExplanation: true, createdAt: true },
        orderBy: { code: "asc" },
      });
    },

    /** Puts the newest outcome and the newest flags in the place of the former ones. */
    async saveCheck({ claimId, outcome, engineVersion, flags }: ClaimCheck): Promise<void> {
      const both = await sides(claimId);
      await sql.claimFlag.deleteMany({ where: { claimId } });
      await sql.claimFlag.createMany({
        data: flags.map(({ evidence, ...flag }) => ({
          id: randomUUID(),
          claimId,
          ...both,
          ...flag,
          evidence: toJson(evidence),
        })),
      });
      await sql.claim.updateMany({
        where: { id: claimId },
        data: {
          recomputeOutcome: outcome,
          recomputedAt: new Date(),
          recomputedEngineVersion: engineVersion,
          flagCount: flags.length,
        },
      });
    },

    async comment(claimId: string, text: string): Promise<void> {
      const both = await sides(claimId);
      await sql.claimComment.create({ data: { claimId, ...both, authorId: requireActor(), text } });
    },

    /** Claims of a program with their packets, in the order of their ids, after one of them. */
    async packets(programId: string, { afterId, limit }: { afterId?: string; limit: number }): Promise<PacketRow[]> {
      return await sql.claim.findMany({
        where: { programId: requireId(programId, "program"), ...(afterId && { id: { gt: afterId } }) },
        select: { id: true, reference: true, organizationId: true, state: true, completedOn: true, packet: true },
        orderBy: { id: "asc" },
        take: limit,
      });
    },

    /** How many claims of a program still stand. */
    async standingCount(programId: string): Promise<number> {
      const gone: ClaimState[] = ["draft", "declined", "withdrawn"];
      return await sql.claim.count({ where: { programId: requireId(programId, "program"), state: { notIn: gone } } });
    },

    /** Comments and decisions in the order in which they came. */
    async events(claimId: string): Promise<ClaimEvent[]> {
      const where = { claimId: requireId(claimId, "claim") };
      const comments = await sql.claimComment.findMany({ where, orderBy: { id: "asc" } });
      const decisions = await sql.claimDecision.findMany({ where, orderBy: { id: "asc" } });
      return [
        ...comments.map(({ authorId, text, createdAt }) => ({ kind: "comment" as const, authorId, text, createdAt })),
        ...decisions.map(({ authorId, reason, fromState, toState, createdAt }) => ({
          kind: "decision" as const,
          authorId,
          text: reason,
          fromState,
          toState,
          createdAt,
        })),
      ].sort((one, other) => one.createdAt.getTime() - other.createdAt.getTime());
    },

    /**
     * Claims handed in before this one that share its premise, its readings, a photo, or an instrument on a day. Those
     * that were declined or taken back do not count.
     */
    async earlierNeighbors(claimId: string): Promise<NeighborRow[]> {
      const rows = await sql.$queryRaw<NeighborRow[]>`
        WITH own AS (SELECT * FROM "Claim" WHERE id = ${requireId(claimId, "claim")}::uuid),
        near AS (
          SELECT c.id FROM "Claim" c JOIN own ON c."programOrganizationId" = own."programOrganizationId" AND c."premiseKey" = own."premiseKey"
          UNION SELECT c.id FROM "Claim" c JOIN own ON c."programOrganizationId" = own."programOrganizationId" AND c."readingsHash" = own."readingsHash"
          UNION SELECT theirs."claimId" FROM "ClaimMark" mine JOIN "ClaimMark" theirs
            ON theirs."programOrganizationId" = mine."programOrganizationId" AND theirs.mark = mine.mark
            WHERE mine."claimId" = ${claimId}::uuid
        )
        SELECT c.id::text AS "claimId", c."organizationId"::text, c.reference, c.packet
        FROM "Claim" c JOIN near ON near.id = c.id, own
        WHERE c.id <> own.id AND c.state NOT IN ('draft', 'declined', 'withdrawn')
          AND (c."submittedAt", c.id) < (own."submittedAt", own.id)
        ORDER BY c."submittedAt" DESC, c.id LIMIT ${MOST_NEIGHBORS}`;
      return rows;
    },

    async saveInspection(claimId: string, document: object): Promise<void> {
      const both = await sides(claimId);
      await sql.inspection.create({
        data: { id: randomUUID(), claimId, ...both, document: toJson(document), authorId: requireActor() },
      });
    },

    async inspections(claimId: string): Promise<{ document: unknown; authorId: string; createdAt: Date }[]> {
      return await sql.inspection.findMany({
        where: { claimId: requireId(claimId, "claim") },
        select: { document: true, authorId: true, createdAt: true },
        orderBy: { createdAt: "asc" },
      });
    },
  };
}
