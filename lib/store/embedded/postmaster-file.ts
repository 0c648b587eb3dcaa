import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { isAlive } from "./process-lock.mjs";

/** Long enough for a parent to collect its dead child, and for the dead server's own children to be gone. */
const COLLECTED_AFTER_MS = 2_000;
const POLL_MS = 20;

/** What a running PostgreSQL server writes about itself into its data folder. */
export interface RunningServer {
  pid: number;
  port: number;
  /** The folder of its Unix socket, or the loopback address where there are no sockets. */
  host: string;
}

/**
 * Reads postmaster.pid: line 1 process, 4 port, 5 socket folder, 6 listen address, 8 status. A server that is dead, or
 * whose process id now belongs to another program, or that is not ready, gives undefined.
 */
export function readRunningServer(dataFolder: string): RunningServer | undefined {
  const lines = readLines(dataFolder);
  const pid = Number(lines[0]);
  if (!(pid > 0) || !isPostgres(pid) || lines[7]?.trim() !== "ready") return undefined;
  return { pid, port: Number(lines[3]), host: lines[4]?.trim() || lines[5]?.trim() || "127.0.0.1" };
}

/** The process that holds the data folder, ready or not. */
export function readServerPid(dataFolder: string): number | undefined {
  const pid = Number(readLines(dataFolder)[0]);
  return pid > 0 && isPostgres(pid) ? pid : undefined;
}

/**
 * Takes away the note of a server that is dead, where its number still stands in the process table: a dead child that
 * nobody has collected, or another program by now. PostgreSQL would take that for a running server. A note whose number
 * is free is left to PostgreSQL, which also looks for what the dead server may have left in memory.
 */
export async function clearDeadServer(dataFolder: string): Promise<void> {
  for (let waitedMs = 0; waitedMs < COLLECTED_AFTER_MS; waitedMs += POLL_MS) {
    const pid = Number(readLines(dataFolder)[0]);
    if (!(pid > 0) || !isAlive(pid) || isPostgres(pid)) return;
    await wait(POLL_MS);
  }
  rmSync(join(/* turbopackIgnore: true */ dataFolder, "postmaster.pid"), { force: true });
}

function readLines(dataFolder: string): string[] {
  const file = join(/* turbopackIgnore: true */ dataFolder, "postmaster.pid");
  try {
    return existsSync(file) ? readFileSync(file, "utf8").split("\n") : [];
  } catch {
    return [];
  }
}

/**
 * After a restart of the machine the number may belong to any program, and a dead server may still stand in the process
 * table; Linux tells both: "pid (postgres) S …", where Z is dead.
 */
function isPostgres(pid: number): boolean {
  if (!isAlive(pid)) return false;
  if (!existsSync("/proc/self/stat")) return true;
  try {
    return /\(postgres\) [^ZX]/.test(readFileSync(`/proc/${pid}/stat`, "utf8"));
  } catch {
    return false;
  }
}
