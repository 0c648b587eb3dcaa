/// <reference lib="webworker" />
import { type RecomputeOutcome, recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { fetchReferenceData } from "#lib/reference-data/load-browser.ts";

export interface RecomputeReply {
  outcome: RecomputeOutcome;
  seconds: number;
}

/** Recomputes a packet in the reader's own browser, by the same code that made it and the same tables. */
addEventListener("message", async ({ data: packet }: MessageEvent<string>) => {
  const began = performance.now();
  const outcome = await recomputeClaim(JSON.parse(packet), { loadReference: fetchReferenceData, withDraws: true });
  postMessage({ outcome, seconds: (performance.now() - began) / 1000 } satisfies RecomputeReply);
});
