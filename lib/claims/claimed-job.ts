import type { Job } from "#lib/job/job-schema.ts";

/**
 * The job as a claim carries it: without the contractor's prices and without where a leak stands on the drawing, which
 * bear on no claimed number, and of the organization's own repairs those that were done. So a packet stays small, and
 * margins stay at home.
 */
export function claimedJob({ priceBook: _prices, repairs, ...job }: Job): Job {
  const done = new Set(job.plan?.chosenMeasures?.map(({ repairId }) => repairId));
  const figures = repairs?.figures.filter(({ repairId }) => done.has(repairId)) ?? [];
  const claimed = { ...job, sites: job.sites.map(({ drawnAt: _drawnAt, ...site }) => site) };
  return repairs && figures.length > 0 ? { ...claimed, repairs: { ...repairs, figures } } : claimed;
}
