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
