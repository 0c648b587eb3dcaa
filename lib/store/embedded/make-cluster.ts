import { execFile } from "node:child_process";
import { chownSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ServerAccount } from "./server-account.ts";
import { serverEnvironment } from "./server-environment.ts";

export const ADMIN_ROLE = "ductmend_admin";

/**
 * Makes an empty database cluster, unless there is one. It is made under another name first, so that a start cut short
 * leaves nothing that looks like a cluster.
 */
export async function makeCluster({
  initdb,
  dataFolder,
  adminPassword,
  account,
}: {
  initdb: string;
  dataFolder: string;
  adminPassword: string;
  account: ServerAccount | undefined;
}): Promise<void> {
  if (existsSync(join(dataFolder, "PG_VERSION"))) return;
  const making = `${dataFolder}.making`;
  const passwordFile = `${dataFolder}.password`;
  rmSync(making, { recursive: true, force: true });
  mkdirSync(making, { mode: 0o700 });
  writeFileSync(passwordFile, adminPassword, { mode: 0o600 });
  if (account) for (const path of [making, passwordFile]) chownSync(path, account.uid, account.gid);
  try {
    await promisify(execFile)(
      initdb,
      [
        `--pgdata=${making}`,
        `--username=${ADMIN_ROLE}`,
        `--pwfile=${passwordFile}`,
        "--auth=scram-sha-256",
        "--encoding=UTF8",
        "--locale-provider=builtin",
        "--builtin-locale=C.UTF-8",
        "--locale=C",
        "--no-instructions",
      ],
      {
        cwd: making,
        env: serverEnvironment(),
        ...(account && { uid: account.uid, gid: account.gid }),
      },
    );
    renameSync(making, dataFolder);
  } catch (error) {
    const stderr = error instanceof Error && "stderr" in error ? String(error.stderr).trim() : "";
    const isClosed = account && /EACCES|Permission denied/.test(`${error} ${stderr}`);
    const detail = isClosed
      ? `the account ${account.name}, as which the server runs, may not enter that folder. Name one that it may with DUCTMEND_STATE_FOLDER.`
      : stderr || String(error);
    throw new InputProblem(
      "database-unusable",
      [],
      `The embedded database could not be set up in ${dataFolder}: ${detail}`,
    );
  } finally {
    rmSync(passwordFile, { force: true });
  }
}
