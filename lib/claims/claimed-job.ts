import type { Job } from "#lib/job/job-schema.ts";

/**
 * The job as a claim carries it: without the contractor's prices, which bear on no claimed number, and of the
 * organization's own repairs those that were done. So a packet stays small, and margins stay at home.
 */
export function claimedJob({ priceBook: _prices, repairs, ...job }: Job): Job {
  const done = new Set(job.plan?.chosenMeasures?.map(({ repairId }) => repairId));
  const figures = repairs?.figures.filter(({ repairId }) => done.has(repairId)) ?? [];
  return repairs && figures.length > 0 ? { ...job, repairs: { ...repairs, figures } } : job;
}
