import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { listAndSummaryMs } from "#tests/proofs/claims/list-and-summary-ms.ts";
import { writeGeneratedClaims } from "#tests/proofs/claims/write-generated-claims.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";
import { buildCommandLine, residentMb, startCommand } from "#tests/work/command-process.ts";

const { reviewer } = DEMO_IDENTITIES;
const contractorId = DEMO_ORGANIZATIONS.contractor.id;
/** As the claim of the product says; fewer with PROOF_CLAIMS. */
const CLAIMS = Number(process.env.PROOF_CLAIMS ?? 100_000);
const LONGEST_MS = 3_600_000;
/** Linux counts the time of processes in hundredths of a second. */
const TICKS_PER_SECOND = 100;
let database: TemporaryDatabase;
let file: string;

beforeAll(async () => {
  await buildCommandLine();
  database = await temporaryDatabase();
  await seedDemo(database.store, [], ENGINE_VERSION);
  file = join(database.stateFolder, "claims.ndjson");
  await writeGeneratedClaims(file, CLAIMS);
}, LONGEST_MS);
afterAll(() => database.remove());

interface Usage {
  parentPid: number;
  /** Of the process and of its children that ended, user and system together. */
  ownSeconds: number;
  childrenSeconds: number;
}

/** Processor time of a process, or null when it is gone. Linux only. */
function usageOf(pid: number): Usage | null {
  try {
    // The name of the program, in parentheses, may hold blanks.
    const [state, ...rest] = readFileSync(`/proc/${pid}/stat`, "utf8")
      .replace(/^.*\) /s, "")
      .split(" ");
    const [parentPid, , , , , , , , , , user, system, childUser, childSystem] = [state, ...rest].slice(1).map(Number);
    const seconds = (one: number | undefined, other: number | undefined) => (one! + other!) / TICKS_PER_SECOND;
    return {
      parentPid: parentPid!,
      ownSeconds: seconds(user, system),
      childrenSeconds: seconds(childUser, childSystem),
    };
  } catch {
    return null;
  }
}

/** Processor time of a PostgreSQL server: its first process, those that ended, those that run. */
function serverSeconds(stateFolder: string): number {
  const pidFile = readdirSync(stateFolder, { recursive: true, encoding: "utf8" }).find((name) =>
    name.endsWith("postmaster.pid"),
  );
  if (!pidFile) throw new Error("The database has no running server");
  const first = Number(readFileSync(join(stateFolder, pidFile), "utf8").split("\n")[0]);
  const pids = readdirSync("/proc").flatMap((name) => (/^\d+$/.test(name) ? [Number(name)] : []));
  const children = pids.flatMap((pid) => usageOf(pid) ?? []).filter(({ parentPid }) => parentPid === first);
  const own = usageOf(first);
  return children.reduce((sum, { ownSeconds }) => sum + ownSeconds, own ? own.ownSeconds + own.childrenSeconds : 0);
}

test(
  `${CLAIMS} claims come in by one command: each is there once, memory stays the same, and how long it took is told`,
  async () => {
    const owner = await database.connectAs("owner");
    await owner.query(`SELECT set_config('ductmend.organization_id', $1, false)`, [reviewer.organizationId]);
    const count = async (sql: string) => Number((await owner.query(sql)).rows[0].count);
    const storedCount = () => count(`SELECT coalesce(sum("claimCount"), 0) AS count FROM "BatchProgress"`);

    const mbByTenth: number[] = Array(10).fill(0);
    const secondsByTenth: number[] = [];
    let cpuSeconds = 0;
    const serverBefore = serverSeconds(database.stateFolder);
    const began = performance.now();
    const importer = startCommand(["import-claims", file, "--contractor", contractorId, "--store-only"], database.env);
    while (importer.exitCode === null && importer.signalCode === null) {
      await wait(250);
      const share = (await storedCount()) / CLAIMS;
      const tenth = Math.min(9, Math.floor(share * 10));
      mbByTenth[tenth] = Math.max(mbByTenth[tenth]!, residentMb(importer.pid));
      while (secondsByTenth.length < Math.floor(share * 10)) secondsByTenth.push((performance.now() - began) / 1000);
      cpuSeconds = usageOf(importer.pid!)?.ownSeconds ?? cpuSeconds;
    }
    const importSeconds = (performance.now() - began) / 1000;
    const serverCpuSeconds = serverSeconds(database.stateFolder) - serverBefore;

    expect(importer.exitCode).toBe(0);
    expect(await count(`SELECT count(*) FROM "Claim"`)).toBe(CLAIMS);
    expect(await count(`SELECT count(DISTINCT reference) FROM "Claim"`)).toBe(CLAIMS);
    expect(await storedCount()).toBe(CLAIMS);
    expect(await count(`SELECT count(*) FROM "AuditLog" WHERE action = 'claim.received'`)).toBe(CLAIMS);

    const rounded = (list: readonly number[]) => list.map((each) => Math.round(each));
    console.log(
      JSON.stringify({
        claims: CLAIMS,
        importSeconds: Number(importSeconds.toFixed(1)),
        claimsPerSecond: Math.round(CLAIMS / importSeconds),
        importerCpuMsPerClaim: Number(((1000 * cpuSeconds) / CLAIMS).toFixed(2)),
        serverCpuMsPerClaim: Number(((1000 * serverCpuSeconds) / CLAIMS).toFixed(2)),
        secondsByTenth: rounded(secondsByTenth),
        importerMbByTenth: rounded(mbByTenth),
        ...(await listAndSummaryMs(database.store, reviewer)),
      }),
    );
    // Flat: what the end needs is what the middle needed. Of a short run a tenth may pass unseen.
    const most = (list: readonly number[]) => Math.max(1, ...list);
    if (CLAIMS >= 20_000) expect(most(mbByTenth.slice(8)) / most(mbByTenth.slice(3, 6))).toBeLessThan(1.25);
    await owner.end();
  },
  LONGEST_MS,
);
