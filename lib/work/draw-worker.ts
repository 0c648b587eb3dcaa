import { move } from "piscina";
import { type AskedDraws, type DrawShare, prepareShares } from "#lib/estimate/draw-share.ts";

/** A share of the draws, and the number of the estimate it belongs to in this pool. */
export interface ShareTask extends DrawShare {
  asked: AskedDraws;
  estimateNumber: number;
}

/** Shares of one estimate follow each other: its house is kept until another one's share comes. */
let kept: { estimateNumber: number; draw: ReturnType<typeof prepareShares> } | undefined;

/** What a thread of the draw pool does: one share of the draws, its rows end to end, handed over without a copy. */
export default function drawInThread({ asked, estimateNumber, from, to }: ShareTask): ReturnType<typeof move> {
  if (kept?.estimateNumber !== estimateNumber) kept = { estimateNumber, draw: prepareShares(asked) };
  const rows = kept.draw(from, to);
  const count = to - from;
  const block = new Float64Array(rows.length * count);
  rows.forEach((row, index) => {
    block.set(row, index * count);
  });
  return move(block);
}
