import type { NextRequest } from "next/server";
import { otherPaper, relatedPapers } from "#app/h/papers-of-order.ts";
import { languageOf, proposalByLink } from "#app/h/proposal-by-link.ts";
import { can } from "#lib/access/can.ts";
import { OPEN_STATES, orderableOptions, type PageProblem } from "#lib/documents/html/proposal-page.tsx";
import { renderProposalPage } from "#lib/documents/html/render-proposal-page.ts";
import { readIssuedProposal } from "#lib/documents/issued-proposal.ts";

interface Context {
  params: Promise<{ token: string }>;
}

const LONGEST_QUESTION = 2000;
const LONGEST_NAME = 120;
const HEADERS = {
  "content-type": "text/html; charset=utf-8",
  "cache-control": "private, no-store",
  "referrer-policy": "same-origin",
  "content-security-policy":
    "default-src 'none'; style-src 'unsafe-inline'; font-src 'self'; img-src data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
} as const;

/** The homeowner's page by link; the first visit is recorded. */
export async function GET(request: NextRequest, { params }: Context): Promise<Response> {
  const { token } = await params;
  const link = await proposalByLink(token);
  if (!link) return unknownLink();
  const own = await link.read();
  const { proposal, state, events } = own;
  const query = request.nextUrl.searchParams;
  const papers = await link.papersOfOrder(own);
  const other = otherPaper(papers, query.get("of"));
  if (other) {
    const html = await renderProposalPage({
      issued: readIssuedProposal(other.proposal.view),
      language: languageOf(query.get("lang")),
      path: `/h/${token}`,
      fingerprint: other.proposal.contentHash,
      state: other.state,
      events: other.accepted ? [other.accepted] : [],
      readOnlyAs: other === papers.newer ? "newer" : "earlier",
    });
    return new Response(html, { headers: HEADERS });
  }
  if (!events.some(({ kind }) => kind === "seen")) await link.record("seen");
  const html = await renderProposalPage({
    related: relatedPapers(papers),
    issued: readIssuedProposal(proposal.view),
    language: languageOf(query.get("lang")),
    path: `/h/${token}`,
    fingerprint: proposal.contentHash,
    state,
    events,
    hasJustAsked: query.get("done") === "asked",
  });
  return new Response(html, { headers: HEADERS });
}

/** A question, or the acceptance of one option with a typed name and the fingerprint of the paper that was read. */
export async function POST(request: NextRequest, { params }: Context): Promise<Response> {
  const { token } = await params;
  const link = await proposalByLink(token);
  if (!link) return unknownLink();
  const own = await link.read();
  const { proposal, state, events } = own;
  const issued = readIssuedProposal(proposal.view);
  const form = await request.formData();
  const field = (name: string) => String(form.get(name) ?? "").trim();
  const language = languageOf(field("lang"));
  const path = `/h/${token}`;
  const back = (query: string) =>
    new Response(null, { status: 303, headers: { location: `${path}?lang=${language}${query}` } });
  const typed = { option: field("option"), name: field("name"), question: field("question") };
  const problems: PageProblem[] = [];

  if (field("intent") === "ask" && can(link.actor, "proposal.ask", link.actor)) {
    if (typed.question.length >= 1 && typed.question.length <= LONGEST_QUESTION) {
      await link.record("asked", { text: typed.question });
      return back("&done=asked");
    }
    problems.push("question");
  } else if (field("intent") === "accept" && can(link.actor, "proposal.accept", link.actor)) {
    if (!OPEN_STATES.includes(state)) return back("");
    if (field("fingerprint") !== proposal.contentHash) problems.push("changed");
    const option = orderableOptions(issued, language).find(({ id }) => id === typed.option);
    if (!option) problems.push("option");
    if (!(typed.name.length >= 2 && typed.name.length <= LONGEST_NAME)) problems.push("name");
    if (field("agree") !== "yes") problems.push("agree");
    if (option && problems.length === 0) {
      await link.record("accepted", {
        optionId: option.id,
        price: option.price,
        name: typed.name,
        language,
        fingerprint: proposal.contentHash,
        date: new Date().toISOString().slice(0, 10),
      });
      return back("");
    }
  }
  const html = await renderProposalPage({
    related: relatedPapers(await link.papersOfOrder(own)),
    issued,
    language,
    path,
    fingerprint: proposal.contentHash,
    state,
    events,
    problems,
    typed,
  });
  return new Response(html, { status: 422, headers: HEADERS });
}

function unknownLink(): Response {
  const text = "<h1>No paper is found at this link.</h1><p>Check the link, or ask the firm that sent it.</p>";
  return new Response(`<!doctype html><html lang="en-US"><title>Not found</title><main>${text}</main></html>`, {
    status: 404,
    headers: HEADERS,
  });
}
