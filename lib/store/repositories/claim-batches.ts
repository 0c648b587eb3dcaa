import { randomUUID } from "node:crypto";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export type BatchState = "waiting" | "running" | "finished" | "canceled" | "failed";

/** Claims that come in, or claims that are recomputed. */
export type BatchKind = "import" | "recompute";

/** Why a line of a file did not become a claim. */
export interface RefusedLine {
  line: number;
  detail: string;
}

/** What became of the lines of one chunk. */
export interface ChunkLines {
  firstLine: number;
  lineCount: number;
  alreadyThereCount: number;
  refusedCount: number;
  /** The first few of them. */
  refused: readonly RefusedLine[];
}

/** A batch with what was done so far: lines = stored + already there + refused; stored = checked + still to be checked. */
export interface BatchRecord {
  id: string;
  kind: BatchKind;
  state: BatchState;
  sourceName: string;
  createdAt: Date;
  finishedAt: Date | null;
  cancelRequestedAt: Date | null;
  /** Lines of the whole source; null while it is being read. */
  totalCount: number | null;
  lineCount: number;
  storedCount: number;
  alreadyThereCount: number;
  refusedCount: number;
  sameCount: number;
  differsCount: number;
  invalidCount: number;
  chunkCount: number;
  openChunkCount: number;
}

const MOST_LISTED = 50;
const MOST_REFUSED_SHOWN = 100;

export function claimBatches({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;

  async function read(id: string | null): Promise<BatchRecord[]> {
    return await sql.$queryRaw<BatchRecord[]>`
      SELECT b.id::text, b.kind::text, b.state::text, b."sourceName", b."createdAt", b."finishedAt", b."cancelRequestedAt", b."totalCount",
        coalesce(sum((p.detail->>'lineCount')::int), 0)::int AS "lineCount",
        coalesce(sum(p."claimCount"), 0)::int AS "storedCount",
        coalesce(sum((p.detail->>'alreadyThereCount')::int), 0)::int AS "alreadyThereCount",
        coalesce(sum((p.detail->>'refusedCount')::int), 0)::int AS "refusedCount",
        coalesce(sum(p."sameCount"), 0)::int AS "sameCount",
        coalesce(sum(p."differsCount"), 0)::int AS "differsCount",
        coalesce(sum(p."invalidCount"), 0)::int AS "invalidCount",
        count(p.chunk)::int AS "chunkCount",
        (count(p.chunk) FILTER (WHERE p.state = 'waiting'))::int AS "openChunkCount"
      FROM "ClaimBatch" b LEFT JOIN "BatchProgress" p ON p."batchId" = b.id AND p."organizationId" = b."organizationId"
      WHERE b."organizationId" = ${organizationId}::uuid AND (${id}::uuid IS NULL OR b.id = ${id}::uuid)
      GROUP BY b.id ORDER BY b."createdAt" DESC LIMIT ${MOST_LISTED}`;
  }

  return {
    async start({
      kind,
      sourceName,
      options,
    }: {
      kind: BatchKind;
      sourceName: string;
      options: object;
    }): Promise<string> {
      const id = randomUUID();
      await sql.claimBatch.create({
        data: {
          id,
          organizationId,
          kind,
          state: "running",
          sourceName,
          options: toJson(options),
          startedById: identity.actorId ?? organizationId,
        },
      });
      return id;
    },

    async find(id: string): Promise<BatchRecord> {
      const [batch] = await read(requireId(id, "batch"));
      if (!batch) throw notFound("batch");
      return batch;
    },

    /** The newest batches. */
    list: () => read(null),

    /** The first lines that were refused. */
    async refusedLines(id: string): Promise<RefusedLine[]> {
      const chunks = await sql.batchProgress.findMany({
        where: { batchId: requireId(id, "batch") },
        select: { detail: true },
        orderBy: { chunk: "asc" },
      });
      return chunks
        .flatMap(({ detail }) => (detail as unknown as Partial<ChunkLines>).refused ?? [])
        .slice(0, MOST_REFUSED_SHOWN);
    },

    /** The whole source was read: now it is known how much there is. */
    async setTotal(id: string, totalCount: number): Promise<void> {
      await sql.claimBatch.updateMany({ where: { id: requireId(id, "batch") }, data: { totalCount } });
    },

    /**
     * Finished once the source was read and every chunk is done. The row is locked first, so that of two workers who do
     * the last two chunks one sees both.
     */
    async finishIfDone(id: string): Promise<void> {
      await sql.$queryRaw`SELECT 1 FROM "ClaimBatch" WHERE id = ${requireId(id, "batch")}::uuid FOR UPDATE`;
      await sql.$executeRaw`UPDATE "ClaimBatch" SET state = 'finished', "finishedAt" = now()
        WHERE id = ${id}::uuid AND state = 'running' AND "totalCount" IS NOT NULL
          AND NOT EXISTS (SELECT 1 FROM "BatchProgress" WHERE "batchId" = ${id}::uuid AND state = 'waiting')`;
    },

    /** Nothing more is read or checked; claims that were handed in stay, unchecked. */
    async cancel(id: string): Promise<void> {
      const { count } = await sql.claimBatch.updateMany({
        where: { id: requireId(id, "batch"), state: { in: ["waiting", "running"] } },
        data: { state: "canceled", cancelRequestedAt: new Date(), finishedAt: new Date() },
      });
      if (count === 0) return;
      await sql.$executeRaw`UPDATE "BatchProgress" SET state = 'canceled', detail = detail - 'packets', "updatedAt" = now()
        WHERE "batchId" = ${id}::uuid AND state = 'waiting'`;
    },
  };
}
