import { randomBytes, randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { textHash } from "#lib/hash/sha256.ts";
import {
  type ProposalEventKind,
  type ProposalEventRecord,
  type ProposalState,
  proposalState,
} from "#lib/job/proposal-state.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

/** What a homeowner was offered, as it was issued; never changed again. */
export interface ProposalRecord {
  id: string;
  jobId: string;
  jobRevision: number;
  engineVersion: string;
  result: unknown;
  view: unknown;
  /** SHA-256 of the canonical JSON of job id, job revision, engine version, result and view. */
  contentHash: string;
  supersedesId: string | null;
  issuedById: string;
  issuedAt: Date;
  expiresAt: Date;
}

export interface ProposalSummary extends Omit<ProposalRecord, "result" | "view"> {
  state: ProposalState;
}

export interface NewProposal {
  jobId: string;
  jobRevision: number;
  engineVersion: string;
  result: object;
  view: object;
  expiresAt: Date;
  supersedesId?: string;
}

/** 256 bits: nobody guesses a link. */
const LINK_TOKEN_BYTES = 32;

/** What stands in the database for a link's token. */
export function linkTokenHash(token: string): string {
  return textHash(token);
}

export function proposals({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  const hidden = { organizationId: true, linkTokenHash: true } as const;

  async function find(id: string): Promise<ProposalRecord> {
    const row = await sql.proposal.findUnique({ where: { id: requireId(id, "proposal") }, omit: hidden });
    if (!row) throw notFound("proposal");
    return row;
  }

  return {
    find,

    /** Issues a proposal. The link's token is given out here once; only its hash is kept. */
    async issue(proposal: NewProposal): Promise<{ proposal: ProposalRecord; linkToken: string }> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "A proposal is issued by a member of the organization");
      const { jobId, jobRevision, engineVersion, result, view, expiresAt, supersedesId } = proposal;
      const linkToken = randomBytes(LINK_TOKEN_BYTES).toString("base64url");
      const row = await sql.proposal.create({
        data: {
          id: randomUUID(),
          organizationId,
          jobId: requireId(jobId, "job"),
          jobRevision,
          engineVersion,
          result: toJson(result),
          view: toJson(view),
          contentHash: contentHash({ jobId, jobRevision, engineVersion, result, view }),
          linkTokenHash: linkTokenHash(linkToken),
          issuedById: actorId,
          expiresAt,
          ...(supersedesId && { supersedesId }),
        },
        omit: hidden,
      });
      return { proposal: row, linkToken };
    },

    /** Adds to what happened with a proposal. The homeowner's acts carry no actor. */
    async recordEvent(proposalId: string, kind: ProposalEventKind, payload: object = {}): Promise<void> {
      await find(proposalId);
      await sql.proposalEvent.create({ data: { organizationId, proposalId, kind, payload: toJson(payload), actorId } });
    },

    async events(proposalId: string): Promise<ProposalEventRecord[]> {
      return await sql.proposalEvent.findMany({
        where: { proposalId: requireId(proposalId, "proposal") },
        select: { kind: true, payload: true, actorId: true, createdAt: true },
        orderBy: { id: "asc" },
      });
    },

    /** The proposals of a job, or of all jobs, newest first, each with the state it is in at `now`. */
    async list({ jobId, now }: { jobId?: string; now: Date }): Promise<ProposalSummary[]> {
      const rows = await sql.proposal.findMany({
        where: jobId ? { jobId: requireId(jobId, "job") } : {},
        omit: { ...hidden, result: true, view: true },
        include: {
          events: { select: { kind: true, payload: true, actorId: true, createdAt: true }, orderBy: { id: "asc" } },
          supersededBy: { select: { id: true } },
        },
        orderBy: [{ issuedAt: "desc" }, { id: "asc" }],
      });
      return rows.map(({ events, supersededBy, ...row }) => ({
        ...row,
        state: proposalState({ events, expiresAt: row.expiresAt, isSuperseded: supersededBy.length > 0, now }),
      }));
    },

    /** The paper that took the place of this one, or that changes it; the newest where there are several. */
    async newerId(id: string): Promise<string | undefined> {
      const row = await sql.proposal.findFirst({
        where: { supersedesId: requireId(id, "proposal") },
        select: { id: true },
        orderBy: [{ issuedAt: "desc" }, { id: "asc" }],
      });
      return row?.id;
    },

    async stateOf(id: string, now: Date): Promise<ProposalState> {
      const { expiresAt } = await find(id);
      const isSuperseded = (await sql.proposal.count({ where: { supersedesId: id } })) > 0;
      return proposalState({ events: await this.events(id), expiresAt, isSuperseded, now });
    },
  };
}
