import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Store } from "#lib/store/open-store.ts";
import { workOnClaims } from "./work-on-claims.ts";

/**
 * This process helps the workers until the batch is done; who closes the store waits for it. What stays undone when the
 * process ends is in the queue, and the next worker takes it.
 */
export async function helpWithBatch(store: Store, actor: MemberActor, batchId: string): Promise<void> {
  requireAllowed(actor, "claim.import");
  const isOpen = async () =>
    (await store.withOrganization(actor, ({ claimBatches }) => claimBatches.find(batchId))).state === "running";
  try {
    await workOnClaims(store, { signal: new AbortController().signal, goesOn: isOpen });
  } catch (thrown) {
    process.stderr.write(`Checking of ${batchId} stopped: ${thrown instanceof Error ? thrown.message : thrown}\n`);
  }
}
