import type { Job } from "#lib/job/job-schema.ts";

/** Fans and gauges that a test names, each fan with the calibrations that its tests were read by. */
function usedInstruments({ instruments, tests }: Job): Job["instruments"] {
  if (!instruments) return undefined;
  const fanTests = tests.flatMap((test) =>
    test.kind === "total-leakage" || test.kind === "leakage-to-outside" ? [test] : [],
  );
  const fans = instruments.fans?.flatMap((fan) => {
    const own = tests.some(({ fanId }) => fanId === fan.id);
    if (!own) return [];
    const read = fan.calibrations.filter(({ direction, restrictorId }) =>
      fanTests.some(
        (test) =>
          test.fanId === fan.id &&
          test.direction === direction &&
          test.points.some((point) => point.restrictorId === restrictorId),
      ),
    );
    // A fan whose flows were typed as read still needs one, by its schema.
    return [{ ...fan, calibrations: read.length > 0 ? read : fan.calibrations.slice(0, 1) }];
  });
  const gauges = instruments.gauges?.filter(({ id }) => tests.some(({ gaugeId }) => gaugeId === id));
  return { ...(fans && { fans }), ...(gauges && { gauges }) };
}

/**
 * The job as a claim carries it: without the contractor's prices, without where a leak stands on the drawing, without
 * instruments and calibrations that no test was read by, all of which bear on no claimed number, and of the
 * organization's own repairs those that were done. So a packet stays small, and margins stay at home.
 */
export function claimedJob(whole: Job): Job {
  const { priceBook: _prices, instruments: _all, repairs, ...job } = whole;
  const instruments = usedInstruments(whole);
  const done = new Set(job.plan?.chosenMeasures?.map(({ repairId }) => repairId));
  const figures = repairs?.figures.filter(({ repairId }) => done.has(repairId)) ?? [];
  const claimed = {
    ...job,
    ...(instruments && { instruments }),
    sites: job.sites.map(({ drawnAt: _drawnAt, ...site }) => site),
  };
  return repairs && figures.length > 0 ? { ...claimed, repairs: { ...repairs, figures } } : claimed;
}
