"use server";

import { redirect } from "next/navigation";
import { actAs, whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { commentClaim, decideClaim } from "#lib/work/claims/decide-claim.ts";
import { recordInspection } from "#lib/work/claims/inspect-claim.ts";
import { recheckClaim } from "#lib/work/claims/submit-claim.ts";
import { isClaimState } from "../../claim-words.ts";

const text = (form: FormData, name: string): string => String(form.get(name) ?? "").trim();

/** Does it, then shows the claim again; what could not be done is said there. */
async function then(id: string, act: () => Promise<void>, problem: string): Promise<never> {
  let query = "";
  try {
    await act();
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
    query = `?problem=${thrown.code === "conflict" ? "moved-on" : problem}`;
  }
  redirect(`/program/claims/${encodeURIComponent(id)}${query}`);
}

export async function decide(form: FormData): Promise<void> {
  const [id, from, to] = [text(form, "id"), text(form, "from"), text(form, "to")];
  if (!isClaimState(from) || !isClaimState(to)) redirect(`/program/claims/${encodeURIComponent(id)}?problem=moved-on`);
  const [store, actor] = [await sharedStore(), await whoActs()];
  await then(id, () => decideClaim(store, actor, { id, from, to, reason: text(form, "reason") }), "no-words");
}

export async function comment(form: FormData): Promise<void> {
  const id = text(form, "id");
  const [store, actor] = [await sharedStore(), await whoActs()];
  await then(id, () => commentClaim(store, actor, { id, text: text(form, "text") }), "no-words");
}

export async function recheck(form: FormData): Promise<void> {
  const id = text(form, "id");
  const [store, actor] = [await sharedStore(), await whoActs()];
  const { programOrganizationId } = await actAs("claim.recompute", ({ claims }) => claims.find(id));
  await then(id, () => recheckClaim(store, actor, { id, programOrganizationId }), "moved-on");
}

export async function inspect(form: FormData): Promise<void> {
  const id = text(form, "id");
  const [store, actor] = [await sharedStore(), await whoActs()];
  const inspection = {
    claimId: id,
    inspectedCfm25: Number(text(form, "inspectedCfm25").replaceAll(",", "")),
    uncertaintyPercent: Number(text(form, "uncertaintyPercent")),
    note: text(form, "note"),
  };
  await then(id, () => recordInspection(store, actor, inspection), "no-reading");
}
