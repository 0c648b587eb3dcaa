"use server";

import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { contractorOf } from "#app/organization/contractor-of.ts";
import { orderableOptions } from "#lib/documents/html/proposal-page.tsx";
import { issueProposal, readIssuedProposal } from "#lib/documents/issued-proposal.ts";
import type { AcceptedOrder } from "#lib/documents/proposal/proposal-context.ts";
import type { Language } from "#lib/pictures/scene.ts";
import type { Scope } from "#lib/store/scope.ts";
import { computeResult } from "../../compute-result.ts";
import { keepInForce } from "../../job-in-force.ts";
import { actAs } from "../../session.ts";
import { linkCookie } from "./link-cookie.ts";

const DAYS_OPEN = 30;
const DAY_MS = 86_400_000;
const isoDay = (date: Date): string => date.toISOString().slice(0, 10);
/** The link's token is given out once; this device keeps it for the hour in which it is sent. */
const LINK_SHOWN_SECONDS = 3600;

/** Freezes the job with the prices in force, and its result, as a proposal. */
export async function issue(form: FormData): Promise<void> {
  const jobId = String(form.get("jobId") ?? "");
  const { job, revision } = await actAs("proposal.issue", (scope) => keepInForce(scope, jobId));
  const result = await computeResult(job);
  const now = new Date();
  const expiresAt = new Date(now.getTime() + DAYS_OPEN * DAY_MS);
  const linkToken = await actAs("proposal.issue", async ({ proposals, organizations }) => {
    const organization = await organizations.own();
    const contractor = contractorOf(organization);
    const standing = (await proposals.list({ jobId, now })).filter(({ state }) => state !== "superseded");
    const [newest] = standing;
    const replaced = newest && newest.state !== "accepted" ? newest : undefined;
    const accepted = standing.find(({ state }) => state === "accepted");
    const changes = accepted ? await acceptedOrder(proposals, accepted) : undefined;
    const supersedesId = (replaced ?? accepted)?.id;
    const view = issueProposal({
      job,
      result,
      isoDate: isoDay(now),
      contractor,
      expiresOn: isoDay(expiresAt),
      ...(replaced ? { replaces: replaced.contentHash } : {}),
      ...(changes ? { changes } : {}),
    });
    const issued = await proposals.issue({
      jobId,
      jobRevision: revision,
      engineVersion: result.engineVersion,
      result,
      view,
      expiresAt,
      ...(supersedesId ? { supersedesId } : {}),
    });
    return issued.linkToken;
  });
  (await cookies()).set(linkCookie(jobId), linkToken, {
    httpOnly: true,
    sameSite: "strict",
    maxAge: LINK_SHOWN_SECONDS,
    path: `/jobs/${jobId}/proposal`,
  });
  redirect(`/jobs/${jobId}/proposal`);
}

/** What the homeowner ordered with an accepted paper, in both languages as that paper says it. */
async function acceptedOrder(
  proposals: Scope["proposals"],
  { id, contentHash }: { id: string; contentHash: string },
): Promise<AcceptedOrder | undefined> {
  const [{ view }, events] = await Promise.all([proposals.find(id), proposals.events(id)]);
  const accepted = events.find(({ kind }) => kind === "accepted");
  if (!accepted) return undefined;
  const issued = readIssuedProposal(view);
  const { optionId } = accepted.payload as { optionId?: string };
  const orderedIn = (language: Language) => {
    const card = orderableOptions(issued, language).find((option) => option.id === optionId);
    return { option: card?.title ?? optionId ?? "", price: card?.price ?? "" };
  };
  return {
    fingerprint: contentHash,
    acceptedOn: isoDay(accepted.createdAt),
    ordered: { en: orderedIn("en"), es: orderedIn("es") },
  };
}

/** Marks a proposal as sent, once the link has left this desk. */
export async function markSent(form: FormData): Promise<void> {
  const proposalId = String(form.get("proposalId") ?? "");
  await actAs("proposal.issue", ({ proposals }) => proposals.recordEvent(proposalId, "sent"));
  redirect(`/jobs/${String(form.get("jobId") ?? "")}/proposal`);
}

/** Answers what the homeowner asked. */
export async function answer(form: FormData): Promise<void> {
  const text = String(form.get("text") ?? "")
    .trim()
    .slice(0, 4000);
  const proposalId = String(form.get("proposalId") ?? "");
  if (text !== "")
    await actAs("proposal.answer", ({ proposals }) => proposals.recordEvent(proposalId, "answered", { text }));
  redirect(`/jobs/${String(form.get("jobId") ?? "")}/proposal`);
}
