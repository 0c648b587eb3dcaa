import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { DEMO_PROGRAM_ID, seedDemo } from "#lib/access/seed-demo.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { ERROR_TABLE, type ErrorCode } from "#lib/errors/error-table.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { API_BASE, type ApiOperation } from "#lib/exchange/api/api-operation.ts";
import { API_SCOPES } from "#lib/exchange/api/api-scope.ts";
import { EXAMPLE_JOB, fillExample } from "#lib/exchange/api/fill-example.ts";
import { problemSchema } from "#lib/exchange/api/openapi.ts";
import { API_OPERATIONS } from "#lib/exchange/api/operations.ts";
import { writeHpxml } from "#lib/exchange/hpxml/write-hpxml.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { problemResponse, serveApi } from "#lib/work/api/serve-api.ts";
import { draftClaim } from "#lib/work/claims/submit-claim.ts";
import { exampleDocument, exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const HERE = "http://127.0.0.1:3000";
const { owner, reviewer, crew } = DEMO_IDENTITIES;
let database: TemporaryDatabase;
let keys: Record<"owner" | "reviewer" | "crew" | "readOnly", string>;
let claim: Claim;
let hpxml: string;

const makeKey = async (actor: typeof owner | typeof reviewer | typeof crew, scopes: readonly string[]) =>
  (await database.store.withOrganization(actor, ({ apiKeys }) => apiKeys.create({ name: "test", scopes }))).key;

interface Call {
  key?: string | null;
  body?: unknown;
  text?: string;
  headers?: Record<string, string>;
}

function call(method: string, path: string, { key = keys.owner, body, text, headers = {} }: Call = {}) {
  const sent = text ?? (body === undefined ? undefined : JSON.stringify(body));
  return serveApi(
    database.store,
    new Request(`${HERE}${API_BASE}${path}`, {
      method,
      headers: { ...(key === null ? {} : { authorization: `Bearer ${key}` }), ...headers },
      ...(sent === undefined ? {} : { body: sent }),
    }),
  );
}

const json = async (response: Response) => (await response.json()) as Record<string, unknown>;

beforeAll(async () => {
  database = await temporaryDatabase();
  const document = exampleDocument("mixed-crawlspace-retest.json");
  const seeded = { key: "retest", title: String(document.title), searchWords: "", document };
  await seedDemo(database.store, [seeded], ENGINE_VERSION);
  const all = Object.keys(API_SCOPES);
  keys = {
    owner: await makeKey(owner, all),
    reviewer: await makeKey(reviewer, all),
    crew: await makeKey(crew, all),
    readOnly: await makeKey(owner, ["claims:read"]),
  };
  const retest = await exampleWithReference("mixed-crawlspace-retest.json");
  hpxml = writeHpxml({
    job: retest.job,
    result: await estimate(retest.job, retest.reference),
    elevationFt: retest.reference.climate.elevationFt,
    date: "2026-11-25",
  });
  ({ claim } = await database.store.withOrganization(owner, async (scope) => {
    const program = (await scope.programs.list()).find(({ id }) => id === DEMO_PROGRAM_ID)!;
    const job = parseJob(document);
    return draftClaim(scope, { job, program, claimedBy: "X (invented)", claimedOn: "2026-11-21", draws: 20 });
  }));
});
afterAll(() => database.remove());

describe("the examples of the docs", () => {
  it("are executed in the order of the docs, and each answer fits the schema that OpenAPI shows", async () => {
    const ids: Record<string, unknown> = {
      [EXAMPLE_JOB.name]: JSON.parse(readFileSync(EXAMPLE_JOB.file, "utf8")),
      claim,
      programId: DEMO_PROGRAM_ID,
      contractorId: owner.organizationId,
      hpxml,
    };
    for (const operation of API_OPERATIONS) {
      const answer = await execute(operation, ids);
      const read = operation.answer.safeParse(answer);
      expect(read.error?.issues, operation.operationId).toBeUndefined();
      if (operation.operationId === "createJob") ids.jobId = answer.id;
      if (operation.operationId === "submitClaim") ids.claimId = answer.id;
      if (operation.operationId === "recompute") expect(answer).toMatchObject({ outcome: "same" });
      if (operation.operationId === "submitClaim")
        expect(answer).toMatchObject({ state: "submitted", recomputeOutcome: "same" });
      if (operation.operationId === "receiveHpxmlClaim")
        expect(answer).toMatchObject({
          claim: { recomputeOutcome: "same", contractorId: owner.organizationId },
          unread: expect.arrayContaining([expect.stringContaining("only its measured duct leakage was read")]),
        });
      if (operation.operationId === "decideOnClaim") expect(answer).toMatchObject({ state: "in_review" });
      // Source: NIST standard atmosphere and psychrolib carry the density itself; here only that the same number leaves.
      if (operation.operationId === "runMethod") expect(answer.densityLbPerFt3).toBeCloseTo(0.075, 3);
    }
  }, 120_000);

  async function execute(operation: ApiOperation, ids: Record<string, unknown>) {
    const { example, method, status, operationId } = operation;
    const filled = fillExample(example, ids) as ApiOperation["example"] | undefined;
    if (!filled) throw new Error(`${operationId} shows an example with something unknown in it`);
    const path = operation.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => filled.path![name]!);
    const query = filled.query ? `?${new URLSearchParams(filled.query)}` : "";
    const isProgram = operationId === "decideOnClaim" || operationId === "receiveHpxmlClaim";
    const key = isProgram ? keys.reviewer : keys.owner;
    const response = await call(method, `${path}${query}`, { key, body: filled.body });
    const answer = await json(response);
    expect(response.status, `${operationId}: ${JSON.stringify(answer).slice(0, 600)}`).toBe(status);
    return answer;
  }
});

describe("a problem", () => {
  it.each(Object.keys(ERROR_TABLE) as ErrorCode[])("with the code %s leaves as RFC 9457 asks", async (code) => {
    const request = new Request(`${HERE}${API_BASE}/jobs`);
    const errors = [{ pointer: "#/x", detail: "d", code: "c", fix: "f" }];
    const response = problemResponse(new InputProblem(code, errors, "This case"), request);
    expect(response.headers.get("content-type")).toBe("application/problem+json");
    const body = problemSchema.parse(await response.json());
    expect(body).toMatchObject({ type: `${HERE}/problems/${code}`, title: ERROR_TABLE[code].title, errors });
    expect(response.status).toBeGreaterThanOrEqual(400);
    // RFC 9457 §3.1.2: the status in the body, when it is there, is the status of the answer.
    expect(body.status).toBe(response.status);
  });

  it("never spells out what was not expected", async () => {
    const response = problemResponse(new Error("SELECT secret FROM somewhere"), new Request(HERE));
    expect(response.status).toBe(500);
    expect(await response.text()).not.toContain("SELECT");
  });

  const wrong: [string, () => Promise<Response>, ErrorCode][] = [
    ["no key", () => call("GET", "/jobs", { key: null }), "key-unknown"],
    ["a key that nobody made", () => call("GET", "/jobs", { key: "ductmend_guess" }), "key-unknown"],
    ["a key without the scope", () => call("GET", "/jobs", { key: keys.readOnly }), "scope-missing"],
    ["what the member may not do", () => call("GET", "/claims", { key: keys.crew }), "not-allowed"],
    ["a job of nobody", () => call("GET", "/jobs/d0000001-0000-4000-8000-00000000dead"), "not-found"],
    ["an id that is none", () => call("GET", "/jobs/%E0%A4%A"), "not-found"],
    ["an unknown address", () => call("GET", "/nothing"), "not-found"],
    ["an unknown method", () => call("DELETE", "/jobs"), "method-not-allowed"],
    [
      "a house as HPXML from a contractor's key",
      () =>
        call("POST", "/claims/hpxml", {
          body: { contractorId: owner.organizationId, fileName: "house.xml", hpxml },
        }),
      "not-allowed",
    ],
    [
      "a house that is no HPXML",
      () =>
        call("POST", "/claims/hpxml", {
          key: keys.reviewer,
          body: { contractorId: owner.organizationId, fileName: "house.xml", hpxml: "<Other/>" },
        }),
      "input-unusable",
    ],
    ["text for JSON", () => call("POST", "/estimate", { text: "{" }), "input-not-json"],
    ["an unknown field", () => call("POST", "/estimate", { body: { jobb: 1 } }), "input-unusable"],
    ["an unknown filter", () => call("GET", "/jobs?page=2"), "input-unusable"],
    ["a cursor that is none", () => call("GET", "/jobs?cursor=abc"), "input-unusable"],
    ["a calculation nobody knows", () => call("POST", "/methods/air-densty", { body: {} }), "method-unknown"],
    ["too much", () => call("POST", "/estimate", { text: " ".repeat(2_000_001) }), "body-too-large"],
    [
      "a packet with one digit changed",
      () =>
        call("POST", "/claims", {
          body: { programId: DEMO_PROGRAM_ID, reference: "t", claim: { ...claim, claimedBy: "Somebody else" } },
        }),
      "claim-invalid",
    ],
    [
      "an old revision",
      async () => {
        const { items } = (await json(await call("GET", "/jobs"))) as { items: { id: string }[] };
        const job = exampleDocument("mixed-crawlspace-retest.json");
        return call("PUT", `/jobs/${items[0]!.id}`, { body: { onRevision: 0, job } });
      },
      "conflict",
    ],
  ];
  it.each(wrong)("answers %s", async (_, ask, code) => {
    const response = await ask();
    const body = problemSchema.parse(await response.json());
    expect([response.status, body.type]).toEqual([ERROR_TABLE[code].status, `${HERE}/problems/${code}`]);
  });

  it("names the methods that an address knows, and the scheme of the key", async () => {
    expect((await call("DELETE", "/jobs")).headers.get("allow")).toBe("GET, POST");
    expect((await call("GET", "/jobs", { key: null })).headers.get("www-authenticate")).toBe("Bearer");
  });
});

describe("a repeated request", () => {
  const create = (idempotencyKey: string, title: string) =>
    call("POST", "/jobs", {
      body: { title, job: exampleDocument("inside-ducts-furnace.json") },
      headers: { "idempotency-key": idempotencyKey },
    });

  it("does its work once and gets the same answer", async () => {
    const first = await create("once-1", "Once");
    const again = await create("once-1", "Once");
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(await json(again)).toEqual(await json(first));
    const { items } = (await json(await call("GET", "/jobs?search=once"))) as { items: unknown[] };
    expect(items).toHaveLength(1);
  });

  it("does its work once however many come at the same moment", async () => {
    const answers = await Promise.all(Array.from({ length: 6 }, () => create("once-2", "Together")));
    const statuses = answers.map(({ status }) => status);
    expect(statuses.every((status) => status === 201 || status === 409)).toBe(true);
    const { items } = (await json(await call("GET", "/jobs?search=together"))) as { items: unknown[] };
    expect(items).toHaveLength(1);
  });

  it("is refused when the content is another", async () => {
    expect((await create("once-1", "Other")).status).toBe(ERROR_TABLE["repeat-differs"].status);
  });

  it("may be tried again after it failed", async () => {
    const ask = (body: unknown) => call("POST", "/jobs", { body, headers: { "idempotency-key": "again" } });
    expect((await ask({ title: "x" })).status).toBe(422);
    expect((await ask({ title: "x", job: exampleDocument("inside-ducts-furnace.json") })).status).toBe(201);
  });
});

describe("a list", () => {
  it("is read page by page, each item once, to its end", async () => {
    const seen: string[] = [];
    let cursor: string | undefined;
    for (let page = 0; page < 50; page++) {
      const query = new URLSearchParams({ limit: "2", ...(cursor && { cursor }) });
      const answer = (await json(await call("GET", `/jobs?${query}`))) as {
        items: { id: string }[];
        nextCursor?: string;
      };
      seen.push(...answer.items.map(({ id }) => id));
      cursor = answer.nextCursor;
      if (!cursor) break;
    }
    const all = await database.store.withOrganization(owner, ({ jobs }) => jobs.list({ limit: 500 }));
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual(all.items.map(({ id }) => id));
  });
});

describe("a key", () => {
  it("is kept as its SHA-256 only, notes its use, and opens nothing once it is revoked", async () => {
    const { id, key } = await database.store.withOrganization(owner, ({ apiKeys }) =>
      apiKeys.create({ name: "short", scopes: ["jobs:read"] }),
    );
    expect((await call("GET", "/jobs", { key })).status).toBe(200);
    const kept = (await database.store.withOrganization(owner, ({ apiKeys }) => apiKeys.list())).find(
      (each) => each.id === id,
    )!;
    expect(kept.lastUsedAt).not.toBeNull();
    expect(JSON.stringify(kept)).not.toContain(key.slice("ductmend_".length));
    await database.store.withOrganization(owner, ({ apiKeys }) => apiKeys.revoke(id));
    expect((await call("GET", "/jobs", { key })).status).toBe(401);
  });

  it("shows one organization nothing of another", async () => {
    const { items } = (await json(await call("GET", "/jobs", { key: keys.owner }))) as { items: { id: string }[] };
    // The program's member may not see jobs at all, and row-level security would hide them anyway.
    expect((await call("GET", `/jobs/${items[0]!.id}`, { key: keys.reviewer })).status).toBe(403);
  });
});
