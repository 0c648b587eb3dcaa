import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contentHash } from "#lib/hash/content-hash.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { ALPHA, BETA, type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
});
afterAll(() => database.remove());

const day = (text: string) => new Date(`${text}T00:00:00Z`);
const add = (onVersion: number, effectiveOn: string, rateUsdCentsPerHour: number, identity = ALPHA) =>
  database.store.withOrganization(identity, ({ priceBooks }) =>
    priceBooks.add({
      onVersion,
      effectiveOn: day(effectiveOn),
      book: { ...DEMO_PRICE_BOOK, labour: { ...DEMO_PRICE_BOOK.labour, rateUsdCentsPerHour } },
    }),
  );
const inForceOn = (date: string) =>
  database.store.withOrganization(ALPHA, ({ priceBooks }) => priceBooks.inForceOn(day(date)));

describe("prices of an organization", () => {
  test("each version keeps what it said; the newest whose day has come is in force", async () => {
    expect(await inForceOn("2026-11-25")).toBeUndefined();
    const first = await add(0, "2026-01-01", 3800);
    await add(1, "2026-12-01", 4100);
    expect(first.book).toMatchObject({ versionId: "1", issuedOn: "2026-01-01" });
    expect(first.contentHash).toBe(contentHash(first.book));
    expect((await inForceOn("2025-12-31"))?.version).toBeUndefined();
    expect((await inForceOn("2026-11-25"))?.book.labour.rateUsdCentsPerHour).toBe(3800);
    expect((await inForceOn("2026-12-01"))?.book.labour.rateUsdCentsPerHour).toBe(4100);
    const versions = await database.store.withOrganization(ALPHA, ({ priceBooks }) => priceBooks.list());
    expect(versions.map(({ version }) => version)).toEqual([2, 1]);
  });

  test("a change made on an older version is a conflict, and of two at once one is", async () => {
    await expect(add(1, "2026-12-02", 4200)).rejects.toMatchObject({ code: "conflict" });
    const both = await Promise.allSettled([add(2, "2026-12-03", 4300), add(2, "2026-12-03", 4400)]);
    expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  });

  test("nobody changes a version, not even as the owner of the tables", async () => {
    const owner = await database.connectAs("owner");
    await expect(owner.query(`UPDATE "PriceBookVersion" SET version = 9`)).rejects.toThrow(/append-only/);
    await owner.end();
  });

  test("another organization has prices of its own", async () => {
    const list = await database.store.withOrganization(BETA, ({ priceBooks }) => priceBooks.list());
    expect(list).toEqual([]);
    expect((await add(0, "2026-01-01", 9900, BETA)).version).toBe(1);
    expect((await inForceOn("2026-11-25"))?.book.labour.rateUsdCentsPerHour).toBe(3800);
  });
});
