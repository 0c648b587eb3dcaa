import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Scope } from "#lib/store/scope.ts";

/**
 * A job as it is calculated today: with the organization's prices in force where it holds none of its own. They are
 * written into the job once an option is chosen or a proposal issued; from then on it keeps them.
 */
export async function jobInForce({ priceBooks }: Scope, job: Job): Promise<Job> {
  if (job.priceBook) return job;
  const prices = await priceBooks.inForceOn(new Date());
  return prices ? { ...job, priceBook: prices.book } : job;
}

/** Writes what is in force into the job, as a new revision where it was not there yet. */
export async function keepInForce(
  scope: Scope,
  jobId: string,
  change: (job: Job) => Job = (job) => job,
): Promise<{ job: Job; revision: number }> {
  const { revision } = await scope.jobs.findCurrent(jobId);
  if (!revision) throw new InputProblem("not-found", [], "This job has no entries yet");
  const saved = parseJob(revision.document);
  const job = change(await jobInForce(scope, saved));
  if (job === saved) return { job, revision: revision.revision };
  const next = await scope.jobs.saveRevision({
    jobId,
    onRevision: revision.revision,
    document: job,
    engineVersion: ENGINE_VERSION,
  });
  return { job, revision: next.revision };
}
