import { accessSync, chmodSync, constants, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { databaseUrl } from "../database-url.ts";
import { makeCluster } from "./make-cluster.ts";
import { DATABASE_NAME, makeOwnerAndDatabase, OWNER_ROLE } from "./owner-and-database.ts";
import { readOrMakePasswords } from "./passwords.ts";
import { clearDeadServer, type RunningServer, readRunningServer, readServerPid } from "./postmaster-file.ts";
import { withProcessLock } from "./process-lock.mjs";
import { serverAccount } from "./server-account.ts";
import { serverPrograms } from "./server-programs.ts";
import { startServer } from "./start-server.ts";

const LONGEST_WAIT_MS = 180_000;
const LONGEST_STOP_MS = 30_000;
const POLL_MS = 20;
/** Its presence says that roles and database are made, so that a running server can be joined at once. */
const READY_MARK = "ready";

export interface EmbeddedPlace {
  checkout: string;
  stateFolder: string;
}

/**
 * Joins the embedded server of this checkout, or starts it; gives the owner's connection string. Safe for any number of
 * processes at once.
 */
export async function joinOrStart({ checkout, stateFolder }: EmbeddedPlace): Promise<string> {
  const dataFolder = join(/* turbopackIgnore: true */ stateFolder, "data");
  const running = readRunningServer(dataFolder);
  if (running && existsSync(join(stateFolder, READY_MARK))) return ownerUrl(running, stateFolder);
  makeWritable(stateFolder);
  return await withProcessLock(startLock(stateFolder), async () => {
    const started = readRunningServer(dataFolder) ?? (await start({ checkout, stateFolder, dataFolder }));
    if (!existsSync(join(stateFolder, READY_MARK))) {
      await makeOwnerAndDatabase(started, readOrMakePasswords(stateFolder));
      writeFileSync(join(stateFolder, READY_MARK), "");
    }
    return ownerUrl(started, stateFolder);
  });
}

async function start({ checkout, stateFolder, dataFolder }: EmbeddedPlace & { dataFolder: string }) {
  await waitForOldServer(dataFolder);
  await clearDeadServer(dataFolder);
  const account = serverAccount();
  const programs = serverPrograms({ checkout, stateFolder, isOtherAccount: account !== undefined });
  const passwords = readOrMakePasswords(stateFolder);
  await makeCluster({ initdb: programs.initdb, dataFolder, adminPassword: passwords.admin, account });
  return await startServer({ postgres: programs.postgres, stateFolder, dataFolder, account });
}

/** Another process may have told the server to stop a moment ago. */
async function waitForOldServer(dataFolder: string): Promise<void> {
  for (let waitedMs = 0; waitedMs < LONGEST_STOP_MS && readServerPid(dataFolder); waitedMs += POLL_MS) {
    if (readRunningServer(dataFolder)) return;
    await wait(POLL_MS);
  }
}

/** Stops the server in order: open transactions are rolled back, what was committed is kept. */
export async function stopServer({ stateFolder }: EmbeddedPlace, isUnused: () => Promise<boolean>): Promise<void> {
  const dataFolder = join(/* turbopackIgnore: true */ stateFolder, "data");
  await withProcessLock(startLock(stateFolder), async () => {
    const pid = readServerPid(dataFolder);
    if (!pid || !(await isUnused())) return;
    process.kill(pid, "SIGINT");
    for (let waitedMs = 0; waitedMs < LONGEST_STOP_MS && readServerPid(dataFolder) === pid; waitedMs += POLL_MS) {
      await wait(POLL_MS);
    }
  });
}

function startLock(stateFolder: string) {
  return { file: join(stateFolder, "start.lock"), timeoutMs: LONGEST_WAIT_MS };
}

function ownerUrl(server: RunningServer, stateFolder: string): string {
  const { owner } = readOrMakePasswords(stateFolder);
  return databaseUrl({ ...server, database: DATABASE_NAME, user: OWNER_ROLE, password: owner });
}

function makeWritable(stateFolder: string): void {
  try {
    mkdirSync(stateFolder, { recursive: true });
    accessSync(stateFolder, constants.W_OK | constants.X_OK);
    // The server's own account must be able to walk through to its data, which itself stays closed to others.
    if (process.getuid?.() === 0) chmodSync(stateFolder, 0o755);
  } catch (error) {
    throw new InputProblem(
      "file-unwritable",
      [],
      `The database keeps its files in ${stateFolder}, and that folder cannot be written (${error instanceof Error && "code" in error ? error.code : error}). Make it writable, set DUCTMEND_STATE_FOLDER to another folder, or set DATABASE_URL.`,
    );
  }
}
