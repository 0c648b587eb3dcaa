import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** What a build makes itself; it must not count as a source of the next build. */
const MADE_FOLDERS = new Set(["generated", "node_modules", ".next", ".build", ".ductmend"]);

/**
 * One digest over the names and bytes of files and whole folders. Missing ones count as absent.
 * @param {string} root
 * @param {readonly string[]} paths relative to root
 */
export function fingerprint(root, paths) {
  const digest = createHash("sha256");
  for (const path of paths) addPath(digest, root, path);
  return digest.digest("hex");
}

/**
 * @param {import("node:crypto").Hash} digest
 * @param {string} root
 * @param {string} path
 */
function addPath(digest, root, path) {
  const full = join(root, path);
  if (!existsSync(full)) return;
  if (statSync(full).isDirectory()) {
    const entries = readdirSync(full, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) if (!MADE_FOLDERS.has(entry.name)) addPath(digest, root, `${path}/${entry.name}`);
    return;
  }
  const bytes = readFileSync(full);
  digest.update(`${path}\0${bytes.length}\0`).update(bytes);
}

/**
 * @param {string} file
 * @param {string} value
 */
export function isStamped(file, value) {
  return existsSync(file) && readFileSync(file, "utf8") === value;
}

/**
 * @param {string} file
 * @param {string} value
 */
export function stamp(file, value) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, value);
}
