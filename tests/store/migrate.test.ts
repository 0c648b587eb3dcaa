import { createHash } from "node:crypto";
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { migrate, readMigrations } from "#lib/store/migrate.ts";
import { type TemporaryDatabase, temporaryDatabase, temporaryFolder } from "./temporary-database.ts";

let database: TemporaryDatabase;
let owner: pg.Client;
let folder: string;

beforeAll(async () => {
  database = await temporaryDatabase();
  owner = await database.connectAs("owner");
});
afterAll(async () => {
  await owner.end();
  await database.remove();
});

async function withMigrations(change: (folder: string) => void, work: () => Promise<void>): Promise<void> {
  folder = temporaryFolder();
  cpSync("prisma/migrations", folder, { recursive: true });
  change(folder);
  await work();
  rmSync(folder, { recursive: true, force: true });
}

const run = (client = owner) => migrate({ owner: client, appUrl: database.appUrl, folder });
const history = async () =>
  (
    await owner.query(
      `SELECT migration_name, checksum, applied_steps_count FROM "_prisma_migrations" ORDER BY started_at`,
    )
  ).rows;

function add(name: string, sql: string): (folder: string) => void {
  return (target) => {
    mkdirSync(join(target, name));
    writeFileSync(join(target, name, "migration.sql"), sql);
  };
}

describe("migrations", () => {
  test("are recorded as Prisma does it: the SHA-256 of the file, finished", async () => {
    const names = readdirSync("prisma/migrations").filter((name) => /^\d{14}_\w+$/.test(name));
    expect(names.length).toBeGreaterThan(0);
    const expected = names.sort().map((migration_name) => {
      const bytes = readFileSync(join("prisma/migrations", migration_name, "migration.sql"));
      return { migration_name, checksum: createHash("sha256").update(bytes).digest("hex"), applied_steps_count: 1 };
    });
    expect(await history()).toEqual(expected);
  });

  test("applied again change nothing", async () => {
    await withMigrations(
      () => undefined,
      async () => {
        const before = await history();
        await run();
        expect(await history()).toEqual(before);
      },
    );
  });

  test("that fail leave nothing of theirs behind", async () => {
    await withMigrations(add("20990101000000_planted", "CREATE TABLE planted (id int); SELECT 1/0;"), async () => {
      const before = await history();
      await expect(run()).rejects.toThrow(/division by zero/);
      expect(await history()).toEqual(before);
      const { rows } = await owner.query("SELECT to_regclass('planted') AS found");
      expect(rows[0].found).toBeNull();
    });
  });

  test("edited after they were applied are refused by name", async () => {
    const name = readMigrations("prisma/migrations")[0]!.name;
    await withMigrations(
      (target) => writeFileSync(join(target, name, "migration.sql"), "-- planted"),
      async () => {
        await expect(run()).rejects.toMatchObject({
          code: "database-unusable",
          message: expect.stringContaining(name),
        });
      },
    );
  });

  test("of two starts at once are applied once", async () => {
    await withMigrations(add("20990101000001_once", "CREATE TABLE once (id int); SELECT pg_sleep(0.2);"), async () => {
      const second = await database.connectAs("owner");
      await Promise.all([run(), run(second)]);
      await second.end();
      expect((await history()).filter((row) => row.migration_name === "20990101000001_once")).toHaveLength(1);
    });
  });

  test("of a newer version are refused, and the database is left as it is", async () => {
    // The test above left one behind that this version does not know.
    await withMigrations(
      () => undefined,
      async () => {
        const before = await history();
        await expect(run()).rejects.toMatchObject({
          code: "database-unusable",
          message: expect.stringContaining("newer"),
        });
        expect(await history()).toEqual(before);
      },
    );
  });
});
