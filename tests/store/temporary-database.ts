import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { appDatabaseUrl } from "#lib/store/database-url.ts";
import { joinOrStart } from "#lib/store/embedded/embedded-database.ts";
import type { Identity } from "#lib/store/identity.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";

/** Two contractors and a program, invented. */
export const ALPHA: Identity & { actorId: string } = {
  organizationId: "a0000000-0000-4000-8000-000000000000",
  actorId: "a0000000-0000-4000-8000-000000000001",
};
export const BETA: Identity & { actorId: string } = {
  organizationId: "b0000000-0000-4000-8000-000000000000",
  actorId: "b0000000-0000-4000-8000-000000000001",
};
export const PROGRAM: Identity & { actorId: string } = {
  organizationId: "c0000000-0000-4000-8000-000000000000",
  actorId: "c0000000-0000-4000-8000-000000000001",
};
export const PROGRAM_ID = "c0000000-0000-4000-8000-00000000000f";

export interface TemporaryDatabase {
  store: Store;
  stateFolder: string;
  env: Record<string, string>;
  ownerUrl: string;
  appUrl: string;
  /** A connection as the owner of the tables, or as the role that the app works as. */
  connectAs(role: "owner" | "app"): Promise<pg.Client>;
  remove(): Promise<void>;
}

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), "ductmend-test-"));
}

/** A real server of its own in the temp folder, with both contractors and the program. */
export async function temporaryDatabase(): Promise<TemporaryDatabase> {
  const stateFolder = temporaryFolder();
  const env = { DUCTMEND_STATE_FOLDER: stateFolder };
  const store = await openStore({ env });
  const ownerUrl = await joinOrStart({ checkout: process.cwd(), stateFolder });
  const appUrl = appDatabaseUrl(ownerUrl);
  await addOrganizations(store);
  return {
    store,
    stateFolder,
    env,
    ownerUrl,
    appUrl,
    async connectAs(role) {
      const client = new pg.Client({ connectionString: role === "owner" ? ownerUrl : appUrl });
      await client.connect();
      return client;
    },
    async remove() {
      await store.close();
      rmSync(stateFolder, { recursive: true, force: true });
    },
  };
}

async function addOrganizations(store: Store): Promise<void> {
  for (const [identity, kind] of [
    [ALPHA, "contractor"],
    [BETA, "contractor"],
    [PROGRAM, "program"],
  ] as const) {
    await store.withOrganization(identity, ({ organizations }) =>
      organizations.ensure({
        kind,
        name: `Invented ${identity.organizationId[0]}`,
        isDemo: true,
        members: [{ id: identity.actorId, name: "Somebody", role: "owner" }],
      }),
    );
  }
  await store.withOrganization(PROGRAM, async ({ programs }) => {
    await programs.ensure({ id: PROGRAM_ID, name: "Invented program", description: "" });
    await programs.invite(PROGRAM_ID, ALPHA.organizationId);
  });
}

/** A job with one revision, and its id. */
export async function addJob(store: Store, identity: Identity, title = "12 Invented Lane"): Promise<string> {
  return await store.withOrganization(identity, async ({ jobs }) => {
    const { id } = await jobs.create({ title });
    await jobs.saveRevision({ jobId: id, onRevision: 0, document: { title }, engineVersion: "test" });
    return id;
  });
}
