import "server-only";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Scope } from "#lib/store/scope.ts";

export type Measures = NonNullable<NonNullable<Job["plan"]>["chosenMeasures"]>;

/** What the homeowner ordered last: the option's measures as the accepted paper was calculated with them. */
export interface OrderedWork {
  optionTitle: string;
  measures: Measures;
}

/** The work of the newest accepted paper of a job; undefined before anything was ordered. */
export async function orderedWork({ proposals }: Scope, jobId: string): Promise<OrderedWork | undefined> {
  const accepted = (await proposals.list({ jobId, now: new Date() })).find(({ state }) => state === "accepted");
  if (!accepted) return undefined;
  const [{ result }, events] = await Promise.all([proposals.find(accepted.id), proposals.events(accepted.id)]);
  const { optionId } = (events.find(({ kind }) => kind === "accepted")?.payload ?? {}) as { optionId?: string };
  const option = (result as Pick<Result, "scope">).scope.options.find(({ id }) => id === optionId);
  if (!option) return undefined;
  const measures = option.measures.map(({ siteId, repairId }) => ({ siteId, repairId }));
  return { optionTitle: option.title, measures };
}

/** Whether two lists put the same repairs on the same leaks. */
export function areSameMeasures(one: Measures, other: Measures): boolean {
  const key = (measures: Measures) =>
    measures
      .map(({ siteId, repairId }) => `${siteId} ${repairId}`)
      .sort()
      .join("|");
  return key(one) === key(other);
}

/** The job with the ordered work as its plan, for the crew: they do what was ordered, whatever was planned since. */
export function jobAsOrdered(job: Job, ordered: OrderedWork | undefined): Job {
  return ordered ? { ...job, plan: { ...job.plan, chosenMeasures: ordered.measures } } : job;
}
