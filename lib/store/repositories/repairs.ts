import { InputProblem } from "#lib/errors/input-problem.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { SealingRetest } from "#lib/scope/learning.ts";
import { type RepairCatalogue, repairCatalogueSchema } from "#lib/scope/repair-schema.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

/** An organization's repairs as they were from one moment on; never changed again. */
export interface RepairsRecord {
  version: number;
  catalogue: RepairCatalogue;
  /** Whether its own retests move the effects. */
  usesRetests: boolean;
  contentHash: string;
  authorId: string;
  createdAt: Date;
}

/** What one finished job taught. */
export interface ExperienceRecord extends SealingRetest {
  jobId: string;
  jobTitle: string;
  jobRevision: number;
  updatedAt: Date;
}

export function repairs({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  const newestFirst = { orderBy: { version: "desc" }, omit: { organizationId: true } } as const;

  function toRecord({ document, ...rest }: Omit<RepairsRecord, "catalogue"> & { document: unknown }): RepairsRecord {
    return { ...rest, catalogue: repairCatalogueSchema.parse(document) };
  }

  return {
    async newest(): Promise<RepairsRecord | undefined> {
      const row = await sql.repairCatalogueVersion.findFirst(newestFirst);
      return row ? toRecord(row) : undefined;
    },

    async find(version: number): Promise<RepairsRecord> {
      const where = { organizationId_version: { organizationId, version } };
      const row = await sql.repairCatalogueVersion.findUnique({ where, omit: { organizationId: true } });
      if (!row) throw notFound("version of the repairs");
      return toRecord(row);
    },

    /**
     * Appends a version, whose number is the catalogue's version id.
     * @throws InputProblem `conflict` when somebody saved one since.
     */
    async add({ catalogue, usesRetests }: Pick<RepairsRecord, "catalogue" | "usesRetests">): Promise<RepairsRecord> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "Repairs are changed by a member of the organization");
      // Two who save at once take turns, so that the second meets the first one's version here.
      await sql.$queryRaw`SELECT pg_advisory_xact_lock(hashtext(${`repairs ${organizationId}`}))::text`;
      const newest = await this.newest();
      const version = Number(catalogue.versionId);
      if (version !== (newest?.version ?? 0) + 1) {
        throw new InputProblem(
          "conflict",
          [],
          `Somebody changed the repairs meanwhile: version ${newest?.version ?? 0} is there. Load them again, then repeat your change.`,
        );
      }
      const row = await sql.repairCatalogueVersion.create({
        data: {
          organizationId,
          version,
          document: toJson(catalogue),
          usesRetests,
          contentHash: contentHash({ catalogue, usesRetests }),
          authorId: actorId,
        },
        omit: { organizationId: true },
      });
      return toRecord(row);
    },

    /** What the retests of finished jobs taught, in the order of the jobs' ids, so that it always adds up the same. */
    async experience(): Promise<ExperienceRecord[]> {
      const rows = await sql.repairExperience.findMany({
        omit: { organizationId: true },
        include: { job: { select: { title: true } } },
        orderBy: { jobId: "asc" },
      });
      return rows.map(({ job, treated, ...row }) => ({
        ...row,
        jobTitle: job.title,
        treated: treated as unknown as SealingRetest["treated"],
      }));
    },

    /** Keeps what a job's retest taught, in place of what an earlier revision of it did. */
    async noteExperience(jobId: string, jobRevision: number, retest: SealingRetest): Promise<void> {
      const { treated, removedCfm25, standardUncertaintyCfm25 } = retest;
      const data = { jobRevision, treated: toJson(treated), removedCfm25, standardUncertaintyCfm25 };
      await sql.repairExperience.upsert({
        where: { organizationId_jobId: { organizationId, jobId: requireId(jobId, "job") } },
        create: { organizationId, jobId, ...data },
        update: data,
      });
    },

    /** A job whose retest was taken back teaches nothing. */
    async dropExperience(jobId: string): Promise<void> {
      await sql.repairExperience.deleteMany({ where: { jobId: requireId(jobId, "job") } });
    },
  };
}
