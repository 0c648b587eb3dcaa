import {
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";
import { dirname } from "node:path";
import { setTimeout as wait } from "node:timers/promises";

/** A holder that shows no sign of life for this long has lost the lock, even if its process id is in use again. */
const SILENT_HOLDER_MS = 120_000;
const HEARTBEAT_MS = 5_000;
const POLL_MS = 100;

/**
 * Runs one piece of work while no other process on this machine does: a file made with O_EXCL that names its holder.
 * A lock left behind by a dead process is taken over; a live one is waited for.
 *
 * Plain JavaScript, because the launcher uses it before anything is installed or compiled.
 *
 * @template T
 * @param {{ file: string, timeoutMs: number, onWait?: (holder: number) => void }} options
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function withProcessLock({ file, timeoutMs, onWait }, work) {
  mkdirSync(dirname(file), { recursive: true });
  const deadline = Date.now() + timeoutMs;
  let hasToldWaiting = false;
  while (!tryToHold(file)) {
    const holder = readHolder(file);
    if (holder && isStale(holder)) {
      takeAway(file, holder.text);
      continue;
    }
    if (Date.now() > deadline) {
      throw new Error(
        `Another process${holder ? ` (${holder.pid})` : ""} has held ${file} for too long. If no Ductmend is running, remove that file.`,
      );
    }
    if (holder && !hasToldWaiting) {
      hasToldWaiting = true;
      onWait?.(holder.pid);
    }
    await wait(POLL_MS);
  }
  const heartbeat = setInterval(() => utimesSync(file, new Date(), new Date()), HEARTBEAT_MS);
  heartbeat.unref();
  try {
    return await work();
  } finally {
    clearInterval(heartbeat);
    unlinkSync(file);
  }
}

/** @param {string} file */
function tryToHold(file) {
  try {
    writeFileSync(file, JSON.stringify({ pid: process.pid, host: hostname(), nonce: Math.random() }), { flag: "wx" });
    return true;
  } catch (error) {
    if (isCode(error, "EEXIST")) return false;
    throw error;
  }
}

/** @param {string} file */
function readHolder(file) {
  try {
    const text = readFileSync(file, "utf8");
    const silentMs = Date.now() - statSync(file).mtimeMs;
    // The holder creates the file and writes its name in two steps; in between it is empty.
    if (text === "") return { text, pid: 0, host: "", silentMs };
    const { pid, host } = JSON.parse(text);
    return { text, pid: Number(pid), host: String(host), silentMs };
  } catch (error) {
    if (isCode(error, "ENOENT")) return undefined;
    if (error instanceof SyntaxError) return { text: readFileSync(file, "utf8"), pid: 0, host: "", silentMs: 0 };
    throw error;
  }
}

/** @param {{ pid: number, host: string, silentMs: number }} holder */
function isStale({ pid, host, silentMs }) {
  if (silentMs > SILENT_HOLDER_MS) return true;
  return pid > 0 && host === hostname() && !isAlive(pid);
}

/** @param {number} pid */
export function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return isCode(error, "EPERM");
  }
}

/**
 * Removes the stale lock we looked at and no other: if a third process replaced it meanwhile, its lock is put back.
 * @param {string} file
 * @param {string} staleText
 */
function takeAway(file, staleText) {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
    if (readFileSync(/* turbopackIgnore: true */ aside, "utf8") !== staleText) linkSync(aside, file);
    unlinkSync(aside);
  } catch (error) {
    if (!isCode(error, "ENOENT") && !isCode(error, "EEXIST")) throw error;
  }
}

/**
 * @param {unknown} error
 * @param {string} code
 */
function isCode(error, code) {
  return error instanceof Error && "code" in error && error.code === code;
}
