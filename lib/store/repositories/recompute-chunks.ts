import { sendChunks } from "../claim-queue.ts";
import { toJson } from "../json.ts";
import type { UnitOfWork } from "../unit-of-work.ts";
import type { ChunkKey } from "./claim-chunks.ts";

/** A line of a file that was sent to be recomputed, as it came. */
export interface SentPacket {
  line: number;
  text: string;
}

/** What came out for the lines of a chunk; only lines that were not the same are kept one by one. */
export interface ChunkOutcomes {
  sameCount: number;
  differsCount: number;
  invalidCount: number;
  outcomes: readonly { line: number }[];
}

/** How many stored claims a worker takes at once. */
const CHUNK_CLAIMS = 200;

/** Chunks of claims to be recomputed: stored ones again, or such as came in a file and stay nobody's. */
export function recomputeChunks({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;
  return {
    /** All claims that this program has received, in chunks with their tasks: all or nothing. Returns how many claims. */
    async addStored(batchId: string): Promise<number> {
      const chunks = await sql.$queryRaw<{ chunk: number; claimCount: number }[]>`
        INSERT INTO "BatchProgress" ("organizationId", "batchId", chunk, state, "claimCount", detail)
        SELECT ${organizationId}::uuid, ${batchId}::uuid, chunk, 'waiting', count(*)::int,
          jsonb_build_object('lineCount', count(*), 'claimIds', jsonb_agg(id ORDER BY place))
        FROM (SELECT id, place, ((place - 1) / ${CHUNK_CLAIMS}::int)::int AS chunk
          FROM (SELECT id, row_number() OVER (ORDER BY "submittedAt", id) AS place FROM "Claim"
            WHERE "programOrganizationId" = ${organizationId}::uuid AND state <> 'draft') AS placed) AS cut
        GROUP BY chunk RETURNING chunk, "claimCount"`;
      await sendChunks(
        sql,
        chunks.map(({ chunk }) => ({ organizationId, batchId, chunk })),
      );
      return chunks.reduce((sum, { claimCount }) => sum + claimCount, 0);
    },

    /** Lines of a file, with their task. False when the batch was canceled meanwhile. */
    async addPackets({ batchId, chunk }: ChunkKey, packets: readonly SentPacket[]): Promise<boolean> {
      const [batch] = await sql.$queryRaw<{ state: string }[]>`
        SELECT state::text FROM "ClaimBatch" WHERE id = ${batchId}::uuid FOR SHARE`;
      if (batch?.state !== "running") return false;
      const detail = toJson({ firstLine: packets[0]?.line, lineCount: packets.length, packets });
      await sql.batchProgress.create({
        data: { organizationId, batchId, chunk, state: "waiting", claimCount: packets.length, detail },
      });
      await sendChunks(sql, [{ organizationId, batchId, chunk }]);
      return true;
    },

    /** Keeps what came out for the lines of a chunk in place of the lines, once. False when it was counted, or canceled. */
    async saveOutcomes({ batchId, chunk }: ChunkKey, { outcomes, ...counts }: ChunkOutcomes): Promise<boolean> {
      const { count } = await sql.batchProgress.updateMany({
        where: { batchId, chunk, state: "waiting" },
        data: {
          state: "finished",
          ...counts,
          detail: toJson({
            lineCount: counts.sameCount + counts.differsCount + counts.invalidCount,
            outcomes,
          }),
        },
      });
      return count > 0;
    },

    /** The lines that did not come out the same, in their order, chunk by chunk. */
    async *outcomes(batchId: string): AsyncGenerator<{ line: number }> {
      const chunks = await sql.batchProgress.findMany({
        where: { batchId },
        select: { chunk: true },
        orderBy: { chunk: "asc" },
      });
      for (const { chunk } of chunks) {
        const row = await sql.batchProgress.findUnique({ where: { batchId_chunk: { batchId, chunk } } });
        yield* (row?.detail as { outcomes?: { line: number }[] } | undefined)?.outcomes ?? [];
      }
    },
  };
}
