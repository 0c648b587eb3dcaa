import { setMaxListeners } from "node:events";
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { range } from "d3-array";
import { Piscina } from "piscina";
import type { AskedDraws, DrawElsewhere, DrawShare } from "#lib/estimate/draw-share.ts";

/** Small enough that progress moves and no thread waits long for the last one; large beside building the house anew. */
const DRAWS_OF_SHARE = 1_000;
const IDLE_MS = 30_000;

/** Where `lib/cli/launch/bundle.mjs` puts the thread's program. */
const BUNDLED_WORKER = join(process.cwd(), ".build/cli/draw-worker.mjs");

export interface DrawPool {
  draw: DrawElsewhere;
  close(): Promise<void>;
}

export interface DrawPoolOptions {
  threads: number;
  workerFile?: string;
  onProgress?: (progress: { done: number; draws: number }) => void;
  /** Cancels what is waiting and what runs. */
  signal?: AbortSignal;
}

/** Threads that evaluate draws in shares. The rows are those of one thread, however many there are. */
export function createDrawPool({
  threads,
  workerFile = BUNDLED_WORKER,
  onProgress,
  signal,
}: DrawPoolOptions): DrawPool {
  const pool = new Piscina({ filename: workerFile, maxThreads: threads, idleTimeout: IDLE_MS });
  // Each share that waits listens to the signal.
  if (signal) setMaxListeners(0, signal);
  return {
    draw: async (asked) => {
      let done = 0;
      const blocks = await Promise.all(
        sharesOf(asked).map(async (share) => {
          const block: Float64Array = await pool.run(share, { signal });
          done += share.to - share.from;
          onProgress?.({ done, draws: asked.draws });
          return { ...share, block };
        }),
      );
      return joinRows(asked.draws, blocks);
    },
    close: () => pool.close(),
  };
}

function sharesOf(asked: AskedDraws): DrawShare[] {
  return range(0, asked.draws, DRAWS_OF_SHARE).map((from) => ({
    ...asked,
    from,
    to: Math.min(from + DRAWS_OF_SHARE, asked.draws),
  }));
}

function joinRows(draws: number, blocks: readonly { from: number; to: number; block: Float64Array }[]): Float64Array[] {
  const [first] = blocks;
  const outputs = first ? first.block.length / (first.to - first.from) : 0;
  const rows = Array.from({ length: outputs }, () => new Float64Array(draws));
  for (const { from, to, block } of blocks)
    rows.forEach((row, index) => {
      row.set(block.subarray(index * (to - from), (index + 1) * (to - from)), from);
    });
  return rows;
}

let shared: DrawPool | null | undefined;

/** The pool of this server: a thread for each core but one. Null on a single core, and where no thread is bundled. */
export function sharedDrawPool(): DrawPool | null {
  const threads = availableParallelism() - 1;
  shared ??= threads > 0 && existsSync(BUNDLED_WORKER) ? createDrawPool({ threads }) : null;
  return shared;
}
