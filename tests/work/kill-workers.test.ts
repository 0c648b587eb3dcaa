import type { ChildProcess } from "node:child_process";
import { once } from "node:events";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { importClaims, type SourceLine } from "#lib/work/claims/import-claims.ts";
import { claimGenerator } from "#tests/claims/generated-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";
import { buildCommandLine, startCommand } from "./command-process.ts";

const { reviewer } = DEMO_IDENTITIES;
const CLAIMS = 350;
const KILLS = 3;
let database: TemporaryDatabase;
const workers: ChildProcess[] = [];

beforeAll(async () => {
  await buildCommandLine();
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
});
afterAll(async () => {
  for (const worker of workers) worker.kill("SIGKILL");
  await database.remove();
});

async function* generated(): AsyncGenerator<SourceLine> {
  const make = await claimGenerator();
  for (let i = 0; i < CLAIMS; i++) yield { line: i + 1, bytes: 25_000, claim: { packet: make(i) } };
}

function startWorker(): ChildProcess {
  const worker = startCommand(["worker"], database.env);
  workers.push(worker);
  return worker;
}

test("workers killed at any moment lose no claim and count none twice", async () => {
  const batchId = await importClaims(database.store, reviewer, {
    contractorId: DEMO_ORGANIZATIONS.contractor.id,
    sourceName: "generated",
    lines: generated(),
    queue: { leaseSeconds: 3 },
  });
  const find = () => database.store.withOrganization(reviewer, ({ claimBatches }) => claimBatches.find(batchId));
  const owner = await database.connectAs("owner");
  try {
    const takenCount = async () =>
      Number(
        (
          await owner.query(
            `SELECT coalesce(sum(retry_count + (started_on IS NOT NULL)::int), 0) AS taken FROM pgboss.job`,
          )
        ).rows[0].taken,
      );
    for (let kill = 0; kill < KILLS; kill++) {
      const before = await takenCount();
      const worker = startWorker();
      // Killed while it holds a task, at another moment of it each time.
      while ((await takenCount()) === before && (await find()).state === "running") await wait(20);
      await wait(kill * 60);
      worker.kill("SIGKILL");
      await once(worker, "exit");
    }
    startWorker();
    while ((await find()).state === "running") await wait(100);
    expect(await find()).toMatchObject({ storedCount: CLAIMS, sameCount: CLAIMS, differsCount: 0, invalidCount: 0 });
    await owner.query(`SELECT set_config('ductmend.organization_id', $1, false)`, [reviewer.organizationId]);
    const count = async (sql: string) => Number((await owner.query(sql)).rows[0].count);
    expect(await count(`SELECT count(*) FROM "Claim" WHERE "recomputeOutcome" = 'same'`)).toBe(CLAIMS);
    expect(await count(`SELECT count(DISTINCT reference) FROM "Claim"`)).toBe(CLAIMS);
    // One record of each step for each claim: what was done twice would stand there twice.
    for (const action of ["claim.received", "claim.checked"]) {
      expect(await count(`SELECT count(*) FROM "AuditLog" WHERE action = '${action}'`)).toBe(CLAIMS);
      expect(await count(`SELECT count(DISTINCT "subjectId") FROM "AuditLog" WHERE action = '${action}'`)).toBe(CLAIMS);
    }
    expect(await count(`SELECT count(*) FROM pgboss.job WHERE retry_count > 0`)).toBeGreaterThan(0);
  } finally {
    await owner.end();
  }
}, 180_000);
