import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contentHash } from "#lib/hash/content-hash.ts";
import { premiseKey } from "#lib/job/premise-key.ts";
import type { Scope } from "#lib/store/scope.ts";
import { ALPHA, addJob, BETA, type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

let database: TemporaryDatabase;
beforeAll(async () => {
  database = await temporaryDatabase();
});
afterAll(() => database.remove());

function inAlpha<T>(work: (scope: Scope) => Promise<T>): Promise<T> {
  return database.store.withOrganization(ALPHA, work);
}

describe("revisions", () => {
  test("append, keep the earlier ones as they were, and carry the hash of their content", async () => {
    const id = await addJob(database.store, ALPHA);
    const document = { title: "Changed", sites: [{ id: "s1", reachShare: 0.5 }] };
    await inAlpha(({ jobs }) => jobs.saveRevision({ jobId: id, onRevision: 1, document, engineVersion: "test" }));
    const { job, revision } = await inAlpha(({ jobs }) => jobs.findCurrent(id));
    expect(job.currentRevision).toBe(2);
    expect(revision?.document).toEqual(document);
    expect(revision?.contentHash).toBe(contentHash(document));
    expect((await inAlpha(({ jobs }) => jobs.findRevision(id, 1))).document).toEqual({ title: "12 Invented Lane" });
    expect((await inAlpha(({ jobs }) => jobs.listRevisions(id))).map((row) => row.revision)).toEqual([2, 1]);
  });

  test("a change made on an older revision is a conflict, and saves nothing", async () => {
    const id = await addJob(database.store, ALPHA);
    const save = (title: string) =>
      inAlpha(({ jobs }) =>
        jobs.saveRevision({ jobId: id, onRevision: 1, document: { title }, engineVersion: "test" }),
      );
    await save("first");
    await expect(save("second")).rejects.toMatchObject({ code: "conflict" });
    const { revision } = await inAlpha(({ jobs }) => jobs.findCurrent(id));
    expect(revision?.document).toEqual({ title: "first" });
  });

  test("of ten saves at once on the same revision exactly one wins", async () => {
    const id = await addJob(database.store, ALPHA);
    const saves = Array.from({ length: 10 }, (_, n) =>
      inAlpha(({ jobs }) => jobs.saveRevision({ jobId: id, onRevision: 1, document: { n }, engineVersion: "test" })),
    );
    const outcomes = await Promise.allSettled(saves);
    expect(outcomes.filter((outcome) => outcome.status === "fulfilled")).toHaveLength(1);
    expect((await inAlpha(({ jobs }) => jobs.find(id))).currentRevision).toBe(2);
  });

  test("work that fails halfway leaves nothing behind", async () => {
    const title = "Halfway";
    const work = inAlpha(async ({ jobs }) => {
      await jobs.create({ title });
      throw new Error("planted");
    });
    await expect(work).rejects.toThrow("planted");
    expect((await inAlpha(({ jobs }) => jobs.list({ search: title }))).items).toEqual([]);
  });
});

describe("the list of jobs", () => {
  test("goes through all of them once, newest first, page by page", async () => {
    const ids: string[] = [];
    for (let n = 0; n < 7; n++) ids.push(await addJob(database.store, BETA, `Paged ${n}`));
    const seen: string[] = [];
    let cursor: string | undefined;
    do {
      const page = await database.store.withOrganization(BETA, ({ jobs }) =>
        jobs.list({ limit: 3, ...(cursor && { cursor }) }),
      );
      expect(page.items.length).toBeLessThanOrEqual(3);
      seen.push(...page.items.map((job) => job.id));
      cursor = page.nextCursor;
    } while (cursor);
    expect(seen).toEqual(ids.reverse());
  });

  test("keeps jobs of one and the same moment apart", async () => {
    const ids = await database.store.withOrganization(BETA, async ({ jobs }) => {
      const made = [
        await jobs.create({ title: "Twin" }),
        await jobs.create({ title: "Twin" }),
        await jobs.create({ title: "Twin" }),
      ];
      return made.map((job) => job.id);
    });
    const list = (cursor?: string) =>
      database.store.withOrganization(BETA, ({ jobs }) =>
        jobs.list({ search: "twin", limit: 2, ...(cursor && { cursor }) }),
      );
    const first = await list();
    const second = await list(first.nextCursor);
    expect([...first.items, ...second.items].map((job) => job.id).sort()).toEqual(ids.sort());
  });

  test("finds every word, in any order, and by state", async () => {
    const made = await inAlpha(({ jobs }) => jobs.create({ title: "77 Quarry Road", searchWords: "Nokomis 53711" }));
    await inAlpha(({ jobs }) => jobs.setState(made.id, "accepted"));
    const find = async (filter: object) => (await inAlpha(({ jobs }) => jobs.list(filter))).items.map((job) => job.id);
    expect(await find({ search: "nokomis QUARRY" })).toEqual([made.id]);
    expect(await find({ search: "quarry elsewhere" })).toEqual([]);
    expect(await find({ search: "quarry", state: "accepted" })).toEqual([made.id]);
    expect(await find({ search: "quarry", state: "draft" })).toEqual([]);
    // Wildcards of the database are plain characters here.
    expect(await find({ search: "q%y" })).toEqual([]);
  });

  test("refuses a cursor it did not make", async () => {
    await expect(inAlpha(({ jobs }) => jobs.list({ cursor: "planted" }))).rejects.toMatchObject({
      code: "input-unusable",
    });
  });
});

describe("a duplicate", () => {
  test("starts as a draft with the newest document, and its own history", async () => {
    const id = await addJob(database.store, ALPHA);
    const copy = await inAlpha(({ jobs }) => jobs.duplicate(id, "Copy"));
    expect(copy).toMatchObject({ title: "Copy", state: "draft", currentRevision: 1 });
    expect(copy.id).not.toBe(id);
    const { revision } = await inAlpha(({ jobs }) => jobs.findCurrent(copy.id));
    expect(revision?.document).toEqual({ title: "Copy" });
  });
});

describe("an id that is no id", () => {
  test("is simply not found", async () => {
    await expect(inAlpha(({ jobs }) => jobs.find("../etc"))).rejects.toMatchObject({ code: "not-found" });
  });
});

describe("the key of a premise", () => {
  test("is the same however the address is typed, and another for another house", () => {
    const key = premiseKey({ addressLine: "12 Hartwell Ln.", zip: "53711-1234" });
    expect(premiseKey({ addressLine: " 12  HARTWELL ln", zip: "53711" })).toBe(key);
    expect(premiseKey({ addressLine: "13 Hartwell Ln", zip: "53711" })).not.toBe(key);
  });
});
