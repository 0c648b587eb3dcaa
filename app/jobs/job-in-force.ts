import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { JobRepairs } from "#lib/job/repair-figures.ts";
import { repairsInForce, withNewRepairs } from "#lib/scope/own-repairs.ts";
import type { Scope } from "#lib/store/scope.ts";

/**
 * A job as it is calculated today: with the organization's prices and repairs in force where it holds none of its own.
 * They are written into the job once an option is chosen or a proposal issued; from then on it keeps them.
 */
export async function jobInForce(scope: Scope, job: Job): Promise<Job> {
  const prices = job.priceBook ? undefined : await scope.priceBooks.inForceOn(new Date());
  const repairs = job.repairs ? undefined : await ownRepairs(scope);
  if (!prices && !repairs) return job;
  return { ...job, ...(prices ? { priceBook: prices.book } : {}), ...(repairs ? { repairs } : {}) };
}

async function ownRepairs({ repairs }: Scope): Promise<JobRepairs | undefined> {
  const newest = await repairs.newest();
  if (!newest) return undefined;
  const { usesRetests } = newest;
  return repairsInForce({
    catalogue: withNewRepairs(newest.catalogue),
    usesRetests,
    retests: usesRetests ? await repairs.experience() : [],
  });
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
