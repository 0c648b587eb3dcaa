import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contentHash } from "#lib/hash/content-hash.ts";
import { proposalState } from "#lib/job/proposal-state.ts";
import type { Identity } from "#lib/store/identity.ts";
import { ALPHA, addJob, BETA, type TemporaryDatabase, temporaryDatabase } from "./temporary-database.ts";

const NOW = new Date("2026-11-25T12:00:00Z");
const LATER = new Date("2026-12-25T12:00:00Z");
const VIEW = { headline: "Of every $100", priceUsdCents: 182_000 };
const RESULT = { leakage: { totalCfm25: { value: 231.4 } } };

let database: TemporaryDatabase;
let jobId: string;

beforeAll(async () => {
  database = await temporaryDatabase();
  jobId = await addJob(database.store, ALPHA);
});
afterAll(() => database.remove());

function issue(supersedesId?: string) {
  return database.store.withOrganization(ALPHA, ({ proposals }) =>
    proposals.issue({
      jobId,
      jobRevision: 1,
      engineVersion: "test",
      result: RESULT,
      view: VIEW,
      expiresAt: LATER,
      ...(supersedesId && { supersedesId }),
    }),
  );
}

describe("an issued proposal", () => {
  test("comes back as it was issued, and its hash can be taken again from what is shown", async () => {
    const { proposal } = await issue();
    const found = await database.store.withOrganization(ALPHA, ({ proposals }) => proposals.find(proposal.id));
    const { engineVersion, jobRevision, result, view } = found;
    expect(view).toEqual(VIEW);
    expect(found.contentHash).toBe(contentHash({ jobId, jobRevision, engineVersion, result, view }));
    expect(contentHash({ jobId, jobRevision, engineVersion, result, view: { ...VIEW, priceUsdCents: 1 } })).not.toBe(
      found.contentHash,
    );
  });

  test("needs a revision that exists", async () => {
    const planted = database.store.withOrganization(ALPHA, ({ proposals }) =>
      proposals.issue({ jobId, jobRevision: 99, engineVersion: "", result: {}, view: {}, expiresAt: LATER }),
    );
    await expect(planted).rejects.toThrow(/[Ff]oreign key/);
  });

  test("is not there for another organization", async () => {
    const { proposal } = await issue();
    const find = database.store.withOrganization(BETA, ({ proposals }) => proposals.find(proposal.id));
    await expect(find).rejects.toMatchObject({ code: "not-found" });
  });

  test("is superseded by the next one", async () => {
    const first = await issue();
    await issue(first.proposal.id);
    const list = await database.store.withOrganization(ALPHA, ({ proposals }) => proposals.list({ jobId, now: NOW }));
    expect(list.find((item) => item.id === first.proposal.id)?.state).toBe("superseded");
  });
});

describe("a homeowner's link", () => {
  async function arrive(): Promise<{ homeowner: Identity; proposalId: string; otherId: string }> {
    const other = await issue();
    const { proposal, linkToken } = await issue();
    const homeowner = await database.store.resolveProposalLink(linkToken);
    expect(homeowner).toEqual({ organizationId: ALPHA.organizationId, proposalId: proposal.id, actorId: null });
    return { homeowner: homeowner!, proposalId: proposal.id, otherId: other.proposal.id };
  }

  test("leads nowhere when it was never given out", async () => {
    expect(await database.store.resolveProposalLink("A".repeat(43))).toBeUndefined();
    expect(await database.store.resolveProposalLink("' OR true --")).toBeUndefined();
  });

  test("is kept as a hash alone", async () => {
    const { linkToken } = await issue();
    const owner = await database.connectAs("owner");
    await owner.query("BEGIN");
    await owner.query("SELECT set_config('ductmend.organization_id', $1, true)", [ALPHA.organizationId]);
    const { rows } = await owner.query(`SELECT to_jsonb(p)::text AS text FROM "Proposal" p`);
    await owner.end();
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.some((row) => row.text.includes(linkToken))).toBe(false);
  });

  test("shows this proposal and who issued it, and nothing else of the organization", async () => {
    const { homeowner, proposalId, otherId } = await arrive();
    await database.store.withOrganization(homeowner, async (scope) => {
      expect((await scope.proposals.find(proposalId)).view).toEqual(VIEW);
      expect((await scope.organizations.own()).id).toBe(ALPHA.organizationId);
      expect((await scope.jobs.list()).items).toEqual([]);
      expect(await scope.clients.list()).toEqual([]);
      expect(await scope.organizations.members()).toEqual([]);
      expect(await scope.audit.list()).toEqual([]);
      expect((await scope.proposals.list({ now: NOW })).map((item) => item.id)).toEqual([proposalId]);
      await expect(scope.proposals.find(otherId)).rejects.toMatchObject({ code: "not-found" });
    });
  });

  test("lets a homeowner ask and accept, seen by the contractor, and issue or change nothing", async () => {
    const { homeowner, proposalId } = await arrive();
    await database.store.withOrganization(homeowner, async ({ proposals, audit }) => {
      await proposals.recordEvent(proposalId, "seen");
      await proposals.recordEvent(proposalId, "asked", { text: "Which rooms?" });
      await audit.record({ action: "proposal.asked", subjectKind: "proposal", subjectId: proposalId });
    });
    const events = await database.store.withOrganization(ALPHA, ({ proposals }) => proposals.events(proposalId));
    expect(events.map((event) => [event.kind, event.actorId])).toEqual([
      ["seen", null],
      ["asked", null],
    ]);
    const planted = database.store.withOrganization(homeowner, ({ jobs }) => jobs.create({ title: "Planted" }));
    await expect(planted).rejects.toThrow(/row-level security/);
  });
});

describe("the state of a proposal", () => {
  const state = (kinds: Parameters<typeof proposalState>[0]["events"][number]["kind"][], more = {}) =>
    proposalState({
      events: kinds.map((kind) => ({ kind })),
      expiresAt: LATER,
      isSuperseded: false,
      now: NOW,
      ...more,
    });

  test.each([
    [[], "issued"],
    [["sent"], "sent"],
    [["sent", "seen"], "seen"],
    [["sent", "seen", "asked"], "question-open"],
    [["sent", "seen", "asked", "answered"], "seen"],
    [["asked", "answered", "asked"], "question-open"],
    [["seen", "accepted"], "accepted"],
    [["seen", "declined"], "declined"],
    [["sent", "withdrawn"], "withdrawn"],
  ] as const)("after %j is %s", (kinds, expected) => {
    expect(state([...kinds])).toBe(expected);
  });

  test("turns to expired on the day, unless it was accepted before", () => {
    expect(state(["seen"], { now: LATER })).toBe("expired");
    expect(state(["seen", "accepted"], { now: LATER })).toBe("accepted");
  });

  test("an accepted proposal stays accepted when a new one is issued", () => {
    expect(state(["accepted"], { isSuperseded: true })).toBe("accepted");
    expect(state(["seen"], { isSuperseded: true })).toBe("superseded");
  });
});
