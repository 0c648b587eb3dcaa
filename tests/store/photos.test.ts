import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  ALPHA,
  addJob,
  BETA,
  PROGRAM,
  PROGRAM_ID,
  type TemporaryDatabase,
  temporaryDatabase,
} from "./temporary-database.ts";

let database: TemporaryDatabase;
let jobId: string;
beforeAll(async () => {
  database = await temporaryDatabase();
  jobId = await addJob(database.store, ALPHA);
});
afterAll(() => database.remove());

const photo = (byte: number) => ({ jobId, content: Uint8Array.from([0xff, 0xd8, byte]), widthPx: 4, heightPx: 3 });
const add = (byte: number, who: typeof ALPHA = ALPHA) =>
  database.store.withOrganization(who, ({ photos }) => photos.add(photo(byte)));
const find = (sha256: string, who: typeof ALPHA = ALPHA) =>
  database.store.withOrganization(who, ({ photos }) => photos.find(jobId, sha256));

test("a photo is known by the SHA-256 of its bytes, and comes back bit for bit; twice the same is one", async () => {
  const sha256 = await add(1);
  expect(sha256).toBe(createHash("sha256").update(photo(1).content).digest("hex"));
  expect(await add(1)).toBe(sha256);
  expect([...(await find(sha256))]).toEqual([...photo(1).content]);
});

test("another organization neither sees it nor puts one into the job", async () => {
  const sha256 = await add(2);
  await expect(find(sha256, BETA)).rejects.toMatchObject({ code: "not-found" });
  await expect(add(3, BETA)).rejects.toMatchObject({ code: "not-found" });
});

test("one that is too large is refused, by the program and by the table itself", async () => {
  const large = { ...photo(4), content: new Uint8Array(1_500_001) };
  await expect(database.store.withOrganization(ALPHA, ({ photos }) => photos.add(large))).rejects.toMatchObject({
    code: "input-unusable",
  });
  const owner = await database.connectAs("owner");
  const values = [ALPHA.organizationId, jobId, ALPHA.actorId];
  const insert = (content: string, sha256: string) =>
    owner.query(
      `INSERT INTO "Photo" ("organizationId", "jobId", sha256, content, "widthPx", "heightPx", "authorId")
       SELECT $1, $2, ${sha256}, ${content}, 1, 1, $3`,
      values,
    );
  await owner.query("BEGIN");
  await owner.query("SELECT set_config('ductmend.organization_id', $1, true)", [ALPHA.organizationId]);
  await expect(insert("'\\x00'::bytea", "'0'")).rejects.toThrow(/Photo_sha256_is_of_content/);
  await owner.query("ROLLBACK");
  await owner.end();
});

test("nobody changes a photo as the app", async () => {
  await expect(
    database.store.withOrganization(ALPHA, async ({ photos }) => {
      await photos.add(photo(5));
      return 1;
    }),
  ).resolves.toBe(1);
  const app = await database.connectAs("app");
  await expect(app.query(`UPDATE "Photo" SET "widthPx" = 1`)).rejects.toThrow(/permission denied/);
  await app.end();
});

describe("deleting a photo", () => {
  const remove = (sha256: string, who: typeof ALPHA = ALPHA) =>
    database.store.withOrganization(who, ({ photos }) => photos.remove(jobId, sha256));

  test("takes it away for good, and only from the own job", async () => {
    const sha256 = await add(11);
    await expect(remove(sha256, BETA)).rejects.toMatchObject({ code: "not-found" });
    await remove(sha256);
    await expect(find(sha256)).rejects.toMatchObject({ code: "not-found" });
    await expect(remove(sha256)).rejects.toMatchObject({ code: "not-found" });
  });

  test("is refused once a claim that was handed in names it by its hash; another one still goes", async () => {
    const [bound, free] = [await add(12), await add(13)];
    await database.store.withOrganization(ALPHA, ({ claims }) =>
      claims.submit({
        programOrganizationId: PROGRAM.organizationId,
        programId: PROGRAM_ID,
        reference: "claim-with-photo",
        packet: "{}",
        engineVersion: "test",
        premiseKey: "p",
        readingsHash: "r",
        marks: [{ kind: "photo", mark: bound }],
        completedOn: new Date("2026-10-01"),
        beforeToOutsideCfm25: 200,
        afterToOutsideCfm25: 50,
        savedElectricityKWh: 100,
        savedNaturalGasTherms: 50,
        rebateUsdCents: 40_000,
      }),
    );
    await expect(remove(bound)).rejects.toMatchObject({
      code: "held-by-claim",
      message: expect.stringContaining("claim-with-photo"),
    });
    expect([...(await find(bound))]).toEqual([...photo(12).content]);
    await remove(free);
  });
});

test("those of a paper come together; what is not kept is left out", async () => {
  const sha256 = await add(14);
  const found = await database.store.withOrganization(ALPHA, ({ photos }) =>
    photos.findMany(jobId, [sha256, "0".repeat(64)]),
  );
  expect(found.map((each) => each.sha256)).toEqual([sha256]);
});
