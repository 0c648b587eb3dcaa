/// <reference lib="webworker" />
import { type DrawElsewhere, drawByShares } from "#lib/estimate/draw-share.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Convergence } from "#lib/job/result/result-schema.ts";
import { fetchReferenceData } from "#lib/reference-data/load-browser.ts";

export interface MoreDrawsRequest {
  /** The job file. */
  job: unknown;
  /** The work of the option that the result is about. */
  measures: readonly { siteId: string; repairId: string }[];
  draws: number;
  seed: number;
}

export type MoreDrawsReply =
  | { kind: "progress"; done: number }
  | { kind: "done"; savedUsdPerYear: Ranged; convergence: Convergence | null; seconds: number };

/** Between two reports of how far it is: often enough to see it move. */
const DRAWS_OF_SHARE = 500;

const reply = (message: MoreDrawsReply) => postMessage(message);

const drawWithProgress: DrawElsewhere = async (asked) => {
  const shares = drawByShares(asked, DRAWS_OF_SHARE);
  for (;;) {
    const step = shares.next();
    if (step.done) return step.value;
    reply({ kind: "progress", done: step.value });
  }
};

/** The same engine as on the server, with as many draws as were asked for. Whoever stops it ends this worker. */
addEventListener("message", async ({ data: { job, measures, draws, seed } }: MessageEvent<MoreDrawsRequest>) => {
  const began = performance.now();
  const told = parseJob(job);
  const planned = { ...told, plan: { ...told.plan, chosenMeasures: [...measures] } };
  const reference = await fetchReferenceData(planned);
  const result = await estimate(planned, reference, { draws, seed, drawElsewhere: drawWithProgress });
  reply({
    kind: "done",
    savedUsdPerYear: result.savings.costUsdPerYear,
    convergence: result.convergence,
    seconds: (performance.now() - began) / 1000,
  });
});
