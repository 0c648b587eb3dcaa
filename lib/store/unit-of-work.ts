import { InputProblem } from "#lib/errors/input-problem.ts";
import { isServerAway } from "./connection-problem.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import type { Identity } from "./identity.ts";

/** One transaction of one organization. Only repositories use it. */
export interface UnitOfWork {
  sql: Prisma.TransactionClient;
  identity: Identity;
}

const LONGEST_WORK_MS = 60_000;
const LONGEST_WAIT_FOR_CONNECTION_MS = 10_000;

/**
 * Runs one piece of work in one transaction that first says for whom it acts. The settings end with the transaction, so
 * that a connection used again never carries them over. All of it is kept, or nothing.
 */
export async function runUnitOfWork<T>(
  client: PrismaClient,
  identity: Identity,
  work: (unit: UnitOfWork) => Promise<T>,
  recover: () => Promise<void>,
): Promise<T> {
  let hasBegun = false;
  const run = () =>
    client.$transaction(
      async (sql) => {
        await sql.$queryRaw`SELECT
          set_config('ductmend.organization_id', ${identity.organizationId}, true),
          set_config('ductmend.actor_id', ${identity.actorId ?? ""}, true),
          set_config('ductmend.proposal_id', ${identity.proposalId ?? ""}, true)`;
        hasBegun = true;
        return await work({ sql, identity });
      },
      { timeout: LONGEST_WORK_MS, maxWait: LONGEST_WAIT_FOR_CONNECTION_MS },
    );
  try {
    return await run();
  } catch (error) {
    if (!isServerAway(error)) throw error;
    if (hasBegun) {
      throw new InputProblem(
        "database-unreachable",
        [],
        "The connection to the database was lost in the middle of this step. Look whether it was saved, then repeat it.",
      );
    }
    // Nothing had begun, so nothing can happen twice.
    await recover();
    return await run();
  }
}
