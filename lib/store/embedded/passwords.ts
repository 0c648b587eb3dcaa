import { randomBytes } from "node:crypto";
import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";

export interface Passwords {
  /** Of the superuser that only sets the server up. */
  admin: string;
  /** Of the role that owns the tables and applies migrations. */
  owner: string;
}

/** The embedded server's passwords, random, in a file that only its owner reads; made at the first start. */
export function readOrMakePasswords(stateFolder: string): Passwords {
  const file = join(/* turbopackIgnore: true */ stateFolder, "passwords.json");
  if (existsSync(file)) return JSON.parse(readFileSync(file, "utf8"));
  const passwords = { admin: randomPassword(), owner: randomPassword() };
  writeFileSync(`${file}.making`, JSON.stringify(passwords), { mode: 0o600 });
  renameSync(`${file}.making`, file);
  return passwords;
}

function randomPassword(): string {
  return randomBytes(24).toString("base64url");
}
