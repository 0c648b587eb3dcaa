import { randomUUID } from "node:crypto";
import { textHash } from "#lib/hash/sha256.ts";
import { type QueueOptions, sendChunks } from "../claim-queue.ts";
import { toJson } from "../json.ts";
import type { UnitOfWork } from "../unit-of-work.ts";
import type { ChunkLines } from "./claim-batches.ts";
import type { ClaimCheck, NeighborRow } from "./claim-review.ts";
import type { NewClaim } from "./claims.ts";
import type { SentPacket } from "./recompute-chunks.ts";

/** A claim that came in bulk: of whom, and its place in the file. */
export interface ArrivedClaim extends NewClaim {
  organizationId: string;
  line: number;
}

export interface ChunkKey {
  batchId: string;
  chunk: number;
}

/** A stored claim that a worker has to check. */
export interface UncheckedClaim {
  id: string;
  organizationId: string;
  programId: string;
  packet: string;
  completedOn: Date;
}

/** What a worker has to do: claims that are stored, by id, or packets that are not. */
export interface ChunkWork {
  claimIds?: readonly string[] | undefined;
  packets?: readonly SentPacket[] | undefined;
}

/** What became of the claims of a chunk. */
export interface StoredChunk {
  storedCount: number;
  alreadyThereCount: number;
  /** Claims whose number was taken by another packet before. */
  numberTaken: readonly ArrivedClaim[];
}

interface ClaimOfChunk {
  id: string;
  /** The contractor's. */
  organizationId: string;
}

const MOST_NEIGHBORS = 50;

/**
 * Claims by the chunk: one statement for each table, whatever the number of claims. Rows go as one JSON text, for a
 * statement with a parameter for each of their values takes longer to make than to run.
 */
export function claimChunks({ sql, identity }: UnitOfWork) {
  const { organizationId: programOrganizationId, actorId } = identity;

  /** Claims whose number is there already: with the same packet they are the same claim, come a second time. */
  async function findTaken(missing: readonly ArrivedClaim[]): Promise<Map<string, string>> {
    if (missing.length === 0) return new Map();
    const rows = await sql.claim.findMany({
      where: {
        programId: missing[0]!.programId,
        organizationId: { in: [...new Set(missing.map(({ organizationId }) => organizationId))] },
        reference: { in: missing.map(({ reference }) => reference) },
      },
      select: { organizationId: true, reference: true, packetHash: true },
    });
    return new Map(
      rows.map(({ organizationId, reference, packetHash }) => [`${organizationId} ${reference}`, packetHash]),
    );
  }

  async function keepMarks(claims: readonly (ClaimOfChunk & Pick<NewClaim, "marks">)[]): Promise<void> {
    const rows = claims.flatMap(({ id, organizationId, marks }) =>
      marks.map((each) => ({ id, organizationId, ...each })),
    );
    await sql.$executeRaw`
      INSERT INTO "ClaimMark" ("organizationId", "programOrganizationId", "claimId", kind, mark)
      SELECT "organizationId", ${programOrganizationId}::uuid, id, kind::"ClaimMarkKind", mark
      FROM json_to_recordset(${JSON.stringify(rows)}::json) AS r(id uuid, "organizationId" uuid, kind text, mark text)`;
  }

  /** What was done with each claim, into the audit log, where its contractor reads it too. */
  async function keepRecords(
    claims: readonly (ClaimOfChunk & { detail: object })[],
    action: string,
    by: string | null = actorId,
  ): Promise<void> {
    await sql.$executeRaw`
      INSERT INTO "AuditLog" ("organizationId", "programOrganizationId", "actorId", action, "subjectKind", "subjectId", detail)
      SELECT ${programOrganizationId}::uuid, "organizationId", ${by}::uuid, ${action}, 'claim', id, detail
      FROM json_to_recordset(${JSON.stringify(claims)}::json) AS r(id text, "organizationId" uuid, detail jsonb)`;
  }

  return {
    /**
     * Keeps the claims of one chunk, what became of its lines, and the task to check them: all or nothing. A claim that
     * is there already is not kept twice. False in place of an answer when the batch was canceled meanwhile.
     */
    async store(
      { batchId, chunk }: ChunkKey,
      {
        claims: arrived,
        lines,
        queue,
      }: { claims: readonly ArrivedClaim[]; lines: Omit<ChunkLines, "alreadyThereCount">; queue?: QueueOptions },
    ): Promise<StoredChunk | false> {
      const [batch] = await sql.$queryRaw<{ state: string }[]>`
        SELECT state::text FROM "ClaimBatch" WHERE id = ${batchId}::uuid FOR SHARE`;
      if (batch?.state !== "running") return false;
      // Two imports that bring the same numbers take them in the same order, so that neither waits for the other in turn.
      const claims = [...arrived].sort((one, other) =>
        one.reference < other.reference ? -1 : Number(one.reference > other.reference),
      );
      const rows = claims.map(({ marks: _marks, line: _line, ...claim }) => ({
        ...claim,
        id: randomUUID(),
        packetHash: textHash(claim.packet),
      }));
      const stored = await sql.$queryRaw<{ id: string }[]>`
        INSERT INTO "Claim" (id, "organizationId", "programOrganizationId", "programId", "batchId", "batchChunk", reference,
          packet, "packetHash", "engineVersion", "premiseKey", "readingsHash", "completedOn", "beforeToOutsideCfm25",
          "afterToOutsideCfm25", "savedElectricityKWh", "savedNaturalGasTherms", "rebateUsdCents")
        SELECT id, "organizationId", "programOrganizationId", "programId", ${batchId}::uuid, ${chunk}, reference,
          packet, "packetHash", "engineVersion", "premiseKey", "readingsHash", "completedOn", "beforeToOutsideCfm25",
          "afterToOutsideCfm25", "savedElectricityKWh", "savedNaturalGasTherms", "rebateUsdCents"
        FROM json_to_recordset(${JSON.stringify(rows)}::json) AS r(
          id uuid, "organizationId" uuid, "programOrganizationId" uuid, "programId" uuid, reference text, packet text,
          "packetHash" text, "engineVersion" text, "premiseKey" text, "readingsHash" text, "completedOn" date,
          "beforeToOutsideCfm25" float8, "afterToOutsideCfm25" float8, "savedElectricityKWh" float8,
          "savedNaturalGasTherms" float8, "rebateUsdCents" int)
        ON CONFLICT ("programId", "organizationId", reference) DO NOTHING RETURNING id::text`;
      const kept = new Set(stored.map(({ id }) => id));
      const ofKept = claims.flatMap((claim, index) =>
        kept.has(rows[index]!.id) ? [{ ...claim, ...rows[index]! }] : [],
      );
      await keepMarks(ofKept);
      await keepRecords(
        ofKept.map(({ id, organizationId, reference, packetHash }) => ({
          id,
          organizationId,
          detail: { reference, packetHash, batchId },
        })),
        "claim.received",
      );
      const missing = claims.flatMap((claim, index) =>
        kept.has(rows[index]!.id) ? [] : [{ claim, row: rows[index]! }],
      );
      const taken = await findTaken(missing.map(({ claim }) => claim));
      const numberTaken = missing
        .filter(({ claim, row }) => taken.get(`${claim.organizationId} ${claim.reference}`) !== row.packetHash)
        .map(({ claim }) => claim);
      const alreadyThereCount = missing.length - numberTaken.length;
      const detail: ChunkLines = {
        ...lines,
        alreadyThereCount,
        refusedCount: lines.refusedCount + numberTaken.length,
        refused: [
          ...lines.refused,
          ...numberTaken.map(({ line, reference }) => ({
            line,
            detail: `The number ${reference} belongs to another claim of this contractor`,
          })),
        ],
      };
      const isOpen = kept.size > 0;
      await sql.batchProgress.create({
        data: {
          organizationId: programOrganizationId,
          batchId,
          chunk,
          state: isOpen ? "waiting" : "finished",
          claimCount: kept.size,
          detail: toJson(detail),
        },
      });
      if (isOpen) await sendChunks(sql, [{ organizationId: programOrganizationId, batchId, chunk }], queue);
      return { storedCount: kept.size, alreadyThereCount, numberTaken };
    },

    /**
     * Lets the server look how many claims there are. Of a table that was small when it last looked it believes that every
     * index finds a row equally fast, and reads more of the wrong one with every chunk.
     */
    async takeStock(): Promise<void> {
      await sql.$queryRaw`SELECT take_stock_of_claims()::text`;
    },

    /** What a chunk that still waits is about; undefined when it was done or canceled. */
    async openWork({ batchId, chunk }: ChunkKey): Promise<ChunkWork | undefined> {
      const row = await sql.batchProgress.findUnique({ where: { batchId_chunk: { batchId, chunk } } });
      if (row?.state !== "waiting") return undefined;
      const { packets, claimIds } = row.detail as unknown as Partial<ChunkWork>;
      if (packets || claimIds) return { packets, claimIds };
      const arrived = await sql.claim.findMany({ where: { batchId, batchChunk: chunk }, select: { id: true } });
      return { claimIds: arrived.map(({ id }) => id) };
    },

    async claims(ids: readonly string[]): Promise<UncheckedClaim[]> {
      return await sql.claim.findMany({
        where: { id: { in: [...ids] } },
        select: { id: true, organizationId: true, programId: true, packet: true, completedOn: true },
        orderBy: { id: "asc" },
      });
    },

    /** For each of these claims the earlier ones that may share something with it, as `claimReview` has them for one. */
    async earlierNeighbors(ids: readonly string[]): Promise<Map<string, NeighborRow[]>> {
      const pairs = await sql.$queryRaw<{ own: string; near: string }[]>`
        WITH own AS MATERIALIZED (
          SELECT id, "programOrganizationId", "premiseKey", "readingsHash", "submittedAt" FROM "Claim"
          WHERE id = ANY(${[...ids]}::uuid[])),
        near AS (
          SELECT own.id AS own, c.id FROM own JOIN "Claim" c
            ON c."programOrganizationId" = own."programOrganizationId" AND c."premiseKey" = own."premiseKey"
          UNION SELECT own.id, c.id FROM own JOIN "Claim" c
            ON c."programOrganizationId" = own."programOrganizationId" AND c."readingsHash" = own."readingsHash"
          UNION SELECT own.id, theirs."claimId" FROM own JOIN "ClaimMark" mine ON mine."claimId" = own.id
            JOIN "ClaimMark" theirs ON theirs."programOrganizationId" = own."programOrganizationId" AND theirs.mark = mine.mark
        ),
        ranked AS (
          SELECT own.id AS own, c.id AS near,
            row_number() OVER (PARTITION BY own.id ORDER BY c."submittedAt" DESC, c.id) AS place
          FROM near JOIN own ON own.id = near.own JOIN "Claim" c ON c.id = near.id
          WHERE c.id <> own.id AND c.state NOT IN ('draft', 'declined', 'withdrawn')
            AND (c."submittedAt", c.id) < (own."submittedAt", own.id))
        SELECT own::text, near::text FROM ranked WHERE place <= ${MOST_NEIGHBORS} ORDER BY own, place`;
      if (pairs.length === 0) return new Map();
      const rows = await sql.claim.findMany({
        where: { id: { in: [...new Set(pairs.map(({ near }) => near))] } },
        select: { id: true, organizationId: true, reference: true, packet: true },
      });
      const byId = new Map(rows.map(({ id, ...row }) => [id, { claimId: id, ...row }]));
      const near = new Map<string, NeighborRow[]>();
      for (const pair of pairs) near.set(pair.own, [...(near.get(pair.own) ?? []), byId.get(pair.near)!]);
      return near;
    },

    /**
     * Keeps what came out for the claims of a chunk, and counts the chunk: all or nothing, and once, whoever comes with it
     * and however often. False when it was counted before, or canceled.
     */
    async saveChecks({ batchId, chunk }: ChunkKey, checks: readonly ClaimCheck[]): Promise<boolean> {
      const of = (outcome: ClaimCheck["outcome"]) => checks.filter((check) => check.outcome === outcome).length;
      const { count } = await sql.batchProgress.updateMany({
        where: { batchId, chunk, state: "waiting" },
        data: { state: "finished", sameCount: of("same"), differsCount: of("differs"), invalidCount: of("invalid") },
      });
      if (count === 0) return false;
      const rows = checks.map(({ flags, ...check }) => ({ ...check, flagCount: flags.length }));
      const sides = await sql.$queryRaw<{ id: string; organizationId: string }[]>`
        UPDATE "Claim" c SET "recomputeOutcome" = r.outcome::"RecomputeOutcome", "recomputedAt" = now(),
          "recomputedEngineVersion" = r."engineVersion", "flagCount" = r."flagCount", "updatedAt" = now()
        FROM json_to_recordset(${JSON.stringify(rows)}::json)
          AS r("claimId" uuid, outcome text, "engineVersion" text, "flagCount" int)
        WHERE c.id = r."claimId" RETURNING c.id::text, c."organizationId"::text`;
      const contractorOf = new Map(sides.map(({ id, organizationId }) => [id, organizationId]));
      await sql.claimFlag.deleteMany({ where: { claimId: { in: [...contractorOf.keys()] } } });
      const flags = checks.flatMap(({ claimId, flags: seen }) =>
        seen.map((flag) => ({ id: randomUUID(), claimId, organizationId: contractorOf.get(claimId)!, ...flag })),
      );
      await sql.$executeRaw`
        INSERT INTO "ClaimFlag" (id, "organizationId", "programOrganizationId", "claimId", code, evidence, "innocentExplanation")
        SELECT id, "organizationId", ${programOrganizationId}::uuid, "claimId", code, evidence, "innocentExplanation"
        FROM json_to_recordset(${JSON.stringify(flags)}::json) AS r(
          id uuid, "organizationId" uuid, "claimId" uuid, code text, evidence jsonb, "innocentExplanation" text)`;
      await keepRecords(
        checks.map(({ claimId, outcome, flags, engineVersion }) => ({
          id: claimId,
          organizationId: contractorOf.get(claimId)!,
          detail: { outcome, flags: flags.map(({ code }) => code), engineVersion, batchId },
        })),
        "claim.checked",
        null,
      );
      return true;
    },
  };
}
