import "server-only";
import { showAs } from "#app/jobs/session.ts";
import { fanSchema, type Gauge, gaugeSchema, type TestFan } from "#lib/job/instrument-schema.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";

export interface KnownInstruments {
  fans: readonly TestFan[];
  gauges: readonly Gauge[];
  job?: { id: string; title: string };
}

/** The instruments that a sheet may follow: those of the job it is for, and the invented ones to try it out with. */
export async function loadSetupInstruments(jobId: string | undefined): Promise<KnownInstruments> {
  if (!jobId) return { fans: [DEMO_FAN], gauges: [DEMO_GAUGE] };
  const { job, revision } = await showAs("job.view", ({ jobs }) => jobs.findCurrent(jobId));
  const { fans = [], gauges = [] } = instrumentsOf(revision?.document);
  // A job is saved in any state, so an instrument without its calibration is left out rather than refused.
  const own = {
    fans: fans.flatMap((each) => fanSchema.safeParse(each).data ?? []),
    gauges: gauges.flatMap((each) => gaugeSchema.safeParse(each).data ?? []),
  };
  return {
    job: { id: job.id, title: job.title },
    fans: [...own.fans, ...otherThan(own.fans, DEMO_FAN)],
    gauges: [...own.gauges, ...otherThan(own.gauges, DEMO_GAUGE)],
  };
}

function instrumentsOf(document: unknown): { fans?: readonly unknown[]; gauges?: readonly unknown[] } {
  const { instruments } = (document ?? {}) as { instruments?: { fans?: unknown; gauges?: unknown } };
  const { fans, gauges } = instruments ?? {};
  return { ...(Array.isArray(fans) ? { fans } : {}), ...(Array.isArray(gauges) ? { gauges } : {}) };
}

const otherThan = <T extends { id: string }>(list: readonly T[], demo: T): T[] =>
  list.some(({ id }) => id === demo.id) ? [] : [demo];
