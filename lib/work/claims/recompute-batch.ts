import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { SentPacket } from "#lib/store/repositories/recompute-chunks.ts";

/** A chunk ends at so many lines or characters, so that memory stays the same however long the file is. */
const CHUNK_LINES = 200;
const CHUNK_CHARACTERS = 4_000_000;

/** Recomputes every claim that the actor's program has received, in chunks that any number of workers share. */
export async function recomputeStored(store: Store, actor: MemberActor): Promise<string> {
  requireAllowed(actor, "claim.import");
  return await store.withOrganization(actor, async ({ claimBatches, recomputeChunks, audit }) => {
    const batchId = await claimBatches.start({ kind: "recompute", sourceName: "All claims again", options: {} });
    await audit.record({ action: "claims.recompute-started", subjectKind: "claim-batch", subjectId: batchId });
    const total = await recomputeChunks.addStored(batchId);
    await claimBatches.setTotal(batchId, total);
    await claimBatches.finishIfDone(batchId);
    return batchId;
  });
}

async function* chunksOf(lines: AsyncIterable<SentPacket>): AsyncGenerator<SentPacket[]> {
  let chunk: SentPacket[] = [];
  let characters = 0;
  for await (const { line, text } of lines) {
    // A column of JSON cannot hold this character, and no JSON text can either.
    chunk.push({ line, text: text.replaceAll("\u0000", "\ufffd") });
    characters += text.length;
    if (chunk.length < CHUNK_LINES && characters < CHUNK_CHARACTERS) continue;
    yield chunk;
    chunk = [];
    characters = 0;
  }
  if (chunk.length > 0) yield chunk;
}

/**
 * Recomputes packets that are nobody's yet, one a line, in chunks that any number of workers share. They are kept only
 * until they are done. Returns the batch's id when all lines are in.
 */
export async function recomputeSent(
  store: Store,
  actor: MemberActor,
  { lines, sourceName }: { lines: AsyncIterable<SentPacket>; sourceName: string },
): Promise<string> {
  requireAllowed(actor, "claim.import");
  const batchId = await store.withOrganization(actor, async ({ claimBatches, audit }) => {
    const id = await claimBatches.start({ kind: "recompute", sourceName, options: {} });
    const detail = { sourceName };
    await audit.record({ action: "claims.recompute-started", subjectKind: "claim-batch", subjectId: id, detail });
    return id;
  });
  let chunk = 0;
  let total = 0;
  for await (const packets of chunksOf(lines)) {
    const key = { batchId, chunk: chunk++ };
    if (!(await store.withOrganization(actor, ({ recomputeChunks }) => recomputeChunks.addPackets(key, packets))))
      return batchId;
    total += packets.length;
  }
  await store.withOrganization(actor, async ({ claimBatches }) => {
    await claimBatches.setTotal(batchId, total);
    await claimBatches.finishIfDone(batchId);
  });
  return batchId;
}
