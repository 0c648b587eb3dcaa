import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { DEMO_PROGRAM_RULE } from "#lib/access/demo-program-rule.ts";
import { DEMO_PROGRAM_ID, seedDemo } from "#lib/access/seed-demo.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { csvLine } from "#lib/exchange/csv/write-cells.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { CLAIM_COLUMNS, claimTable } from "#lib/work/claims/claim-columns.ts";
import { commentClaim, decideClaim } from "#lib/work/claims/decide-claim.ts";
import { putRuleInForce } from "#lib/work/claims/put-rule-in-force.ts";
import { replayProgramRule } from "#lib/work/claims/replay-program-rule.ts";
import { markRuleSeen, ruleReach, unseenRules } from "#lib/work/claims/rule-notices.ts";
import { seedDemoClaim } from "#lib/work/claims/seed-claim.ts";
import { draftClaim, recheckClaim, submitClaim } from "#lib/work/claims/submit-claim.ts";
import { jobLog } from "#lib/work/jobs/job-log.ts";
import { exampleDocument } from "#tests/estimate/example-jobs.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const { estimator, crew, reviewer } = DEMO_IDENTITIES;
const other = DEMO_IDENTITIES["other-estimator"];
const FILE = "mixed-crawlspace-retest.json";
let database: TemporaryDatabase;

beforeAll(async () => {
  database = await temporaryDatabase();
  const document = exampleDocument(FILE);
  const example = { key: "mixed-crawlspace-retest", title: String(document.title), searchWords: "", document };
  await seedDemo(database.store, [example], ENGINE_VERSION);
});
afterAll(() => database.remove());

const asReviewer = <T>(work: Parameters<typeof database.store.withOrganization<T>>[1]) =>
  database.store.withOrganization(reviewer, work);
const received = async () => (await asReviewer(({ claims }) => claims.list())).items;

/** The example's claim handed in by another contractor, under another number. */
async function submitCopy(
  actor: typeof estimator | typeof other,
  reference: string,
  change: (document: object) => void,
) {
  const document = exampleDocument(FILE);
  change(document);
  const draft = await database.store.withOrganization(actor, async (scope) => {
    const program = (await scope.programs.list()).find(({ id }) => id === DEMO_PROGRAM_ID)!;
    return draftClaim(scope, { job: parseJob(document), program, claimedBy: "X", claimedOn: "2026-11-21", draws: 20 });
  });
  const jobId = await database.store.withOrganization(
    actor,
    async ({ jobs }) => (await jobs.create({ title: "x" })).id,
  );
  return await submitClaim(database.store, actor, { draft, jobId, reference });
}

describe("a claim handed in", () => {
  test("is there once however often a start seeds it, recomputed, with its rebate by the program's rule", async () => {
    await Promise.all([seedDemoClaim(database.store, 20), seedDemoClaim(database.store, 20)]);
    await seedDemoClaim(database.store, 20);
    const claims = await received();
    expect(claims).toHaveLength(1);
    const [claim] = claims;
    expect(claim).toMatchObject({ state: "submitted", recomputeOutcome: "same", programId: DEMO_PROGRAM_ID });
    // $2.50 for each whole cfm at 25 Pa removed. By hand from the readings: 23.1 × 187^.501 and 10.7 × 138^.502, the
    // first carried from 24.95 to 25 Pa by .6, both × 1.017 for the thin air at 880 ft and 70 °F: 323.3 − 129.1 = 194.2.
    expect(claim!.rebateUsdCents).toBe(194 * 250);
    const flags = await asReviewer(({ claimReview }) => claimReview.flags(claim!.id));
    expect(flags.map(({ code }) => code)).toEqual(["evidence-missing"]);
  });

  test("is flagged beside an earlier one of another contractor: same premise, same readings", async () => {
    const id = await submitCopy(other, "copy-1", () => undefined);
    const codes = (await asReviewer(({ claimReview }) => claimReview.flags(id))).map(({ code }) => code);
    expect(codes).toEqual(["evidence-missing", "premise-claimed-twice", "readings-used-twice"]);
  });

  test("is flagged for one instrument at two premises, by name within a contractor only", async () => {
    const elsewhere = (document: object) => {
      const { house, tests } = document as { house: { label: string }; tests: { time?: string; points: object[] }[] };
      house.label = "9 Other Street (invented)";
      tests[2]!.time = "14:40";
      Object.assign(tests[0]!.points[0]!, { fanPressurePa: 190 });
    };
    const codesOf = async (id: string) =>
      (await asReviewer(({ claimReview }) => claimReview.flags(id))).map(({ code }) => code);
    expect(await codesOf(await submitCopy(estimator, "elsewhere-1", elsewhere))).toContain("instrument-in-two-places");
    const stranger = (document: object) => {
      elsewhere(document);
      Object.assign((document as { house: object }).house, { label: "11 Other Street (invented)" });
      const { tests } = document as { tests: { points: object[] }[] };
      Object.assign(tests[1]!.points[0]!, { fanPressurePa: 61 });
    };
    const theirs = await submitCopy(other, "elsewhere-2", stranger);
    const flags = await asReviewer(({ claimReview }) => claimReview.flags(theirs));
    const meeting = flags.find(({ code }) => code === "instrument-in-two-places")?.evidence as { path: string }[];
    // The name "Demo gauge A" of the other contractor at the same minutes is another gauge.
    expect(new Set(meeting.map(({ path }) => path))).toEqual(new Set(["copy-1"]));
  });

  test("is not handed in twice under one number, nor by the crew", async () => {
    await expect(submitCopy(other, "copy-1", () => undefined)).rejects.toMatchObject({ code: "conflict" });
    await expect(submitCopy(crew as never, "crew-1", () => undefined)).rejects.toMatchObject({ code: "not-allowed" });
  });

  test("is recomputed again on demand, and the record says so to both sides", async () => {
    const [claim] = (await received()).filter(({ organizationId }) => organizationId === estimator.organizationId);
    await recheckClaim(database.store, reviewer, claim!);
    const subject = { subjectKind: "claim", subjectId: claim!.id };
    for (const actor of [reviewer, estimator]) {
      const log = await database.store.withOrganization(actor, ({ audit }) => audit.list(subject));
      expect(log.filter(({ action }) => action === "claim.checked").length).toBeGreaterThanOrEqual(2);
    }
    const strangers = await database.store.withOrganization(other, ({ audit }) => audit.list(subject));
    expect(strangers).toEqual([]);
  });
});

describe("a decision", () => {
  const decide = (
    actor: typeof reviewer | typeof estimator,
    id: string,
    from: string,
    to: string,
    reason = "All in order",
  ) => decideClaim(database.store, actor, { id, from: from as never, to: to as never, reason });

  test("takes the claim's way, each step with a reason, and both sides read it", async () => {
    const { id } = (await received()).find(({ reference }) => reference === "copy-1")!;
    await expect(decide(reviewer, id, "submitted", "approved")).rejects.toMatchObject({ code: "outside-range" });
    await decide(reviewer, id, "submitted", "in_review", "Looking at it");
    await expect(decide(reviewer, id, "in_review", "approved", "  ")).rejects.toMatchObject({ code: "outside-range" });
    await decide(reviewer, id, "in_review", "question_open", "Which house is it?");
    await commentClaim(database.store, other, { id, text: "The left half of the double house." });
    await decide(other as never, id, "question_open", "in_review", "Answered");
    await expect(decide(other as never, id, "in_review", "approved")).rejects.toMatchObject({ code: "outside-range" });
    await decide(reviewer, id, "in_review", "approved");
    const events = await asReviewer(({ claimReview }) => claimReview.events(id));
    expect(events.map(({ toState, kind }) => toState ?? kind)).toEqual([
      "in_review",
      "question_open",
      "comment",
      "in_review",
      "approved",
    ]);
    await expect(decide(reviewer, id, "in_review", "declined")).rejects.toMatchObject({ code: "conflict" });
    await expect(decide(estimator, id, "approved", "paid")).rejects.toMatchObject({ code: "not-found" });
  });

  test("shows in the summary: every claim once by state, outcome and contractor", async () => {
    const summary = await asReviewer(({ claims }) => claims.summary());
    const total = (await received()).length;
    for (const counts of [summary.state, summary.recomputeOutcome, summary.organizationId])
      expect(counts.reduce((sum, { claims }) => sum + claims, 0)).toBe(total);
    expect(summary.state.find(({ name }) => name === "approved")?.claims).toBe(1);
    expect(summary.flagged).toBe(total);
  });
});

describe("a rule tried over the claims that are there", () => {
  test("tells whom it touches and changes nothing; only who edits the program may try", async () => {
    const before = await received();
    const standing = before.filter(({ state }) => state !== "withdrawn" && state !== "declined");
    const rule = { ...DEMO_PROGRAM_RULE, houseKinds: ["multifamily" as const] };
    const try_ = (actor: typeof reviewer | typeof estimator, most?: number) =>
      replayProgramRule(database.store, actor, { programId: DEMO_PROGRAM_ID, rule, most });
    const replay = await try_(reviewer);
    // Every example is a site-built house, so each falls out and pays nothing.
    expect(standing.length).toBeGreaterThan(1);
    const all = (total: number) => ({ total, low: total, high: total });
    expect(replay).toMatchObject({
      replayedCount: standing.length,
      standingCount: standing.length,
      touched: all(standing.length),
      rebatesBeforeUsdCents: all(standing.reduce((sum, { rebateUsdCents }) => sum + rebateUsdCents, 0)),
      rebatesAfterUsdCents: all(0),
    });
    expect(await try_(reviewer, 1)).toMatchObject({ replayedCount: 1, standingCount: standing.length });
    expect(await received()).toEqual(before);
    await expect(try_(estimator)).rejects.toMatchObject({ code: "not-allowed" });
  });

  test("becomes an edition of its own, with day and reason, and leaves work that is done under the earlier one", async () => {
    const rule = { ...DEMO_PROGRAM_RULE, title: "Photos from two sides (invented)", measureLifeYears: 15 };
    const edition = { programId: DEMO_PROGRAM_ID, rule, effectiveOn: "2027-01-01", reason: "Photos were too dark." };
    const put = (change: Partial<typeof edition>, actor: typeof reviewer = reviewer) =>
      putRuleInForce(database.store, actor, { ...edition, ...change }, "2026-11-28");
    await expect(put({}, estimator)).rejects.toMatchObject({ code: "not-allowed" });
    await expect(put({ reason: " " })).rejects.toThrow("No reason");
    await expect(put({ effectiveOn: "2026-11-27" })).rejects.toThrow("cannot begin on 2026-11-27");
    await expect(put({ rule: { ...rule, netToGrossRatio: 9 } })).rejects.toThrow();
    await put({});
    await expect(put({})).rejects.toThrow("Another edition begins on 2027-01-01");
    const [held, next, log] = await asReviewer(async ({ programs, audit }) => [
      await programs.ruleOn(DEMO_PROGRAM_ID, new Date("2026-12-31")),
      await programs.ruleOn(DEMO_PROGRAM_ID, new Date("2027-01-01")),
      await audit.list({ subjectKind: "program", subjectId: DEMO_PROGRAM_ID }),
    ]);
    expect(held.document).toMatchObject({ title: DEMO_PROGRAM_RULE.title, measureLifeYears: 18 });
    expect(next.document).toEqual(rule);
    expect(log[0]).toMatchObject({
      action: "program.rule-put-in-force",
      actorId: reviewer.actorId,
      detail: { effectiveOn: "2027-01-01", reason: "Photos were too dark.", ruleId: next.id },
    });
  });
});

describe("a new edition, at the contractors", () => {
  const asEstimator = <T>(work: Parameters<typeof database.store.withOrganization<T>>[1]) =>
    database.store.withOrganization(estimator, work);

  test("is told in plain words, with the open jobs and the claims that it touches", async () => {
    const [notice, ...more] = await asEstimator(unseenRules);
    expect(more).toEqual([]);
    expect(notice).toMatchObject({
      isSeen: false,
      changes: [{ what: "Measure life", was: "18 years", is: "15 years" }],
    });
    const reach = await asEstimator((scope) => ruleReach(scope, notice!.ruleId));
    // The example's work was done in 2026, so job and claim stay under the edition before.
    expect(reach).toMatchObject({ claims: [], hasMore: false });
    const open = await asEstimator(async ({ jobs }) => {
      const job = await jobs.create({ title: "Still to do (invented)" });
      const { tests, ...document } = exampleDocument(FILE) as { tests: { stage: string }[] };
      const before = { ...document, tests: tests.filter(({ stage }) => stage === "existing") };
      await jobs.saveRevision({ jobId: job.id, onRevision: 0, document: before, engineVersion: ENGINE_VERSION });
      return job;
    });
    const { jobs } = await asEstimator((scope) => ruleReach(scope, notice!.ruleId));
    const isOpen = (each: { id: string }) => each.id === open.id;
    expect(jobs.filter(isOpen)).toMatchObject([{ title: "Still to do (invented)", state: "draft", mayTakePart: true }]);
    expect(reach.jobs.some(isOpen)).toBe(false);
  });

  test("is marked as seen once for the whole firm, in the record of both sides; another firm still reads of it", async () => {
    const [notice] = await asEstimator(unseenRules);
    await expect(markRuleSeen(database.store, crew, notice!.ruleId)).rejects.toMatchObject({ code: "not-allowed" });
    await expect(markRuleSeen(database.store, estimator, DEMO_PROGRAM_ID)).rejects.toMatchObject({ code: "not-found" });
    await markRuleSeen(database.store, estimator, notice!.ruleId);
    await markRuleSeen(database.store, estimator, notice!.ruleId);
    expect(await asEstimator(unseenRules)).toEqual([]);
    expect((await asEstimator((scope) => ruleReach(scope, notice!.ruleId))).notice.isSeen).toBe(true);
    const subject = { subjectKind: "program-rule", subjectId: notice!.ruleId };
    const acts = await asReviewer(({ audit }) => audit.list(subject));
    expect(acts).toMatchObject([{ action: "program.rule-seen", organizationId: estimator.organizationId }]);
    expect(acts).toHaveLength(1);
    expect(await database.store.withOrganization(other, unseenRules)).toHaveLength(1);
  });
});

describe("what is told of claims elsewhere", () => {
  test("a table has one line for each claim that the filter leaves, figures to the last digit, no formulas", async () => {
    const all = await received();
    const tableOf = async (filter: Parameters<typeof claimTable>[2]) => {
      let text = "";
      for await (const lines of claimTable(database.store, reviewer, filter)) text += lines;
      return parse<Record<string, string>>(text, { columns: true });
    };
    const rows = await tableOf({});
    expect(rows.map(({ claimId }) => claimId)).toEqual(all.map(({ id }) => id));
    expect(Object.keys(rows[0]!)).toEqual(CLAIM_COLUMNS.map(({ name }) => name));
    expect(Number(rows[0]!.beforeToOutsideCfm25)).toBe(all[0]!.beforeToOutsideCfm25);
    expect(Number(rows[0]!.rebateUsd)).toBe(all[0]!.rebateUsdCents / 100);
    const submitted = all.filter(({ state }) => state === "submitted");
    expect(await tableOf({ state: "submitted" })).toHaveLength(submitted.length);
    await expect(claimTable(database.store, crew, {}).next()).rejects.toMatchObject({ code: "not-allowed" });
    expect(csvLine(['=1+1,"x"', -2.5, null])).toBe('"\'=1+1,""x""",-2.5,\r\n');
  });

  test("the record of a job holds its revisions and every act on its claims, of those only who may see claims", async () => {
    const asEstimator = <T>(work: Parameters<typeof database.store.withOrganization<T>>[1]) =>
      database.store.withOrganization(estimator, work);
    const job = (await asEstimator(({ jobs }) => jobs.findByExample("mixed-crawlspace-retest")))!;
    const log = (withClaims: boolean) =>
      asEstimator((scope) => jobLog(scope, job.id, { now: new Date("2026-12-01"), withClaims }));
    const acts = await log(true);
    const kinds = acts.map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["job.saved", "claim.submitted", "claim.checked"]));
    expect(acts.map(({ at }) => at.getTime())).toEqual(acts.map(({ at }) => at.getTime()).sort((a, b) => b - a));
    expect(acts.find(({ kind }) => kind === "claim.checked")).toMatchObject({ actorId: null, words: "same" });
    expect((await log(false)).every(({ kind }) => !kind.startsWith("claim."))).toBe(true);
  });
});
