import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Store } from "#lib/store/open-store.ts";

/** Stops a batch: nothing more is read or recomputed. Claims that were handed in stay handed in. */
export async function cancelBatch(store: Store, actor: MemberActor, batchId: string): Promise<void> {
  requireAllowed(actor, "claim.import");
  await store.withOrganization(actor, async ({ claimBatches, audit }) => {
    const { state, kind } = await claimBatches.find(batchId);
    if (state !== "running" && state !== "waiting")
      throw new InputProblem("conflict", [], `This ${kind} is ${state} already.`);
    await claimBatches.cancel(batchId);
    await audit.record({ action: `claims.${kind}-canceled`, subjectKind: "claim-batch", subjectId: batchId });
  });
}
