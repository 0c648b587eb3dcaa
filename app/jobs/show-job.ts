import "server-only";
import { notFound, redirect } from "next/navigation";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { JobRecord } from "#lib/store/repositories/jobs.ts";
import { jobInForce } from "./job-in-force.ts";
import { showAs } from "./session.ts";

export interface ShownJob {
  record: JobRecord;
  revision: number;
  /** As it was saved. */
  saved: Job;
  /** As it is calculated today. */
  job: Job;
}

/** A job for its pages; one whose entries cannot be used yet goes back to its trip. */
export async function showJob(id: string): Promise<ShownJob> {
  const shown = await showAs("job.view", async (scope) => {
    const { job: record, revision } = await scope.jobs.findCurrent(id);
    if (!revision) notFound();
    const saved = readJob(revision.document);
    return { record, revision: revision.revision, saved, job: saved && (await jobInForce(scope, saved)) };
  });
  const { saved, job } = shown;
  if (!saved || !job) redirect(`/jobs/${id}/house`);
  return { ...shown, saved, job };
}

function readJob(document: unknown): Job | null {
  try {
    return parseJob(document);
  } catch (thrown) {
    if (thrown instanceof InputProblem) return null;
    throw thrown;
  }
}
