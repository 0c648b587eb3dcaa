"use server";

import { redirect } from "next/navigation";
import { actAs, whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { cancelBatch } from "#lib/work/claims/cancel-batch.ts";
import { helpWithBatch } from "#lib/work/claims/help-with-batch.ts";
import { recomputeStored } from "#lib/work/claims/recompute-batch.ts";

/** Stops a batch; claims that are in stay in. One that ended meanwhile shows so. */
export async function cancel(form: FormData): Promise<void> {
  try {
    await cancelBatch(await sharedStore(), await whoActs(), String(form.get("id") ?? ""));
  } catch (thrown) {
    if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
  }
  redirect("/program/import");
}

/** So many claims this process checks beside answering pages; more are left to workers. */
const MOST_HELPED = 2000;

/** Every claim of the program once more, by the engine as it is now. */
export async function recomputeAll(): Promise<void> {
  const [store, actor] = [await sharedStore(), await whoActs()];
  const batchId = await recomputeStored(store, actor);
  const { storedCount } = await actAs("claim.import", ({ claimBatches }) => claimBatches.find(batchId));
  if (storedCount <= MOST_HELPED) void helpWithBatch(store, actor, batchId);
  redirect("/program/import");
}
