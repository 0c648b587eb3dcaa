"use server";

import { redirect } from "next/navigation";
import { whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { cancelImport } from "#lib/work/claims/import-claims.ts";

/** Stops the checking of a file; claims that are in stay in. One that ended meanwhile shows so. */
export async function cancel(form: FormData): Promise<void> {
  try {
    await cancelImport(await sharedStore(), await whoActs(), String(form.get("id") ?? ""));
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
  }
  redirect("/program/import");
}
