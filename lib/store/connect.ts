import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import pg from "pg";
import { connectionProblem, isServerAway } from "./connection-problem.ts";
import { appDatabaseUrl, parseDatabaseUrl } from "./database-url.ts";
import { type EmbeddedPlace, joinOrStart, stopServer } from "./embedded/embedded-database.ts";
import { stateFolder } from "./embedded/state-folder.ts";
import { migrate } from "./migrate.ts";

export interface StoreOptions {
  /** The folder that holds package.json; programs of this project stand in it. */
  checkout?: string;
  env?: Readonly<Record<string, string | undefined>>;
}

/** A migrated database that this process has announced itself to. */
export interface Connection {
  appUrl: string;
  /** Leaves; the last one out stops the embedded server. */
  leave(): Promise<void>;
  /** Forgets a server that is gone. */
  abandon(): Promise<void>;
}

/** Every process that uses the embedded server holds this advisory lock, shared; who can have it alone is the last one. */
const PRESENCE_LOCK = 4_720_115;
const TRIES = 20;
const PAUSE_MS = 150;
const CONNECT_TIMEOUT_MS = 10_000;

/** Finds the database: the server of DATABASE_URL, else the embedded one, joined or started. Applies migrations. */
export async function connect({ checkout = process.cwd(), env = process.env }: StoreOptions = {}): Promise<Connection> {
  const migrations = join(/* turbopackIgnore: true */ checkout, "prisma/migrations");
  if (env.DATABASE_URL) {
    const where = `DATABASE_URL (${parseDatabaseUrl(env.DATABASE_URL).host || "this machine"})`;
    const appUrl = appDatabaseUrl(env.DATABASE_URL, env.DATABASE_APP_URL);
    await migrateAt(env.DATABASE_URL, appUrl, migrations).catch((error: unknown) => {
      throw isFromPostgres(error) || isServerAway(error) ? connectionProblem(error, where) : error;
    });
    return { appUrl, leave: async () => undefined, abandon: async () => undefined };
  }
  const isRoot = process.getuid?.() === 0;
  const place = { checkout, stateFolder: stateFolder({ checkout, isRoot, env }) };
  return await connectEmbedded(place, migrations);
}

/** A server that is being stopped while we join is waited for, then started again. */
async function connectEmbedded(place: EmbeddedPlace, migrations: string): Promise<Connection> {
  for (let tries = 1; ; tries++) {
    const ownerUrl = await joinOrStart(place);
    const appUrl = appDatabaseUrl(ownerUrl);
    try {
      await migrateAt(ownerUrl, appUrl, migrations);
      const presence = await announce(appUrl);
      return {
        appUrl,
        leave: () => leave(place, appUrl, presence),
        abandon: () => presence.end().catch(() => undefined),
      };
    } catch (error) {
      if (!isServerAway(error)) throw error;
      if (tries >= TRIES) throw connectionProblem(error, place.stateFolder);
      await wait(PAUSE_MS);
    }
  }
}

async function migrateAt(ownerUrl: string, appUrl: string, folder: string): Promise<void> {
  const owner = await openClient(ownerUrl);
  try {
    await migrate({ owner, appUrl, folder });
  } finally {
    await owner.end().catch(() => undefined);
  }
}

async function announce(appUrl: string): Promise<pg.Client> {
  const presence = await openClient(appUrl);
  await presence.query("SELECT pg_advisory_lock_shared($1)", [PRESENCE_LOCK]);
  return presence;
}

async function leave(place: EmbeddedPlace, appUrl: string, presence: pg.Client): Promise<void> {
  await presence.end().catch(() => undefined);
  await stopServer(place, async () => {
    try {
      const client = await openClient(appUrl);
      // Held until the server stops: who joins meanwhile waits for it, sees the server go, and starts a new one.
      const { rows } = await client.query<{ isAlone: boolean }>(`SELECT pg_try_advisory_lock($1) AS "isAlone"`, [
        PRESENCE_LOCK,
      ]);
      if (!rows[0]?.isAlone) await client.end();
      return rows[0]?.isAlone === true;
    } catch {
      return false;
    }
  });
}

async function openClient(connectionString: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString, connectionTimeoutMillis: CONNECT_TIMEOUT_MS });
  // Without a listener a server that goes away would end this process; the next query reports it instead.
  client.on("error", () => undefined);
  await client.connect();
  return client;
}

function isFromPostgres(error: unknown): boolean {
  return error instanceof pg.DatabaseError && /^(28|3D|53|57)/.test(error.code ?? "");
}
