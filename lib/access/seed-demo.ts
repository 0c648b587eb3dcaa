import { contentHash } from "#lib/hash/content-hash.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import type { Store } from "#lib/store/open-store.ts";
import { DEMO_IDENTITIES, DEMO_ORGANIZATIONS, EXAMPLE_AUTHOR_ID } from "./demo-identities.ts";
import { DEMO_PROGRAM_RULE, DEMO_RULE_DATE } from "./demo-program-rule.ts";

/** An invented job that the demo organization starts with. */
export interface ExampleJob {
  /** Stable name: a job is made from it once. */
  key: string;
  title: string;
  /** Further words that the search should find it by. */
  searchWords: string;
  document: object;
}

/** Two starts at once take turns, so that neither finds a thing missing that the other is making. */
const TURN = "seed-demo";

export const DEMO_PROGRAM_ID = "d0000003-0000-4000-8000-000000000010";
const DEMO_FAN_ID = "d0000001-0000-4000-8000-000000000020";
const DEMO_GAUGE_ID = "d0000001-0000-4000-8000-000000000021";
const DEMO_RULE_ID = "d0000003-0000-4000-8000-000000000011";

/**
 * Makes the demo organizations, their members, a program, invented instruments and the example jobs, where they are missing. An example that
 * changed becomes a new revision, unless somebody worked on the job since: then it is theirs.
 */
export async function seedDemo(store: Store, examples: readonly ExampleJob[], engineVersion: string): Promise<void> {
  for (const { id, kind, name } of Object.values(DEMO_ORGANIZATIONS)) {
    const people = Object.values(DEMO_IDENTITIES).filter((person) => person.organizationId === id);
    const members = people.map((person) => ({ id: person.actorId, name: person.name, role: person.role }));
    await store.withOrganization({ organizationId: id, actorId: null }, async ({ organizations, takeTurn }) => {
      await takeTurn(TURN);
      await organizations.ensure({ kind, name, isDemo: true, members });
    });
  }
  await store.withOrganization(DEMO_IDENTITIES.reviewer, async ({ programs, takeTurn }) => {
    await takeTurn(TURN);
    await programs.ensure({
      id: DEMO_PROGRAM_ID,
      name: "Duct sealing rebate (invented)",
      description: "An invented program for trying out claims.",
    });
    await programs.invite(DEMO_PROGRAM_ID, DEMO_ORGANIZATIONS.contractor.id);
    await programs.invite(DEMO_PROGRAM_ID, DEMO_ORGANIZATIONS.otherContractor.id);
    const effectiveOn = new Date(DEMO_RULE_DATE);
    if ((await programs.rules(DEMO_PROGRAM_ID)).length === 0)
      await programs.addRule({
        id: DEMO_RULE_ID,
        programId: DEMO_PROGRAM_ID,
        effectiveOn,
        document: DEMO_PROGRAM_RULE,
      });
  });
  const author = { organizationId: DEMO_ORGANIZATIONS.contractor.id, actorId: EXAMPLE_AUTHOR_ID };
  await store.withOrganization(DEMO_IDENTITIES.owner, async ({ instruments, takeTurn }) => {
    await takeTurn(TURN);
    if ((await instruments.list()).length > 0) return;
    const [{ id: _fan, ...fan }, { id: _gauge, ...gauge }] = [DEMO_FAN, DEMO_GAUGE];
    await instruments.add({ kind: "fan", instrument: fan }, DEMO_FAN_ID);
    await instruments.add({ kind: "gauge", instrument: gauge }, DEMO_GAUGE_ID);
  });
  for (const example of examples) await seedJob(store, author, example, engineVersion);
}

async function seedJob(
  store: Store,
  author: { organizationId: string; actorId: string },
  { key, title, searchWords, document }: ExampleJob,
  engineVersion: string,
): Promise<void> {
  await store.withOrganization(author, async ({ jobs, takeTurn }) => {
    await takeTurn(TURN);
    const job =
      (await jobs.findByExample(key)) ?? (await jobs.create({ title, searchWords, isDemo: true, exampleKey: key }));
    const { revision } = await jobs.findCurrent(job.id);
    const isUntouched = revision === undefined || revision.authorId === EXAMPLE_AUTHOR_ID;
    if (!isUntouched || revision?.contentHash === contentHash(document)) return;
    await jobs.saveRevision({ jobId: job.id, onRevision: job.currentRevision, document, engineVersion });
  });
}
