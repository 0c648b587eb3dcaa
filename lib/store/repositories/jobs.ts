import { randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { Prisma } from "../generated/client.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import { afterCursor, type Page, type PageRequest, pageLimit, toPage } from "../page.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export type JobState = "draft" | "proposed" | "accepted" | "declined" | "sealed" | "verified" | "closed";

export interface JobRecord {
  id: string;
  title: string;
  state: JobState;
  /** 0 before the first revision is saved. */
  currentRevision: number;
  clientId: string | null;
  propertyId: string | null;
  isDemo: boolean;
  createdAt: Date;
  updatedAt: Date;
}

/** One saved state of a job, never changed again. */
export interface JobRevisionRecord {
  jobId: string;
  revision: number;
  document: unknown;
  contentHash: string;
  engineVersion: string;
  result: unknown;
  authorId: string;
  createdAt: Date;
}

export interface NewJob {
  title: string;
  /** Further words that a search should find it by: address, client. */
  searchWords?: string;
  clientId?: string;
  propertyId?: string;
  isDemo?: boolean;
  exampleKey?: string;
}

export interface NewRevision {
  jobId: string;
  /** The revision that the change was made on; another one saved meanwhile is a conflict. */
  onRevision: number;
  document: object;
  engineVersion: string;
  result?: object;
}

export interface JobFilter extends PageRequest {
  search?: string;
  state?: JobState;
}

const FIELDS = {
  id: true,
  title: true,
  state: true,
  currentRevision: true,
  clientId: true,
  propertyId: true,
  isDemo: true,
  createdAt: true,
  updatedAt: true,
} as const;

/** The characters that the database's LIKE would read as wildcards, as themselves. */
function literal(word: string): string {
  return word.replaceAll(/[\\%_]/g, "\\$&");
}

export function jobs({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;

  async function find(id: string): Promise<JobRecord> {
    const row = await sql.job.findUnique({ where: { id: requireId(id, "job") }, select: FIELDS });
    if (!row) throw notFound("job");
    return row;
  }

  async function create({ title, searchWords = "", ...rest }: NewJob): Promise<JobRecord> {
    const searchText = `${title} ${searchWords}`.toLowerCase();
    return await sql.job.create({
      data: { id: randomUUID(), organizationId, title, searchText, ...rest },
      select: FIELDS,
    });
  }

  async function findRevision(jobId: string, revision: number): Promise<JobRevisionRecord> {
    const where = { jobId_revision: { jobId: requireId(jobId, "job"), revision } };
    const row = await sql.jobRevision.findUnique({ where, omit: { organizationId: true } });
    if (!row) throw notFound("revision of this job");
    return row;
  }

  /** Appends a revision. @throws InputProblem `conflict` when somebody saved one since `onRevision`. */
  async function saveRevision({
    jobId,
    onRevision,
    document,
    engineVersion,
    result,
  }: NewRevision): Promise<JobRevisionRecord> {
    if (actorId === null) throw new InputProblem("not-allowed", [], "A job is changed by a member of the organization");
    const revision = onRevision + 1;
    const { count } = await sql.job.updateMany({
      where: { id: requireId(jobId, "job"), currentRevision: onRevision },
      data: { currentRevision: revision },
    });
    if (count === 0) {
      const { currentRevision } = await find(jobId);
      throw new InputProblem(
        "conflict",
        [],
        `Somebody saved this job meanwhile: it is at revision ${currentRevision}, and yours was made on ${onRevision}. Load it again, then repeat your change.`,
      );
    }
    return await sql.jobRevision.create({
      data: {
        organizationId,
        jobId,
        revision,
        document: toJson(document),
        contentHash: contentHash(document),
        engineVersion,
        ...(result && { result: toJson(result) }),
        authorId: actorId,
      },
      omit: { organizationId: true },
    });
  }

  return {
    create,
    find,
    findRevision,
    saveRevision,

    /** The job with its newest revision; undefined before the first one. */
    async findCurrent(id: string): Promise<{ job: JobRecord; revision: JobRevisionRecord | undefined }> {
      const job = await find(id);
      return { job, revision: job.currentRevision > 0 ? await findRevision(id, job.currentRevision) : undefined };
    },

    async findByExample(exampleKey: string): Promise<JobRecord | undefined> {
      const where = { organizationId_exampleKey: { organizationId, exampleKey } };
      return (await sql.job.findUnique({ where, select: FIELDS })) ?? undefined;
    },

    /** All revisions, newest first, without their documents. */
    async listRevisions(jobId: string): Promise<Omit<JobRevisionRecord, "document" | "result">[]> {
      return await sql.jobRevision.findMany({
        where: { jobId: requireId(jobId, "job") },
        omit: { organizationId: true, document: true, result: true },
        orderBy: { revision: "desc" },
      });
    },

    async list(filter: JobFilter = {}): Promise<Page<JobRecord>> {
      const limit = pageLimit(filter);
      const words = (filter.search ?? "").toLowerCase().split(/\s+/).filter(Boolean);
      const where: Prisma.JobWhereInput = {
        ...(filter.state && { state: filter.state }),
        AND: [...words.map((word) => ({ searchText: { contains: literal(word) } })), afterCursor("createdAt", filter)],
      };
      const orderBy = [{ createdAt: "desc" as const }, { id: "asc" as const }];
      const rows = await sql.job.findMany({ where, select: FIELDS, orderBy, take: limit + 1 });
      return toPage(
        rows,
        limit,
        (row) => row.createdAt,
        (row) => row,
      );
    },

    async setState(id: string, state: JobState): Promise<void> {
      const { count } = await sql.job.updateMany({ where: { id: requireId(id, "job") }, data: { state } });
      if (count === 0) throw notFound("job");
    },

    /** Names the job anew, for people and for the search. */
    async describe(id: string, { title, searchWords = "" }: Pick<NewJob, "title" | "searchWords">): Promise<void> {
      const data = { title, searchText: `${title} ${searchWords}`.toLowerCase() };
      const { count } = await sql.job.updateMany({ where: { id: requireId(id, "job") }, data });
      if (count === 0) throw notFound("job");
    },

    /** A new draft with the newest document of another job; readings and history of that one stay with it. */
    async duplicate(id: string, title: string): Promise<JobRecord> {
      const { job, revision } = await this.findCurrent(id);
      const copy = await create({
        title,
        ...(job.clientId && { clientId: job.clientId }),
        ...(job.propertyId && { propertyId: job.propertyId }),
      });
      if (!revision) return copy;
      await saveRevision({
        jobId: copy.id,
        onRevision: 0,
        document: { ...(revision.document as object), title },
        engineVersion: revision.engineVersion,
      });
      return await find(copy.id);
    },
  };
}
