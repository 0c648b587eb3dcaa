import { PrismaPg } from "@prisma/adapter-pg";
import { textHash } from "#lib/hash/sha256.ts";
import { type ClaimQueue, openClaimQueue } from "./claim-queue.ts";
import { type Connection, connect, type StoreOptions } from "./connect.ts";
import { connectionProblem, isServerAway } from "./connection-problem.ts";
import { PrismaClient } from "./generated/client.ts";
import type { Identity } from "./identity.ts";
import { makeScope, type Scope } from "./scope.ts";
import { runUnitOfWork } from "./unit-of-work.ts";

/** The one door to stored data. Everything behind it happens inside one organization. */
export interface Store {
  /** One transaction for one organization: all of `work` is kept, or nothing. */
  withOrganization<T>(identity: Identity, work: (scope: Scope) => Promise<T>): Promise<T>;
  /** Whom a proposal's link leads to; undefined when no such link was ever given out. */
  resolveProposalLink(linkToken: string): Promise<Identity | undefined>;
  /** Whom a key of the programming interface stands for; undefined when unknown or revoked. */
  resolveApiKey(key: string): Promise<(Identity & { apiKeyId: string; scopes: string[] }) | undefined>;
  /** The queue that workers take chunks of claims from. */
  openClaimQueue(): Promise<ClaimQueue>;
  close(): Promise<void>;
}

const MOST_CONNECTIONS = 10;

/** Opens the store: finds or starts the database, applies migrations. @throws InputProblem in words for people. */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  let connection = await connect(options);
  const client = makeClient(connection);

  /** The server went away between two steps: start or find it again. The socket and the passwords stay the same. */
  const recover = async () => {
    const lost = connection;
    connection = await connect(options);
    await lost.abandon();
  };

  const run = async <T>(identity: Identity, work: (scope: Scope) => Promise<T>): Promise<T> => {
    try {
      return await runUnitOfWork(client, identity, (unit) => work(makeScope(unit)), recover);
    } catch (error) {
      throw isServerAway(error) ? connectionProblem(error, "this store") : error;
    }
  };

  return {
    withOrganization: run,

    async resolveProposalLink(linkToken) {
      const [found] = await client.$queryRaw<{ organizationId: string; proposalId: string }[]>`
        SELECT "organizationId"::text, "proposalId"::text FROM resolve_proposal_link(${textHash(linkToken)})`;
      return found && { ...found, actorId: null };
    },

    async resolveApiKey(key) {
      const [found] = await client.$queryRaw<
        { organizationId: string; apiKeyId: string; createdById: string; scopes: string[] }[]
      >`SELECT "organizationId"::text, "apiKeyId"::text, "createdById"::text, scopes FROM resolve_api_key(${textHash(key)})`;
      if (!found) return undefined;
      const { createdById, ...rest } = found;
      return { ...rest, actorId: createdById };
    },

    openClaimQueue: () => openClaimQueue(connection.appUrl),

    async close() {
      await client.$disconnect();
      await connection.leave();
    },
  };
}

function makeClient({ appUrl }: Connection): PrismaClient {
  // A connection that breaks while idle is replaced by the pool; the step that needs the next one reports the trouble.
  const ignore = () => undefined;
  const pool = { connectionString: appUrl, max: MOST_CONNECTIONS, connectionTimeoutMillis: 10_000 };
  return new PrismaClient({ adapter: new PrismaPg(pool, { onPoolError: ignore, onConnectionError: ignore }) });
}
