import { readFileSync } from "node:fs";
import { InputProblem } from "#lib/errors/input-problem.ts";

/** The user and group that the database server runs as. */
export interface ServerAccount {
  name: string;
  uid: number;
  gid: number;
}

/** Accounts that exist already and may run the server; none is ever created. */
const CANDIDATES = ["postgres", "nobody"];

/**
 * PostgreSQL refuses to run as root. Root therefore starts it under another account of the machine; everybody else
 * starts it as themselves (undefined).
 */
export function serverAccount(passwdFile = "/etc/passwd"): ServerAccount | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const lines = readFileSync(/* turbopackIgnore: true */ passwdFile, "utf8").split("\n");
  for (const candidate of CANDIDATES) {
    const [name, , uid, gid] = lines.find((line) => line.startsWith(`${candidate}:`))?.split(":") ?? [];
    if (name && Number(uid) > 0) return { name, uid: Number(uid), gid: Number(gid) };
  }
  throw new InputProblem(
    "database-unusable",
    [],
    `PostgreSQL does not run as root, and this machine has no account ${CANDIDATES.join(" or ")} to run it. Start Ductmend as an ordinary user, or set DATABASE_URL.`,
  );
}
