"use server";

import { redirect } from "next/navigation";
import { actAs, whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { claimReference, draftClaim, submitClaim } from "#lib/work/claims/submit-claim.ts";

/** Hands in the claim of the job's newest revision, exactly as the page showed it. */
export async function handIn(form: FormData): Promise<void> {
  const jobId = String(form.get("jobId") ?? "");
  const programId = String(form.get("programId") ?? "");
  let to: string;
  try {
    const { draft, reference } = await actAs("claim.submit", async (scope, actor) => {
      const { revision } = await scope.jobs.findCurrent(jobId);
      const program = (await scope.programs.list()).find(({ id }) => id === programId);
      if (!revision || !program) throw new InputProblem("not-found", [], "The job or the program is not there");
      const job = parseJob(revision.document);
      const claimedOn = new Date().toISOString().slice(0, 10);
      return {
        draft: await draftClaim(scope, { job, program, claimedBy: actor.name, claimedOn }),
        reference: claimReference(job.id, revision.revision),
      };
    });
    to = `/program/claims/${await submitClaim(await sharedStore(), await whoActs(), { draft, jobId, reference })}`;
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
    to = `/jobs/${encodeURIComponent(jobId)}/claim?problem=${thrown.code === "conflict" ? "again" : "unfit"}`;
  }
  redirect(to);
}
