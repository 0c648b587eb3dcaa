import { createHash, randomUUID } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type pg from "pg";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { ensureAppRole } from "./app-role.ts";

/** Any number that no other program uses on this database: who migrates holds it. */
const MIGRATION_LOCK = 4_720_114;

/** Prisma's own table, so that `prisma migrate deploy` and this runner agree on what is done. */
const HISTORY_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  id VARCHAR(36) PRIMARY KEY NOT NULL, checksum VARCHAR(64) NOT NULL, finished_at TIMESTAMPTZ,
  migration_name VARCHAR(255) NOT NULL, logs TEXT, rolled_back_at TIMESTAMPTZ,
  started_at TIMESTAMPTZ NOT NULL DEFAULT now(), applied_steps_count INTEGER NOT NULL DEFAULT 0)`;

interface Migration {
  name: string;
  sql: string;
  checksum: string;
}

/**
 * Brings the database up to the newest migration, all in one transaction: it is applied whole or not at all. Two starts
 * at once wait for each other.
 */
export async function migrate({
  owner,
  appUrl,
  folder,
}: {
  owner: pg.Client;
  appUrl: string;
  folder: string;
}): Promise<void> {
  const migrations = readMigrations(folder);
  await owner.query("BEGIN");
  try {
    await owner.query("SELECT pg_advisory_xact_lock($1)", [MIGRATION_LOCK]);
    await ensureAppRole(owner, appUrl);
    // Asked first, because IF NOT EXISTS speaks up where the table is there.
    const history = await owner.query(`SELECT to_regclass('"_prisma_migrations"') IS NOT NULL AS exists`);
    if (!history.rows[0].exists) await owner.query(HISTORY_TABLE);
    const applied = await owner.query<{ migration_name: string; checksum: string }>(
      `SELECT migration_name, checksum FROM "_prisma_migrations" WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`,
    );
    const checksums = new Map(applied.rows.map((row) => [row.migration_name, row.checksum]));
    refuseNewerDatabase(migrations, checksums);
    for (const migration of migrations) {
      const checksum = checksums.get(migration.name);
      if (checksum === undefined) await apply(owner, migration);
      else if (checksum !== migration.checksum) refuseEdited(migration.name);
    }
    await owner.query("COMMIT");
  } catch (error) {
    await owner.query("ROLLBACK").catch(() => undefined);
    throw error;
  }
}

export function readMigrations(folder: string): Migration[] {
  return readdirSync(/* turbopackIgnore: true */ folder)
    .sort()
    .filter((name) => existsSync(join(/* turbopackIgnore: true */ folder, name, "migration.sql")))
    .map((name) => {
      const sql = readFileSync(join(/* turbopackIgnore: true */ folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}

async function apply(owner: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await owner.query(sql);
  await owner.query(
    `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, finished_at, applied_steps_count) VALUES ($1, $2, $3, now(), 1)`,
    [randomUUID(), checksum, name],
  );
}

function refuseEdited(name: string): never {
  throw new InputProblem(
    "database-unusable",
    [],
    `The migration ${name} was changed after this database had it applied. Restore the file; changes go into a new migration.`,
  );
}

function refuseNewerDatabase(migrations: readonly Migration[], applied: ReadonlyMap<string, string>): void {
  const known = new Set(migrations.map((migration) => migration.name));
  const unknown = [...applied.keys()].filter((name) => !known.has(name));
  if (unknown.length > 0) {
    throw new InputProblem(
      "database-unusable",
      [],
      `This database was last used by a newer Ductmend (it knows ${unknown.join(", ")}). Update this one; nothing was changed.`,
    );
  }
}
