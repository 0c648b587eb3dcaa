import { afterAll, beforeAll, expect, test } from "vitest";
import { homeownerByLink } from "#lib/access/current-actor.ts";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { type ExampleJob, seedDemo } from "#lib/access/seed-demo.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
});
afterAll(() => database.remove());

const { owner, reviewer } = DEMO_IDENTITIES;
const example = (floor: number): ExampleJob => ({
  key: "attic-house",
  title: "1 Invented Way",
  searchWords: "53711",
  document: { title: "1 Invented Way", floor },
});
const jobs = async () => (await database.store.withOrganization(owner, (scope) => scope.jobs.list())).items;

test("seeding twice makes everything once", async () => {
  await seedDemo(database.store, [example(1)], "test");
  await seedDemo(database.store, [example(1)], "test");
  expect(await jobs()).toMatchObject([{ title: "1 Invented Way", currentRevision: 1, isDemo: true }]);
  const instruments = await database.store.withOrganization(owner, (scope) => scope.instruments.list());
  expect(instruments.map(({ kind, instrument }) => [kind, instrument.isInvented])).toEqual([
    ["fan", true],
    ["gauge", true],
  ]);
  const members = await database.store.withOrganization(owner, (scope) => scope.organizations.members());
  expect(members.map((member) => member.role).sort()).toEqual(["crew", "estimator", "owner"]);
});

test("two starts at once seed one set", async () => {
  const another = { ...example(1), key: "crawlspace-house", title: "2 Invented Way" };
  const seed = () => seedDemo(database.store, [example(1), another], "test");
  await Promise.all([seed(), seed(), seed()]);
  expect((await jobs()).map((job) => job.title).sort()).toEqual(["1 Invented Way", "2 Invented Way"]);
});

test("contractor and program see each other, and the program", async () => {
  const names = (who: typeof owner) =>
    database.store.withOrganization(who, async ({ organizations, programs }) => ({
      partners: (await organizations.partners()).length,
      programs: (await programs.list()).map((program) => program.name),
    }));
  expect(await names(reviewer)).toEqual({ partners: 2, programs: ["Duct sealing rebate (invented)"] });
  expect(await names(owner)).toEqual({ partners: 1, programs: ["Duct sealing rebate (invented)"] });
});

test("an example that changed becomes a new revision", async () => {
  await seedDemo(database.store, [example(2)], "test");
  expect((await jobs()).find((job) => job.title === "1 Invented Way")).toMatchObject({ currentRevision: 2 });
});

test("a job that somebody worked on is theirs: the example leaves it alone", async () => {
  const job = (await jobs()).find(({ title }) => title === "1 Invented Way");
  await database.store.withOrganization(owner, (scope) =>
    scope.jobs.saveRevision({ jobId: job!.id, onRevision: 2, document: { mine: true }, engineVersion: "test" }),
  );
  await seedDemo(database.store, [example(3)], "test");
  const { revision } = await database.store.withOrganization(owner, (scope) => scope.jobs.findCurrent(job!.id));
  expect(revision).toMatchObject({ revision: 3, document: { mine: true } });
});

test("a link leads to its homeowner, and an unknown one to nobody", async () => {
  const [job] = await jobs();
  const { linkToken, proposal } = await database.store.withOrganization(owner, (scope) =>
    scope.proposals.issue({
      jobId: job!.id,
      jobRevision: 1,
      engineVersion: "",
      result: {},
      view: {},
      expiresAt: new Date(),
    }),
  );
  expect(await homeownerByLink(database.store, linkToken)).toMatchObject({
    kind: "homeowner",
    proposalId: proposal.id,
  });
  expect(await homeownerByLink(database.store, "planted")).toBeUndefined();
});
