import type { MemberActor } from "#lib/access/actor.ts";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { BatchRecord } from "#lib/store/repositories/claim-batches.ts";
import { cancelBatch } from "#lib/work/claims/cancel-batch.ts";
import { workOnClaims } from "#lib/work/claims/work-on-claims.ts";
import type { CommandContext } from "./command.ts";
import { stopSignal } from "./stop-signal.ts";

/** Until there is a sign-in the program's reviewer acts. */
export const batchActor: MemberActor = DEMO_IDENTITIES.reviewer;

/** Options of every command that works through batches. */
export const BATCH_OPTIONS = { list: { type: "boolean" }, cancel: { type: "string" } } as const;

const PROGRESS_MS = 1000;

function progressText(batch: BatchRecord): string {
  const { kind, lineCount, totalCount, storedCount } = batch;
  const done = batch.sameCount + batch.differsCount + batch.invalidCount;
  if (kind === "recompute") return `${done} of ${totalCount ?? storedCount} recomputed`;
  const read = `${lineCount}${totalCount === null ? "" : ` of ${totalCount}`} lines read`;
  return `${read}, ${storedCount} claims kept, ${done} checked, ${batch.alreadyThereCount} there before, ${batch.refusedCount} refused`;
}

export const findBatch = (store: Store, id: string): Promise<BatchRecord> =>
  store.withOrganization(batchActor, ({ claimBatches }) => claimBatches.find(id));

/** Says how far a batch is, at most once a second unless it is the end. */
export function progressTeller(store: Store, context: CommandContext): (id: string, isEnd?: boolean) => Promise<void> {
  let saidAt = 0;
  return async (id, isEnd = false) => {
    if (!isEnd && Date.now() - saidAt < PROGRESS_MS) return;
    saidAt = Date.now();
    context.say(`${progressText(await findBatch(store, id))}\n`);
  };
}

/** Works on the queue, beside every other worker, until the batch is done, canceled, or the user stops this process. */
export async function workUntilDone(store: Store, id: string, tell: (id: string) => Promise<void>): Promise<void> {
  const { signal } = stopSignal();
  await workOnClaims(store, {
    signal,
    goesOn: async () => (await findBatch(store, id)).state === "running",
    onChunk: () => void tell(id).catch(() => undefined),
  });
}

/** `--list` and `--cancel`: true when one of them was asked for, and done. */
export async function listedOrCanceled(
  store: Store,
  context: CommandContext,
  { list, cancel }: { list?: boolean; cancel?: string },
): Promise<boolean> {
  if (cancel !== undefined) await cancelBatch(store, batchActor, cancel);
  else if (list)
    for (const batch of await store.withOrganization(batchActor, ({ claimBatches }) => claimBatches.list()))
      context.out(`${JSON.stringify(batch)}\n`);
  else return false;
  return true;
}
