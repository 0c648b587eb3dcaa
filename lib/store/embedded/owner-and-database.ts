import pg from "pg";
import { ADMIN_ROLE } from "./make-cluster.ts";
import type { Passwords } from "./passwords.ts";
import type { RunningServer } from "./postmaster-file.ts";

export const OWNER_ROLE = "ductmend_owner";
export const DATABASE_NAME = "ductmend";

/** The superuser's only task: a role that owns the tables without being superuser, and a database of its own. */
export async function makeOwnerAndDatabase(server: RunningServer, passwords: Passwords): Promise<void> {
  const client = new pg.Client({
    host: server.host,
    port: server.port,
    user: ADMIN_ROLE,
    password: passwords.admin,
    database: "postgres",
  });
  await client.connect();
  try {
    const role = await client.query("SELECT 1 FROM pg_roles WHERE rolname = $1", [OWNER_ROLE]);
    if (role.rowCount === 0) {
      const password = client.escapeLiteral(passwords.owner);
      await client.query(`CREATE ROLE ${OWNER_ROLE} LOGIN NOSUPERUSER NOBYPASSRLS CREATEROLE PASSWORD ${password}`);
    }
    const database = await client.query("SELECT 1 FROM pg_database WHERE datname = $1", [DATABASE_NAME]);
    if (database.rowCount === 0) await client.query(`CREATE DATABASE ${DATABASE_NAME} OWNER ${OWNER_ROLE}`);
  } finally {
    await client.end();
  }
}
