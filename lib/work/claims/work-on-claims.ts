import { setTimeout as wait } from "node:timers/promises";
import type { TakenTask } from "#lib/store/claim-queue.ts";
import type { Store } from "#lib/store/open-store.ts";
import { checkChunk } from "./check-chunk.ts";

export interface WorkOptions {
  /** Ends the work after the chunk in hand. */
  signal: AbortSignal;
  /** Whether to go on when the queue has nothing to take; asked each time. Left out: for ever. */
  goesOn?: (openCount: number) => boolean | Promise<boolean>;
  onChunk?: (task: TakenTask, isKept: boolean) => void;
  /** A chunk that failed goes back into the queue. Left out: its trouble ends the work. */
  onFailure?: (task: TakenTask, thrown: unknown) => void;
}

const PAUSE_MS = 400;
/** So many failures in a row are no accident: the worker ends, and whoever runs it hears of it. */
const MOST_FAILURES = 5;

/**
 * Takes chunks from the queue and checks them, one after the other. Any number of processes may do this at once: a chunk
 * is leased to one of them, and goes to another one when that one falls silent. Returns how many chunks were done here.
 */
export async function workOnClaims(store: Store, { signal, goesOn, onChunk, onFailure }: WorkOptions): Promise<number> {
  const queue = await store.openClaimQueue();
  let done = 0;
  let failures = 0;
  try {
    while (!signal.aborted) {
      const task = await queue.take();
      if (task) {
        try {
          const isKept = await checkChunk(store, task);
          await queue.done(task.taskId);
          if (isKept) done++;
          failures = 0;
          onChunk?.(task, isKept);
        } catch (thrown) {
          await queue.giveBack(task.taskId, String(thrown)).catch(() => undefined);
          if (!onFailure || ++failures >= MOST_FAILURES) throw thrown;
          onFailure(task, thrown);
          await wait(PAUSE_MS, undefined, { signal }).catch(() => undefined);
        }
      } else {
        if (goesOn && !(await goesOn(await queue.openCount()))) break;
        await wait(PAUSE_MS, undefined, { signal }).catch(() => undefined);
      }
    }
    return done;
  } finally {
    await queue.close();
  }
}
