import type pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  ALPHA,
  addJob,
  BETA,
  PROGRAM,
  PROGRAM_ID,
  type TemporaryDatabase,
  temporaryDatabase,
} from "./temporary-database.ts";

let database: TemporaryDatabase;
let app: pg.Client;
let owner: pg.Client;
let alphaJob: string;

beforeAll(async () => {
  database = await temporaryDatabase();
  [app, owner] = [await database.connectAs("app"), await database.connectAs("owner")];
  alphaJob = await addJob(database.store, ALPHA);
});

afterAll(async () => {
  await app.end();
  await owner.end();
  await database.remove();
});

const ALL_TABLES = `SELECT relname AS name, relrowsecurity AS "isEnabled", relforcerowsecurity AS "isForced",
    (SELECT count(*)::int FROM pg_policy WHERE polrelid = c.oid) AS "policyCount"
  FROM pg_class c WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace AND relname <> '_prisma_migrations'`;

interface TableRow {
  name: string;
  isEnabled: boolean;
  isForced: boolean;
  policyCount: number;
}

async function unprotectedTables(client: pg.Client): Promise<{ names: string[]; seenCount: number }> {
  const { rows } = await client.query<TableRow>(ALL_TABLES);
  const bare = rows.filter((row) => !row.isEnabled || !row.isForced || row.policyCount === 0);
  return { names: bare.map((row) => row.name), seenCount: rows.length };
}

/** Runs statements as the app, for one organization, and takes them back. */
async function asOrganization<T>(organizationId: string, work: () => Promise<T>): Promise<T> {
  await app.query("BEGIN");
  try {
    await app.query("SELECT set_config('ductmend.organization_id', $1, true)", [organizationId]);
    return await work();
  } finally {
    await app.query("ROLLBACK");
  }
}

describe("row-level security", () => {
  test("is enabled and forced on every table, with a policy", async () => {
    const { names, seenCount } = await unprotectedTables(owner);
    expect(names).toEqual([]);
    expect(seenCount).toBe(28);
  });

  test("the check above finds a table without it (planted)", async () => {
    await owner.query(`BEGIN; CREATE TABLE "Planted" (id int)`);
    expect((await unprotectedTables(owner)).names).toEqual(["Planted"]);
    await owner.query("ROLLBACK");
  });

  test("a query planted in the wrong organization gets nothing", async () => {
    const { store } = database;
    await expect(store.withOrganization(BETA, ({ jobs }) => jobs.find(alphaJob))).rejects.toMatchObject({
      code: "not-found",
    });
    await expect(store.withOrganization(BETA, ({ jobs }) => jobs.findRevision(alphaJob, 1))).rejects.toMatchObject({
      code: "not-found",
    });
    expect((await store.withOrganization(BETA, ({ jobs }) => jobs.list())).items).toEqual([]);
    // The same query in the right one finds it, so that the emptiness above means something.
    expect((await store.withOrganization(ALPHA, ({ jobs }) => jobs.list())).items).toHaveLength(1);
  });

  test("SQL without any condition sees its own organization alone", async () => {
    const count = (organizationId: string) =>
      asOrganization(organizationId, async () => (await app.query(`SELECT 1 FROM "JobRevision"`)).rowCount);
    expect(await count(ALPHA.organizationId)).toBe(1);
    expect(await count(BETA.organizationId)).toBe(0);
  });

  test("every table is empty for the app until it says for whom it acts", async () => {
    const { rows } = await owner.query<TableRow>(ALL_TABLES);
    for (const { name } of rows) {
      expect((await app.query(`SELECT 1 FROM "${name}"`)).rowCount, name).toBe(0);
    }
  });

  test("the setting ends with the transaction: a pooled connection carries nothing over", async () => {
    await asOrganization(ALPHA.organizationId, async () => undefined);
    const { rows } = await app.query("SELECT current_setting('ductmend.organization_id', true) AS value");
    expect(rows[0].value ?? "").toBe("");
  });

  test("a row for another organization is refused", async () => {
    const insert = asOrganization(BETA.organizationId, () =>
      app.query(`INSERT INTO "Job" (id, "organizationId", title) VALUES (gen_random_uuid(), $1, 'Planted')`, [
        ALPHA.organizationId,
      ]),
    );
    await expect(insert).rejects.toThrow(/row-level security/);
  });

  test("a reference to another organization's row is refused", async () => {
    const insert = asOrganization(BETA.organizationId, () =>
      app.query(
        `INSERT INTO "JobRevision" ("organizationId", "jobId", revision, document, "contentHash", "engineVersion", "authorId")
         VALUES ($1, $2, 2, '{}', '', '', $3)`,
        [BETA.organizationId, alphaJob, BETA.actorId],
      ),
    );
    await expect(insert).rejects.toThrow(/foreign key/);
  });
});

describe("the role that the app works as", () => {
  test("is not superuser, bypasses nothing, makes nothing and owns nothing", async () => {
    const { rows } = await app.query(
      `SELECT rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, pg_has_role(current_user, 'ductmend_owner', 'MEMBER') AS "isOwner",
              (SELECT count(*)::int FROM pg_class WHERE relowner = r.oid) AS owned
       FROM pg_roles r WHERE rolname = current_user`,
    );
    expect(rows[0]).toEqual({
      rolsuper: false,
      rolbypassrls: false,
      rolcreaterole: false,
      rolcreatedb: false,
      isOwner: false,
      owned: 0,
    });
  });

  test.each([
    ["turn row-level security off", `ALTER TABLE "Job" DISABLE ROW LEVEL SECURITY`, /must be owner/],
    ["become the owner", "SET ROLE ductmend_owner", /permission denied/],
    ["read what the migrations did", `SELECT * FROM "_prisma_migrations"`, /permission denied/],
    ["make a table", "CREATE TABLE planted (id int)", /permission denied/],
    ["add a policy", `CREATE POLICY p ON "Job" USING (true)`, /must be owner/],
    ["empty a table", `TRUNCATE "Job"`, /permission denied/],
    ["ask past the policies", `SET row_security = off; SELECT * FROM "Job"`, /row-level security/],
  ])("cannot %s", async (_what, sql, message) => {
    await expect(app.query(sql)).rejects.toThrow(message);
    await app.query("RESET row_security");
  });

  test.each([
    "JobRevision",
    "Proposal",
    "ProposalEvent",
    "AuditLog",
    "ClaimDecision",
    "ClaimComment",
    "ProgramRule",
    "PriceBookVersion",
    "InspectionSample",
    "Inspection",
  ])("cannot change or remove a row of %s, and neither can the owner", async (table) => {
    for (const sql of [
      `UPDATE "${table}" SET "createdAt" = now()`,
      `DELETE FROM "${table}"`,
      `TRUNCATE "${table}" CASCADE`,
    ]) {
      const planted = sql.replace('"createdAt"', table === "Proposal" ? '"issuedAt"' : '"createdAt"');
      await expect(
        asOrganization(ALPHA.organizationId, () => app.query(planted)),
        planted,
      ).rejects.toThrow(/permission denied/);
      await expect(owner.query(planted), planted).rejects.toThrow(/append-only/);
    }
  });
});

describe("a claim", () => {
  const packet = '{"planted":1}';
  const submit = () =>
    database.store.withOrganization(ALPHA, ({ claims }) =>
      claims.submit({
        programOrganizationId: PROGRAM.organizationId,
        programId: PROGRAM_ID,
        reference: crypto.randomUUID(),
        packet,
        engineVersion: "test",
        premiseKey: "p",
        readingsHash: "r",
        marks: [],
        completedOn: new Date("2026-10-01"),
        beforeToOutsideCfm25: 200,
        afterToOutsideCfm25: 50,
        savedElectricityKWh: 100,
        savedNaturalGasTherms: 50,
        rebateUsdCents: 40_000,
      }),
    );

  test("is seen by its contractor and the program, and by nobody else", async () => {
    const { id } = await submit();
    const find = (identity: typeof ALPHA) => database.store.withOrganization(identity, ({ claims }) => claims.find(id));
    expect((await find(ALPHA)).packet).toBe(packet);
    expect((await find(PROGRAM)).packet).toBe(packet);
    await expect(find(BETA)).rejects.toMatchObject({ code: "not-found" });
  });

  test("is decided by the program with a reason, once", async () => {
    const { id } = await submit();
    const decide = () =>
      database.store.withOrganization(PROGRAM, ({ claims }) =>
        claims.decide({ id, from: "submitted", to: "approved", reason: "All in order" }),
      );
    await decide();
    await expect(decide()).rejects.toMatchObject({ code: "conflict" });
  });

  test("keeps its numbers: no side can change the packet, and the owner cannot either", async () => {
    const { id } = await submit();
    const change = (client: pg.Client) => client.query(`UPDATE "Claim" SET packet = '{}' WHERE id = $1`, [id]);
    for (const identity of [ALPHA, PROGRAM]) {
      await expect(asOrganization(identity.organizationId, () => change(app))).rejects.toThrow(/permission denied/);
    }
    await owner.query("BEGIN");
    await owner.query("SELECT set_config('ductmend.organization_id', $1, true)", [ALPHA.organizationId]);
    await expect(change(owner)).rejects.toThrow(/does not change/);
    await owner.query("ROLLBACK");
  });

  test("is not accepted from a contractor that the program has not invited", async () => {
    const insert = asOrganization(BETA.organizationId, () =>
      app.query(
        `INSERT INTO "Claim" (id, "organizationId", "programOrganizationId", "programId", reference, packet, "packetHash",
           "engineVersion", "premiseKey", "readingsHash", "completedOn", "beforeToOutsideCfm25", "afterToOutsideCfm25",
           "savedElectricityKWh", "savedNaturalGasTherms", "rebateUsdCents")
         VALUES (gen_random_uuid(), $1, $2, $3, 'x', '', '', '', '', '', now(), 1, 1, 1, 1, 1)`,
        [BETA.organizationId, PROGRAM.organizationId, PROGRAM_ID],
      ),
    );
    await expect(insert).rejects.toThrow(/foreign key/);
  });
});
