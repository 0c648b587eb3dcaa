"use server";

import { redirect } from "next/navigation";
import { whoActs } from "#app/jobs/session.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { markRuleSeen } from "#lib/work/claims/rule-notices.ts";

/** Somebody of the firm has read of a new rule; the lists stop telling of it. */
export async function markSeen(form: FormData): Promise<void> {
  const ruleId = String(form.get("ruleId") ?? "");
  await markRuleSeen(await sharedStore(), await whoActs(), ruleId);
  redirect(`/program/changed-rules/${ruleId}`);
}
