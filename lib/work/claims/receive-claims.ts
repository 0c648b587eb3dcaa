import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Store } from "#lib/store/open-store.ts";
import { type ClaimColumns, csvLines, ndjsonLines } from "./claim-lines.ts";
import { helpWithBatch } from "./help-with-batch.ts";
import { importClaims } from "./import-claims.ts";

const LONGEST_NAME = 200;

/**
 * Takes in a file that a reviewer sends: one claim a line, or a table by its columns. It answers when the claims are
 * kept; then this process helps to check them until the batch is done. Returns the id of the batch, and when that help
 * has ended: who closes the store waits for it.
 * @throws InputProblem as `importClaims`, and when a table cannot be read.
 */
export async function receiveClaims(
  store: Store,
  actor: MemberActor,
  {
    texts,
    sourceName,
    contractorId,
    columns,
  }: { texts: AsyncIterable<string>; sourceName: string; contractorId?: string; columns?: ClaimColumns },
): Promise<{ batchId: string; helped: Promise<void> }> {
  requireAllowed(actor, "claim.import");
  const batchId = await importClaims(store, actor, {
    sourceName: sourceName.slice(0, LONGEST_NAME),
    contractorId,
    lines: columns ? csvLines(texts, columns) : ndjsonLines(texts),
  });
  return { batchId, helped: helpWithBatch(store, actor, batchId) };
}
