import pg from "pg";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { APP_ROLE, parseDatabaseUrl } from "./database-url.ts";

const INSUFFICIENT_PRIVILEGE = "42501";

/** Makes the role that the app works as, or gives it the password expected, and refuses one that could do too much. */
export async function ensureAppRole(owner: pg.Client, appUrl: string): Promise<void> {
  const { username, password } = parseDatabaseUrl(appUrl);
  if (username !== APP_ROLE) throw unusable(`DATABASE_APP_URL must connect as ${APP_ROLE}, not as another role.`);
  const { rows } = await owner.query<{ isTooStrong: boolean }>(
    `SELECT rolsuper OR rolbypassrls OR pg_has_role(rolname, current_user, 'MEMBER') AS "isTooStrong"
     FROM pg_roles WHERE rolname = $1`,
    [APP_ROLE],
  );
  if (rows[0]?.isTooStrong) {
    throw unusable(
      `The role ${APP_ROLE} could pass by row-level security: it is superuser, may bypass it, or belongs to the owner of the tables. Take that from it, then start again.`,
    );
  }
  if (rows[0] && (await canConnect(appUrl))) return;
  const secret = owner.escapeLiteral(decodeURIComponent(password));
  try {
    await owner.query(
      rows[0]
        ? `ALTER ROLE ${APP_ROLE} LOGIN PASSWORD ${secret}`
        : `CREATE ROLE ${APP_ROLE} LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS PASSWORD ${secret}`,
    );
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === INSUFFICIENT_PRIVILEGE)) throw error;
    throw unusable(
      `The user of DATABASE_URL may not ${rows[0] ? "set the password of" : "make"} the role ${APP_ROLE}, as which the app works. Let an administrator give that user CREATEROLE, or run: CREATE ROLE ${APP_ROLE} LOGIN NOSUPERUSER NOBYPASSRLS PASSWORD '…' and set DATABASE_APP_URL to a connection string with that role.`,
    );
  }
}

async function canConnect(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  try {
    await client.connect();
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
}

function unusable(detail: string): InputProblem {
  return new InputProblem("database-unusable", [], detail);
}
