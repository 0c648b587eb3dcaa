import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { isAlive } from "../../store/embedded/process-lock.mjs";

const FOLDER = ".build/running";

/**
 * Web servers that run from this checkout, other than this process. Notes of dead ones are removed.
 * @param {string} root
 * @returns {{ pid: number, url: string }[]}
 */
export function otherServers(root) {
  const folder = join(root, FOLDER);
  mkdirSync(folder, { recursive: true });
  return readdirSync(folder).flatMap((name) => {
    const pid = Number(name);
    if (pid === process.pid) return [];
    if (!isAlive(pid)) {
      rmSync(join(folder, name), { force: true });
      return [];
    }
    return [{ pid, url: readFileSync(join(folder, name), "utf8") }];
  });
}

/**
 * Notes that this process serves, until it ends.
 * @param {string} root
 * @param {string} url
 */
export function noteServer(root, url) {
  mkdirSync(join(root, FOLDER), { recursive: true });
  const file = join(root, FOLDER, String(process.pid));
  writeFileSync(file, url);
  process.once("exit", () => rmSync(file, { force: true }));
}
