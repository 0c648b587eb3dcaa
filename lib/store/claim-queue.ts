import PgBoss from "pg-boss";
import type { Prisma } from "./generated/client.ts";

/** One chunk of a batch to be worked on. It carries ids only; what it is about stands behind row-level security. */
export interface ChunkTask {
  organizationId: string;
  batchId: string;
  chunk: number;
}

export interface TakenTask extends ChunkTask {
  taskId: string;
}

/** The queue of chunks, for any number of workers on any number of machines. */
export interface ClaimQueue {
  /** The next task, which is this worker's until its lease ends; undefined when there is none to take. */
  take(): Promise<TakenTask | undefined>;
  done(taskId: string): Promise<void>;
  /** Puts a task that failed back for another try. */
  giveBack(taskId: string, reason: string): Promise<void>;
  /** Tasks that are waiting or being worked on. */
  openCount(): Promise<number>;
  close(): Promise<void>;
}

export interface QueueOptions {
  /** How long a worker may be silent on a task before it goes to another one; the queue's own 60 s when left out. */
  leaseSeconds?: number;
}

const QUEUE = "claims";
const SCHEMA = "pgboss";
/** How often leases are looked at. */
const LEASE_CHECK_SECONDS = 2;

/** Tables and the queue are made by a migration, since the app may make none. */
const FIXED = { schema: SCHEMA, migrate: false, schedule: false } as const;

/** Puts tasks into the queue within a transaction: all is kept, or nothing. */
export async function sendChunks(
  sql: Prisma.TransactionClient,
  tasks: readonly ChunkTask[],
  { leaseSeconds }: QueueOptions = {},
): Promise<void> {
  const db = {
    executeSql: async (text: string, values: unknown[]) => ({
      rows: await sql.$queryRawUnsafe<unknown[]>(text, ...values),
    }),
  };
  const sender = new PgBoss({ ...FIXED, db, supervise: false });
  const jobs = tasks.map((data) => ({ name: QUEUE, data, ...(leaseSeconds && { expireInSeconds: leaseSeconds }) }));
  if (jobs.length > 0) await sender.insert(jobs, { db });
}

/** Opens the queue for a worker. */
export async function openClaimQueue(connectionString: string): Promise<ClaimQueue> {
  const boss = new PgBoss({
    ...FIXED,
    connectionString,
    max: 2,
    supervise: true,
    maintenanceIntervalSeconds: LEASE_CHECK_SECONDS,
  });
  // A lost connection shows at the next take; without a listener it would end the process.
  boss.on("error", () => undefined);
  await boss.start();
  return {
    async take() {
      const [job] = await boss.fetch<ChunkTask>(QUEUE);
      return job && { taskId: job.id, ...job.data };
    },
    async done(taskId) {
      await boss.complete(QUEUE, taskId);
    },
    async giveBack(taskId, reason) {
      await boss.fail(QUEUE, taskId, { reason });
    },
    openCount: () => boss.getQueueSize(QUEUE, { before: "completed" }),
    close: () => boss.stop({ graceful: false }),
  };
}
