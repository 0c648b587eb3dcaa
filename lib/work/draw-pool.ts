import { setMaxListeners } from "node:events";
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { range } from "d3-array";
import { Piscina } from "piscina";
import type { DrawElsewhere, DrawShare } from "#lib/estimate/draw-share.ts";
import type { ShareTask } from "./draw-worker.ts";

/** Small enough that progress moves and no thread waits long for the last one; large beside handing it over. */
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
  let estimates = 0;
  return {
    draw: async (asked) => {
      let done = 0;
      estimates += 1;
      const estimateNumber = estimates;
      const blocks = await Promise.all(
        sharesOf(asked.draws).map(async (share) => {
          const task: ShareTask = { ...share, asked, estimateNumber };
          const block: Float64Array = await pool.run(task, { signal });
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

function sharesOf(draws: number): DrawShare[] {
  return range(0, draws, DRAWS_OF_SHARE).map((from) => ({ from, to: Math.min(from + DRAWS_OF_SHARE, draws) }));
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
