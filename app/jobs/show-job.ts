import "server-only";
import { notFound, redirect } from "next/navigation";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { JobRecord } from "#lib/store/repositories/jobs.ts";
import { jobInForce } from "./job-in-force.ts";
import { showAs } from "./session.ts";
import { stepOfPath } from "./trip/missing.ts";
import { TRIP_STEPS, type TripStepId } from "./trip/trip-steps.ts";

export interface ShownJob {
  record: JobRecord;
  revision: number;
  /** As it was saved. */
  saved: Job;
  /** As it is calculated today. */
  job: Job;
}

/** A job for its pages; one whose entries cannot be used yet goes back to the first step that lacks something. */
export async function showJob(id: string): Promise<ShownJob> {
  const shown = await showAs("job.view", async (scope) => {
    const { job: record, revision } = await scope.jobs.findCurrent(id);
    if (!revision) notFound();
    const { saved, lacking } = readJob(revision.document);
    if (lacking) return { lacking };
    return { record, revision: revision.revision, saved, job: await jobInForce(scope, saved) };
  });
  if (shown.lacking) redirect(`/jobs/${id}/${firstStepOf(shown.lacking)}?needed=result`);
  return shown;
}

function firstStepOf(problems: readonly FieldProblem[]): TripStepId {
  const lacking = new Set(problems.map(({ pointer }) => stepOfPath(pointer.replace(/^#\//, ""))));
  return TRIP_STEPS.find((step) => lacking.has(step)) ?? "house";
}

/** The job, or what keeps its entries from being one. */
function readJob(
  document: unknown,
): { saved: Job; lacking?: never } | { saved?: never; lacking: readonly FieldProblem[] } {
  try {
    return { saved: parseJob(document) };
  } catch (thrown) {
    if (thrown instanceof InputProblem) return { lacking: thrown.errors };
    throw thrown;
  }
}
