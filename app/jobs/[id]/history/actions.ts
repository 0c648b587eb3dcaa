"use server";

import { redirect } from "next/navigation";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { restoreRevision } from "../../trip/save-job.ts";

/** Makes an earlier revision the newest one; when somebody saved meanwhile, nothing is done and the page says so. */
export async function restore(form: FormData): Promise<void> {
  const jobId = String(form.get("jobId") ?? "");
  const revision = Number(form.get("revision"));
  let outcome = `restored=${revision}`;
  try {
    await restoreRevision({ jobId, onRevision: Number(form.get("onRevision")), revision });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem && thrown.code === "conflict")) throw thrown;
    outcome = "meanwhile=1";
  }
  redirect(`/jobs/${jobId}/history?${outcome}`);
}
