import { afterAll, beforeAll, expect, test } from "vitest";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { ALPHA, addJob, BETA, type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
});
afterAll(() => database.remove());

const add = (versionId: string, identity = ALPHA) =>
  database.store.withOrganization(identity, ({ repairs }) =>
    repairs.add({ catalogue: { ...STARTING_CATALOGUE, versionId }, usesRetests: versionId === "2" }),
  );
const RETEST = {
  treated: [{ repairId: "mastic-with-mesh", cfm25: 120, sitesCount: 3 }],
  removedCfm25: 101.5,
  standardUncertaintyCfm25: 9,
};

test("versions follow each other without a gap, keep their words, and stay", async () => {
  await expect(add("2")).rejects.toMatchObject({ code: "conflict" });
  await add("1");
  await add("2");
  await expect(add("2")).rejects.toMatchObject({ code: "conflict" });
  await database.store.withOrganization(ALPHA, async ({ repairs }) => {
    expect(await repairs.newest()).toMatchObject({ version: 2, usesRetests: true });
    expect((await repairs.find(1)).catalogue).toEqual({ ...STARTING_CATALOGUE, versionId: "1" });
  });
  const owner = await database.connectAs("owner");
  await expect(owner.query(`DELETE FROM "RepairCatalogueVersion"`)).rejects.toThrow(/append-only/);
  await owner.end();
});

test("what a job taught is kept once, taken anew after a change, and dropped with its retest", async () => {
  const jobId = await addJob(database.store, ALPHA, "3 Taught Lane");
  await database.store.withOrganization(ALPHA, async ({ repairs }) => {
    await repairs.noteExperience(jobId, 1, RETEST);
    await repairs.noteExperience(jobId, 2, { ...RETEST, removedCfm25: 99 });
    expect(await repairs.experience()).toMatchObject([
      { ...RETEST, jobId, jobTitle: "3 Taught Lane", jobRevision: 2, removedCfm25: 99 },
    ]);
  });
  await database.store.withOrganization(BETA, async ({ repairs }) => {
    expect(await repairs.experience()).toEqual([]);
    expect(await repairs.newest()).toBeUndefined();
  });
  await expect(
    database.store.withOrganization(BETA, ({ repairs }) => repairs.noteExperience(jobId, 1, RETEST)),
  ).rejects.toThrow();
  await database.store.withOrganization(ALPHA, async ({ repairs }) => {
    await repairs.dropExperience(jobId);
    expect(await repairs.experience()).toEqual([]);
  });
});
