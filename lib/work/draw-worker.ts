import { move } from "piscina";
import { type DrawShare, runDrawShare } from "#lib/estimate/draw-share.ts";

/** What a thread of the draw pool does: one share of the draws, its rows end to end, handed over without a copy. */
export default function drawInThread(share: DrawShare): ReturnType<typeof move> {
  const rows = runDrawShare(share);
  const count = share.to - share.from;
  const block = new Float64Array(rows.length * count);
  rows.forEach((row, index) => {
    block.set(row, index * count);
  });
  return move(block);
}
