import { NextRequest } from "next/server";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { GET as getPdf } from "#app/h/[token]/pdf/route.ts";
import { GET, POST } from "#app/h/[token]/route.ts";
import { GET as getFont } from "#app/h/fonts/[name]/route.ts";
import { issueProposal } from "#lib/documents/issued-proposal.ts";
import { estimatedExample } from "#tests/documents/estimated-examples.ts";
import { ALPHA, addJob, type TemporaryDatabase, temporaryDatabase } from "#tests/store/temporary-database.ts";

const STORE = Symbol.for("ductmend.store");
const holder = globalThis as typeof globalThis & { [STORE]?: unknown };
const LATER = new Date(Date.now() + 30 * 86_400_000);
const ORIGIN = "http://127.0.0.1:3000";

let database: TemporaryDatabase;
let jobId: string;

beforeAll(async () => {
  database = await temporaryDatabase();
  holder[STORE] = Promise.resolve(database.store);
  jobId = await addJob(database.store, ALPHA);
});
afterAll(async () => {
  delete holder[STORE];
  await database.remove();
});

/** Each paper says another day, so that no two have the same fingerprint. */
let day = 0;
const nextDay = () => {
  day += 1;
  return `2026-10-${String(day).padStart(2, "0")}`;
};

async function issue(expiresAt = LATER, supersedesId?: string) {
  const { job, result } = await estimatedExample("mixed-crawlspace-heat-pump.json");
  return database.store.withOrganization(ALPHA, ({ proposals }) =>
    proposals.issue({
      jobId,
      jobRevision: 1,
      engineVersion: result.engineVersion,
      result,
      view: issueProposal({ job, result, isoDate: nextDay(), contractor: { name: "Invented Sealing" } }),
      expiresAt,
      ...(supersedesId ? { supersedesId } : {}),
    }),
  );
}

const accept = (linkToken: string, fingerprint: string) =>
  send(linkToken, { intent: "accept", option: "target", name: "Ada Invented", agree: "yes", fingerprint });

const context = (token: string) => ({ params: Promise.resolve({ token }) });
const open = (token: string, query = "") => GET(new NextRequest(`${ORIGIN}/h/${token}${query}`), context(token));
function send(token: string, fields: Record<string, string>) {
  const body = new URLSearchParams(fields);
  return POST(new NextRequest(`${ORIGIN}/h/${token}`, { method: "POST", body }), context(token));
}
const eventsOf = (proposalId: string) =>
  database.store.withOrganization(ALPHA, ({ proposals }) => proposals.events(proposalId));
const kindsOf = async (proposalId: string) => (await eventsOf(proposalId)).map(({ kind }) => kind);

describe("the homeowner's page", () => {
  test("opens by link in both languages, without script, and its first visit is seen", async () => {
    const { proposal, linkToken } = await issue();
    const page = await open(linkToken);
    const html = await page.text();
    expect(page.status).toBe(200);
    expect(html).toContain("Your ducts are worth sealing.");
    expect(html).toContain(proposal.contentHash);
    expect(html).not.toContain("<script");
    expect(page.headers.get("content-security-policy")).toContain("default-src 'none'");
    expect(await (await open(linkToken, "?lang=es")).text()).toContain("Vale la pena sellar sus ductos.");
    expect(await kindsOf(proposal.id)).toEqual(["seen"]);
  });

  test("a link that was never given out leads nowhere", async () => {
    expect((await open("not-a-link")).status).toBe(404);
    expect((await send("not-a-link", { intent: "ask", question: "?" })).status).toBe(404);
    const pdf = await getPdf(new NextRequest(`${ORIGIN}/h/not-a-link/pdf`), context("not-a-link"));
    expect(pdf.status).toBe(404);
  });

  test("a question is kept and shown; an empty one is asked for again", async () => {
    const { proposal, linkToken } = await issue();
    expect((await send(linkToken, { intent: "ask", question: "Will <b>dust</b> come?" })).status).toBe(303);
    expect(await (await open(linkToken)).text()).toContain("Will &lt;b&gt;dust&lt;/b&gt; come?");
    const empty = await send(linkToken, { intent: "ask", question: "  " });
    expect(empty.status).toBe(422);
    expect(await empty.text()).toContain("Enter your question");
    expect(await kindsOf(proposal.id)).toEqual(["asked", "seen"]);
  });

  test("an option is accepted with a name, the box and the fingerprint, and once only", async () => {
    const { proposal, linkToken } = await issue();
    const whole = {
      intent: "accept",
      option: "target",
      name: "Ada Invented",
      agree: "yes",
      fingerprint: proposal.contentHash,
    };
    const wrong: Record<string, string>[] = [
      { ...whole, option: "nothing" },
      { ...whole, name: " " },
      { ...whole, agree: "" },
      { ...whole, fingerprint: "0".repeat(64) },
    ];
    for (const fields of wrong) expect((await send(linkToken, fields)).status).toBe(422);
    expect(await kindsOf(proposal.id)).toEqual([]);
    expect((await send(linkToken, whole)).status).toBe(303);
    expect((await send(linkToken, { ...whole, name: "Somebody Else" })).status).toBe(303);
    const [accepted, ...others] = await eventsOf(proposal.id);
    expect(others).toEqual([]);
    expect(accepted).toMatchObject({
      kind: "accepted",
      actorId: null,
      payload: { optionId: "target", name: "Ada Invented", fingerprint: proposal.contentHash },
    });
    const html = await (await open(linkToken)).text();
    expect(html).toContain("signed as Ada Invented");
    expect(html).not.toContain('value="accept"');
  });

  test("an expired proposal can be read and asked about, but not accepted", async () => {
    const { proposal, linkToken } = await issue(new Date(Date.now() - 1000));
    const html = await (await open(linkToken)).text();
    expect(html).toContain("can not be accepted any more");
    expect(html).not.toContain('value="accept"');
    await send(linkToken, {
      intent: "accept",
      option: "target",
      name: "Ada Invented",
      agree: "yes",
      fingerprint: proposal.contentHash,
    });
    expect(await kindsOf(proposal.id)).toEqual(["seen"]);
  });

  test("a paper that was replaced says so, links the newer one, and can not be accepted", async () => {
    const first = await issue();
    const second = await issue(LATER, first.proposal.id);
    const html = await (await open(first.linkToken)).text();
    expect(html).toContain("There is a newer paper");
    expect(html).toContain(second.proposal.contentHash.slice(0, 12));
    expect(html).toContain("A newer paper took its place");
    expect(html).not.toContain('value="accept"');
    await accept(first.linkToken, first.proposal.contentHash);
    expect(await kindsOf(first.proposal.id)).toEqual(["seen"]);
    expect(await (await open(second.linkToken)).text()).not.toContain("There is a newer paper");
  });

  test("an accepted paper and its change orders name and link each other, in both languages", async () => {
    const order = await issue();
    await accept(order.linkToken, order.proposal.contentHash);
    const withdrawn = await issue(LATER, order.proposal.id);
    const change = await issue(LATER, withdrawn.proposal.id);
    const stands = await (await open(order.linkToken)).text();
    expect(stands).toContain("You accepted this paper");
    expect(stands).toContain("the firm wrote a change order");
    expect(stands).toContain(`?of=newer&amp;lang=en`);
    expect(stands).toContain(change.proposal.contentHash.slice(0, 12));
    expect(await (await open(order.linkToken, "?lang=es")).text()).toContain("la empresa escribió una orden de cambio");
    const ofChange = await (await open(change.linkToken)).text();
    expect(ofChange).toContain("This is a change to the paper that you accepted on");
    expect(ofChange).toContain(order.proposal.contentHash.slice(0, 12));

    // Read through the other's link: the other paper itself, without forms, and not marked as seen.
    const through = await (await open(order.linkToken, "?of=newer")).text();
    expect(through).toContain(change.proposal.contentHash);
    expect(through).not.toContain("<form");
    expect(through).toContain("Back to the paper of your link");
    expect(await (await open(change.linkToken, "?of=earlier")).text()).toContain("signed as Ada Invented");
    const request = new NextRequest(`${ORIGIN}/h/${order.linkToken}/pdf?of=newer`);
    const file = (await getPdf(request, context(order.linkToken))).headers.get("content-disposition");
    expect(file).toContain(change.proposal.contentHash.slice(0, 12));

    await accept(change.linkToken, change.proposal.contentHash);
    expect(await (await open(order.linkToken)).text()).toContain("You accepted the change order of");
    expect(await kindsOf(change.proposal.id)).toEqual(["seen", "accepted"]);
  });

  test("a link shows no paper of another order", async () => {
    const [one, other] = [await issue(), await issue()];
    const html = await (await open(one.linkToken, "?of=newer")).text();
    expect(html).toContain(one.proposal.contentHash);
    expect(html).not.toContain(other.proposal.contentHash.slice(0, 12));
  });

  test("the PDF is the same paper, in the language and on the sheet asked for", async () => {
    const { linkToken } = await issue();
    const request = new NextRequest(`${ORIGIN}/h/${linkToken}/pdf?lang=es&paper=a4`);
    const pdf = Buffer.from(await (await getPdf(request, context(linkToken))).arrayBuffer()).toString("latin1");
    expect(pdf.startsWith("%PDF-")).toBe(true);
    expect(pdf).toContain("/Lang (es-US)");
    expect(pdf).toMatch(/\/MediaBox \[0 0 595/);
  });

  test("gives out its own letters and no other file", async () => {
    const font = (name: string) => getFont(new Request(ORIGIN), { params: Promise.resolve({ name }) });
    expect((await font("serif-600.woff2")).headers.get("content-type")).toBe("font/woff2");
    for (const name of ["constructor", "../../package.json", "serif-900.woff2"])
      expect((await font(name)).status).toBe(404);
  });
});
