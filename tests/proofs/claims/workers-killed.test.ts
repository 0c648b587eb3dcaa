import type { ChildProcess } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { listAndSummaryMs } from "#tests/proofs/claims/list-and-summary-ms.ts";
import { writeGeneratedClaims } from "#tests/proofs/claims/write-generated-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";
import { buildCommandLine, residentMb, startCommand } from "#tests/work/command-process.ts";

const { reviewer } = DEMO_IDENTITIES;
const contractorId = DEMO_ORGANIZATIONS.contractor.id;
/** A hundred thousand, as the claim of the product says; fewer with PROOF_CLAIMS, for a slower machine. */
const CLAIMS = Number(process.env.PROOF_CLAIMS ?? 100_000);
const WORKERS = 2;
const IMPORTS_KILLED = 2;
const LONGEST_MS = 4 * 3_600_000;
let database: TemporaryDatabase;
let file: string;
const running = new Set<ChildProcess>();

beforeAll(async () => {
  await buildCommandLine();
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
  file = join(database.stateFolder, "claims.ndjson");
  await writeGeneratedClaims(file, CLAIMS);
}, LONGEST_MS);
afterAll(async () => {
  for (const child of running) child.kill("SIGKILL");
  await database.remove();
});

/** Seeded chances, so that the kills of a run come at the same places of its plan. */
function chances(seed: number): () => number {
  const source = createDrawSource(seed);
  const normals = new Float64Array(1);
  let k = 0;
  return () => {
    source.fillNormals(k++, normals);
    return 1 / (1 + Math.exp(-1.6 * normals[0]!));
  };
}

function start(args: readonly string[]): ChildProcess {
  const child = startCommand(args, database.env);
  running.add(child);
  child.once("exit", () => running.delete(child));
  return child;
}

async function isRunning(child: ChildProcess, ms: number): Promise<boolean> {
  await wait(ms);
  return child.exitCode === null && child.signalCode === null;
}

/** Resident memory of the processes of one kind, by tenth of the work done. */
function memoryLog() {
  const tenths: number[] = Array(11).fill(0);
  return {
    tenths,
    note: (share: number, mb: number) => {
      const at = Math.min(10, Math.floor(share * 10));
      tenths[at] = Math.max(tenths[at]!, mb);
    },
  };
}

test(
  `${CLAIMS} claims, importers and workers killed at random: each is there once and checked once`,
  async () => {
    const chance = chances(5);
    const owner = await database.connectAs("owner");
    await owner.query(`SELECT set_config('ductmend.organization_id', $1, false)`, [reviewer.organizationId]);
    const count = async (sql: string) => Number((await owner.query(sql)).rows[0].count);
    const storedCount = () => count(`SELECT coalesce(sum("claimCount"), 0) AS count FROM "BatchProgress"`);
    const checkedCount = () =>
      count(`SELECT coalesce(sum("sameCount" + "differsCount" + "invalidCount"), 0) AS count FROM "BatchProgress"`);
    const memory = { importer: memoryLog(), worker: memoryLog() };

    // The import alone first: how fast it is, and whether it can be killed and begun again.
    const importArguments = ["import-claims", file, "--contractor", contractorId, "--store-only"];
    let importSeconds = 0;
    for (let run = 0; ; run++) {
      const began = performance.now();
      const importer = start(importArguments);
      const killAt = run < IMPORTS_KILLED ? CLAIMS * 0.4 * (run + chance()) : Number.POSITIVE_INFINITY;
      for (;;) {
        const goesOn = await isRunning(importer, 500);
        const stored = await storedCount();
        memory.importer.note(stored / CLAIMS, residentMb(importer.pid));
        if (!goesOn) break;
        if (stored > killAt) importer.kill("SIGKILL");
      }
      importSeconds += (performance.now() - began) / 1000;
      if (importer.signalCode === null) break;
    }
    expect(await count(`SELECT count(*) FROM "Claim"`)).toBe(CLAIMS);

    let kills = 0;
    const began = performance.now();
    const workers = Array.from({ length: WORKERS }, () => start(["worker"]));
    for (let checked = 0; checked < CLAIMS; checked = await checkedCount()) {
      await wait(500);
      for (const [index, worker] of workers.entries()) {
        memory.worker.note(checked / CLAIMS, residentMb(worker.pid));
        // Towards the end they are left alone, so that the leases of the dead run out and the rest gets done.
        if (chance() > 0.03 || checked > 0.9 * CLAIMS) continue;
        worker.kill("SIGKILL");
        await once(worker, "exit");
        kills++;
        workers[index] = start(["worker"]);
      }
    }
    const checkSeconds = (performance.now() - began) / 1000;

    expect(await count(`SELECT count(*) FROM "Claim" WHERE "recomputeOutcome" = 'same'`)).toBe(CLAIMS);
    expect(await count(`SELECT count(DISTINCT reference) FROM "Claim"`)).toBe(CLAIMS);
    expect(await storedCount()).toBe(CLAIMS);
    expect(await checkedCount()).toBe(CLAIMS);
    for (const action of ["claim.received", "claim.checked"]) {
      expect(await count(`SELECT count(*) FROM "AuditLog" WHERE action = '${action}'`)).toBe(CLAIMS);
      expect(await count(`SELECT count(DISTINCT "subjectId") FROM "AuditLog" WHERE action = '${action}'`)).toBe(CLAIMS);
    }
    expect(kills).toBeGreaterThan(0);

    const round = (log: { tenths: number[] }) => log.tenths.map((mb) => Math.round(mb));
    console.log(
      JSON.stringify({
        claims: CLAIMS,
        importSeconds: Math.round(importSeconds),
        checkSeconds: Math.round(checkSeconds),
        kills: kills + IMPORTS_KILLED,
        ...(await listAndSummaryMs(database.store, reviewer)),
        importerMbByTenth: round(memory.importer),
        workerMbByTenth: round(memory.worker),
      }),
    );
    // Flat: what the last fifth needs is what an earlier one needed.
    const grown = (log: { tenths: number[] }) =>
      Math.max(...log.tenths.slice(8)) / Math.max(1, ...log.tenths.slice(3, 6));
    expect(grown(memory.importer)).toBeLessThan(1.25);
    expect(grown(memory.worker)).toBeLessThan(1.25);
    await owner.end();
  },
  LONGEST_MS,
);
