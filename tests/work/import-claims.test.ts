import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { claimBody } from "#lib/claims/create-claim.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { cancelBatch } from "#lib/work/claims/cancel-batch.ts";
import { csvLines, ndjsonLines } from "#lib/work/claims/claim-lines.ts";
import { importClaims } from "#lib/work/claims/import-claims.ts";
import { workOnClaims } from "#lib/work/claims/work-on-claims.ts";
import { claimGenerator, sealed } from "#tests/claims/generated-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const { reviewer, estimator } = DEMO_IDENTITIES;
const contractorId = DEMO_ORGANIZATIONS.contractor.id;
let database: TemporaryDatabase;
let claims: Claim[];

beforeAll(async () => {
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
  const make = await claimGenerator(20);
  claims = Array.from({ length: 260 }, (_, i) => make(i));
});
afterAll(() => database.remove());

/** A text cut anywhere, as a file comes. */
async function* cut(text: string, size = 7001): AsyncGenerator<string> {
  for (let at = 0; at < text.length; at += size) yield text.slice(at, at + size);
}

const asReviewer = <T>(work: Parameters<typeof database.store.withOrganization<T>>[1]) =>
  database.store.withOrganization(reviewer, work);
const find = (id: string) => asReviewer(({ claimBatches }) => claimBatches.find(id));
const importText = (text: string) =>
  importClaims(database.store, reviewer, {
    contractorId,
    sourceName: "test.ndjson",
    lines: ndjsonLines(cut(text)),
    queue: { leaseSeconds: 2 },
  });
const work = (batchId: string) =>
  workOnClaims(database.store, {
    signal: AbortSignal.timeout(60_000),
    goesOn: async () => (await find(batchId)).state === "running",
  });

describe("an import of claims", () => {
  test("accounts for every line, and every claim is checked once", async () => {
    const changed = sealed({ ...claimBody(claims[1]!), numbers: { ...claims[1]!.numbers, "leakage/totalCfm25": [1] } });
    const lines = [
      ...claims.slice(0, 250).map((claim, i) => JSON.stringify(i === 1 ? changed : claim)),
      "",
      JSON.stringify(claims[0]),
      JSON.stringify({ ...claims[250], claimedBy: "Somebody else" }),
      "{ not json",
      JSON.stringify({ claim: claims[251], contractor: reviewer.organizationId }),
      JSON.stringify({ claim: claims[252], reference: "own-number" }),
      JSON.stringify({ claim: claims[253], reference: "own-number" }),
      `"${"x".repeat(300_000)}"`,
      JSON.stringify({ claim: claims[254], nonsense: 1 }),
    ];
    const batchId = await importText(lines.join("\n"));
    const read = await find(batchId);
    expect(read).toMatchObject({ state: "running", totalCount: 258, lineCount: 258, storedCount: 251 });
    expect(read).toMatchObject({ alreadyThereCount: 1, refusedCount: 6, openChunkCount: 2 });
    const refused = await asReviewer(({ claimBatches }) => claimBatches.refusedLines(batchId));
    expect(refused.map(({ line }) => line).sort()).toEqual([253, 254, 255, 257, 258, 259]);
    expect(refused.find(({ line }) => line === 253)?.detail).toContain("#/hash");
    expect(refused.find(({ line }) => line === 257)?.detail).toContain("own-number");

    expect(await work(batchId)).toBe(2);
    const done = await find(batchId);
    expect(done).toMatchObject({
      state: "finished",
      sameCount: 250,
      differsCount: 1,
      invalidCount: 0,
      openChunkCount: 0,
    });
    const { items } = await asReviewer(({ claims: all }) => all.list({ outcome: "differs" }));
    expect(items).toHaveLength(1);
    const log = await asReviewer(({ audit }) => audit.list({ subjectKind: "claim", subjectId: items[0]!.id }));
    expect(log.map(({ action }) => action)).toEqual(["claim.checked", "claim.received"]);
  });

  test("come a second time, adds nothing and checks nothing again", async () => {
    const batchId = await importText(
      claims
        .slice(2, 250)
        .map((claim) => JSON.stringify(claim))
        .join("\r\n"),
    );
    expect(await find(batchId)).toMatchObject({ state: "finished", storedCount: 0, alreadyThereCount: 248 });
  });

  test("reads a table by its columns", async () => {
    const quote = (text: string) => `"${text.replaceAll('"', '""')}"`;
    const table = `No,Firm,Packet\n${claims
      .slice(255, 258)
      .map((claim, i) => `T-${i},${contractorId},${quote(JSON.stringify(claim))}`)
      .join("\n")}\n`;
    const lines = (columns: Parameters<typeof csvLines>[1]) => csvLines(cut(table), columns);
    const request = { sourceName: "table.csv", queue: { leaseSeconds: 2 } };
    const columns = { claim: "Packet", contractor: "Firm", reference: "No" };
    const batchId = await importClaims(database.store, reviewer, { ...request, lines: lines(columns) });
    expect(await find(batchId)).toMatchObject({ storedCount: 3, refusedCount: 0 });
    await work(batchId);
    const { items } = await asReviewer(({ claims: all }) => all.list({ reference: "T-" }));
    expect(items.map(({ reference, recomputeOutcome }) => [reference, recomputeOutcome]).sort()).toEqual(
      ["T-0", "T-1", "T-2"].map((name) => [name, "same"]),
    );
    await expect(
      importClaims(database.store, reviewer, { ...request, lines: lines({ claim: "packet" }) }),
    ).rejects.toMatchObject({ code: "outside-range" });
  });

  test("is for the program alone, and stops when it is canceled", async () => {
    const lines = ndjsonLines(
      cut(
        claims
          .slice(258)
          .map((claim) => JSON.stringify(claim))
          .join("\n"),
      ),
    );
    await expect(
      importClaims(database.store, estimator, { contractorId, sourceName: "x", lines }),
    ).rejects.toMatchObject({ code: "not-allowed" });
    const batchId = await importClaims(database.store, reviewer, { contractorId, sourceName: "x", lines });
    await cancelBatch(database.store, reviewer, batchId);
    await expect(cancelBatch(database.store, reviewer, batchId)).rejects.toMatchObject({ code: "conflict" });
    const stop = new AbortController();
    await workOnClaims(database.store, { signal: stop.signal, goesOn: (open) => open > 0 });
    expect(await find(batchId)).toMatchObject({ state: "canceled", storedCount: 2, sameCount: 0 });
    const other = await database.store.withOrganization(estimator, ({ claimBatches }) => claimBatches.list());
    expect(other).toEqual([]);
  });
});
