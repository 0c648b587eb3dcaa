import { createHash } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

/** A photo on its way in: the picture alone, without what a camera wrote beside it. */
export interface NewPhoto {
  jobId: string;
  content: Uint8Array;
  widthPx: number;
  heightPx: number;
}

/** A photo of 1,600 pixels takes about a quarter of this. */
export const LARGEST_PHOTO_BYTES = 1_500_000;
/** 200 leaks with two photos each. */
const MOST_PHOTOS_OF_A_JOB = 400;

export function photos({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;

  return {
    /**
     * Keeps a photo and says the SHA-256 by which the job names it. The same photo twice is one.
     * @throws InputProblem `input-unusable` when it is too large, or the job has too many.
     */
    async add({ jobId, content, widthPx, heightPx }: NewPhoto): Promise<string> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "Photos are added by a member of the organization");
      if (content.length > LARGEST_PHOTO_BYTES) {
        throw new InputProblem("input-unusable", [], "A photo may have 1.5 MB at most. Choose a smaller one");
      }
      const sha256 = createHash("sha256").update(content).digest("hex");
      const key = { organizationId, jobId: requireId(jobId, "job"), sha256 };
      if ((await sql.job.count({ where: { id: jobId } })) === 0) throw notFound("job");
      const count = await sql.photo.count({ where: { jobId } });
      if (count >= MOST_PHOTOS_OF_A_JOB) {
        throw new InputProblem("input-unusable", [], `A job keeps ${MOST_PHOTOS_OF_A_JOB} photos. Remove one first`);
      }
      await sql.photo.createMany({
        data: [{ ...key, content: Uint8Array.from(content), widthPx, heightPx, authorId: actorId }],
        skipDuplicates: true,
      });
      return sha256;
    },

    /**
     * Deletes a photo for good, from every leak of the job that names it. One that a claim has bound by its hash stays.
     * @throws InputProblem `not-found`, or `held-by-claim` with the number of the claim.
     */
    async remove(jobId: string, sha256: string): Promise<void> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "Photos are deleted by a member of the organization");
      // The programs first: by them an index finds the mark, however many claims there are.
      const [claim] = await sql.$queryRaw<{ reference: string }[]>`
        SELECT claim.reference FROM "ClaimMark" mark JOIN "Claim" claim ON claim.id = mark."claimId"
        WHERE mark."programOrganizationId" IN (
            SELECT "programOrganizationId" FROM "ProgramContractor" WHERE "organizationId" = ${organizationId}::uuid
          )
          AND mark.mark = ${sha256} AND mark."organizationId" = ${organizationId}::uuid
        ORDER BY claim."submittedAt" LIMIT 1`;
      if (claim) {
        throw new InputProblem("held-by-claim", [], `The claim ${claim.reference} names this photo by its hash`);
      }
      const { count } = await sql.photo.deleteMany({
        where: { organizationId, jobId: requireId(jobId, "job"), sha256 },
      });
      if (count === 0) throw notFound("photo");
    },

    /** Those of the photos that are kept for a job. */
    async findMany(jobId: string, sha256: readonly string[]): Promise<{ sha256: string; content: Uint8Array }[]> {
      if (sha256.length === 0) return [];
      return await sql.photo.findMany({
        where: { organizationId, jobId: requireId(jobId, "job"), sha256: { in: [...sha256] } },
        select: { sha256: true, content: true },
      });
    },

    /** The bytes of a photo. @throws InputProblem `not-found` */
    async find(jobId: string, sha256: string): Promise<Uint8Array> {
      const row = await sql.photo.findUnique({
        where: { organizationId_jobId_sha256: { organizationId, jobId: requireId(jobId, "job"), sha256 } },
        select: { content: true },
      });
      if (!row) throw notFound("photo");
      return row.content;
    },
  };
}
