import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { claimBody } from "#lib/claims/create-claim.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import type { SentPacket } from "#lib/store/repositories/recompute-chunks.ts";
import { cancelBatch } from "#lib/work/claims/cancel-batch.ts";
import { checkChunk } from "#lib/work/claims/check-chunk.ts";
import { ndjsonLines } from "#lib/work/claims/claim-lines.ts";
import { importClaims } from "#lib/work/claims/import-claims.ts";
import { recomputeSent, recomputeStored } from "#lib/work/claims/recompute-batch.ts";
import { workOnClaims } from "#lib/work/claims/work-on-claims.ts";
import { claimGenerator, sealed } from "#tests/claims/generated-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const { reviewer, estimator } = DEMO_IDENTITIES;
const STORED = 210;
let database: TemporaryDatabase;
let claims: Claim[];

async function* texts(lines: readonly string[]) {
  for (const line of lines) yield `${line}\n`;
}
async function* numbered(lines: readonly string[]): AsyncGenerator<SentPacket> {
  for (const [index, text] of lines.entries()) yield { line: index + 1, text };
}
const asReviewer = <T>(work: Parameters<typeof database.store.withOrganization<T>>[1]) =>
  database.store.withOrganization(reviewer, work);
const find = (id: string) => asReviewer(({ claimBatches }) => claimBatches.find(id));
const work = (batchId: string) =>
  workOnClaims(database.store, {
    signal: AbortSignal.timeout(60_000),
    goesOn: async () => (await find(batchId)).state === "running",
  });
const detailsOf = async (batchId: string) => {
  const owner = await database.connectAs("owner");
  await owner.query(`SELECT set_config('ductmend.organization_id', $1, false)`, [reviewer.organizationId]);
  const { rows } = await owner.query(`SELECT detail::text FROM "BatchProgress" WHERE "batchId" = $1`, [batchId]);
  await owner.end();
  return rows.map(({ detail }: { detail: string }) => detail).join();
};

beforeAll(async () => {
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
  const make = await claimGenerator();
  claims = Array.from({ length: STORED }, (_, i) => make(i));
  const batchId = await importClaims(database.store, reviewer, {
    contractorId: DEMO_ORGANIZATIONS.contractor.id,
    sourceName: "stored",
    lines: ndjsonLines(texts(claims.map((claim) => JSON.stringify(claim)))),
  });
  await work(batchId);
});
afterAll(() => database.remove());

describe("all claims again", () => {
  test("come in chunks, each claim once, and say what came out", async () => {
    const owner = await database.connectAs("owner");
    await owner.query(`SELECT set_config('ductmend.organization_id', $1, false)`, [reviewer.organizationId]);
    const checks = async () =>
      Number((await owner.query(`SELECT count(*) FROM "AuditLog" WHERE action = 'claim.checked'`)).rows[0].count);
    const before = await checks();
    const batchId = await recomputeStored(database.store, reviewer);
    expect(await find(batchId)).toMatchObject({
      kind: "recompute",
      state: "running",
      totalCount: STORED,
      chunkCount: 2,
    });
    await work(batchId);
    expect(await find(batchId)).toMatchObject({ state: "finished", sameCount: STORED, openChunkCount: 0 });
    // A chunk done a second time is not counted a second time.
    expect(await checkChunk(database.store, { organizationId: reviewer.organizationId, batchId, chunk: 0 })).toBe(
      false,
    );
    expect(await checks()).toBe(before + STORED);
    await owner.end();
  });

  test("can be stopped, and are the program's to ask for", async () => {
    const batchId = await recomputeStored(database.store, reviewer);
    await cancelBatch(database.store, reviewer, batchId);
    expect(await checkChunk(database.store, { organizationId: reviewer.organizationId, batchId, chunk: 0 })).toBe(
      false,
    );
    expect(await find(batchId)).toMatchObject({ state: "canceled", sameCount: 0, openChunkCount: 0 });
    await expect(recomputeStored(database.store, estimator)).rejects.toThrow("may not");
  });
});

describe("packets of a file that are nobody's", () => {
  test("are recomputed, told apart by line, and not kept", async () => {
    const changed = sealed({ ...claimBody(claims[1]!), numbers: { ...claims[1]!.numbers, "leakage/totalCfm25": [1] } });
    const lines = [
      ...claims.slice(0, 205).map((claim, i) => JSON.stringify(i === 1 ? changed : claim)),
      "{ not json \u0000",
      JSON.stringify({ ...claims[206], claimedBy: "Somebody else" }),
    ];
    const batchId = await recomputeSent(database.store, reviewer, {
      lines: numbered(lines),
      sourceName: "sent.ndjson",
    });
    expect(await detailsOf(batchId)).toContain("generated-1");
    await work(batchId);
    expect(await find(batchId)).toMatchObject({ state: "finished", sameCount: 204, differsCount: 1, invalidCount: 2 });
    expect(await detailsOf(batchId)).not.toContain("Generated Street");
    const outcomes = await asReviewer(async ({ recomputeChunks }) => {
      const all = [];
      for await (const outcome of recomputeChunks.outcomes(batchId)) all.push(outcome);
      return all;
    });
    expect(outcomes).toMatchObject([
      { line: 2, outcome: "differs", differences: [{ path: "leakage/totalCfm25", claimed: 1 }] },
      { line: 206, outcome: "invalid" },
      { line: 207, outcome: "invalid", errors: [{ pointer: "#/hash" }] },
    ]);
    expect(await asReviewer(({ claims: stored }) => stored.list({ limit: 1 }))).toMatchObject({ items: [{}] });
  });

  test("are forgotten when the batch is stopped", async () => {
    const lines = numbered([JSON.stringify(claims[0])]);
    const batchId = await recomputeSent(database.store, reviewer, { lines, sourceName: "sent.ndjson" });
    await cancelBatch(database.store, reviewer, batchId);
    expect(await detailsOf(batchId)).not.toContain("Generated Street");
  });
});
