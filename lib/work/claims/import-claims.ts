import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { programRuleSchema } from "#lib/claims/program-rule.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import type { QueueOptions } from "#lib/store/claim-queue.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { RefusedLine } from "#lib/store/repositories/claim-batches.ts";
import type { ArrivedClaim } from "#lib/store/repositories/claim-chunks.ts";
import { type ArrivingClaim, acceptClaim, type ImportFrame } from "./arriving-claim.ts";

/** One line of a source; what could not be read of it is said in `detail`. */
export type SourceLine = { line: number; bytes: number } & ({ claim: ArrivingClaim } | { detail: string });

export interface ImportRequest {
  programId?: string;
  contractorId?: string;
  sourceName: string;
  lines: AsyncIterable<SourceLine>;
  /** Told after each chunk is kept. */
  onChunk?: (batchId: string) => void | Promise<void>;
  queue?: QueueOptions;
}

/** A chunk ends at so many lines or bytes, so that memory stays the same however long the source is. */
const CHUNK_LINES = 200;
const CHUNK_BYTES = 4_000_000;
const REFUSED_KEPT = 20;

interface Chunk {
  firstLine: number;
  lineCount: number;
  claims: ArrivedClaim[];
  refused: RefusedLine[];
  refusedCount: number;
}

async function frameOf(store: Store, actor: MemberActor, request: ImportRequest): Promise<ImportFrame> {
  return await store.withOrganization(actor, async ({ programs }) => {
    const own = (await programs.list()).filter(({ organizationId }) => organizationId === actor.organizationId);
    const program = request.programId === undefined ? own[0] : own.find(({ id }) => id === request.programId);
    if (!program || (request.programId === undefined && own.length > 1)) {
      const fix = `Use one of these: ${own.map(({ id, name }) => `${id} (${name})`).join(", ") || "none yet"}.`;
      return refuse({ field: "program", detail: "It is not clear for which program the claims are", fix });
    }
    const rules = (await programs.rules(program.id)).flatMap(({ effectiveOn, document }) => {
      const parsed = programRuleSchema.safeParse(document);
      return parsed.success ? [{ from: effectiveOn.toISOString().slice(0, 10), rule: parsed.data }] : [];
    });
    return {
      program,
      contractorId: request.contractorId,
      contractorIds: new Set(await programs.contractorIds(program.id)),
      // Newest first, as the repository lists them.
      ruleOn: (day) => rules.find(({ from }) => from <= day)?.rule,
    };
  });
}

/** The lines in chunks, read and judged; one at a time, so that nothing piles up. */
async function* chunksOf(lines: AsyncIterable<SourceLine>, frame: ImportFrame): AsyncGenerator<Chunk> {
  const empty = (firstLine: number): Chunk => ({ firstLine, lineCount: 0, claims: [], refused: [], refusedCount: 0 });
  let chunk = empty(1);
  let bytes = 0;
  for await (const source of lines) {
    const { line } = source;
    if (chunk.lineCount === 0) chunk.firstLine = line;
    chunk.lineCount++;
    bytes += source.bytes;
    const accepted = "claim" in source ? acceptClaim(source.claim, line, frame) : source;
    if ("detail" in accepted) {
      chunk.refusedCount++;
      if (chunk.refused.length < REFUSED_KEPT) chunk.refused.push({ line, detail: accepted.detail });
    } else chunk.claims.push(accepted);
    if (chunk.lineCount < CHUNK_LINES && bytes < CHUNK_BYTES) continue;
    yield chunk;
    chunk = empty(line + 1);
    bytes = 0;
  }
  if (chunk.lineCount > 0) yield chunk;
}

/**
 * Takes in a source of claims, chunk by chunk: each chunk's claims, the account of its lines and the task to check them
 * are kept in one transaction. Stopped at any moment and begun again, it keeps no claim twice: what is there already is
 * counted as such. While one chunk is being kept the next is read. Returns the id of the batch.
 * @throws InputProblem when the actor may not import, or the program is not clear.
 */
export async function importClaims(store: Store, actor: MemberActor, request: ImportRequest): Promise<string> {
  requireAllowed(actor, "claim.import");
  const frame = await frameOf(store, actor, request);
  const { sourceName, queue } = request;
  const batchId = await store.withOrganization(actor, async ({ claimBatches, audit }) => {
    const id = await claimBatches.start({ kind: "import", sourceName, options: { programId: frame.program.id } });
    const detail = { sourceName };
    await audit.record({ action: "claims.import-started", subjectKind: "claim-batch", subjectId: id, detail });
    return id;
  });
  let kept: Promise<boolean> = Promise.resolve(true);
  let total = 0;
  let number = 0;
  for await (const { claims, ...lines } of chunksOf(request.lines, frame)) {
    if (!(await kept)) return batchId;
    const chunk = number++;
    total += lines.lineCount;
    kept = store
      .withOrganization(actor, ({ claimChunks }) => claimChunks.store({ batchId, chunk }, { claims, lines, queue }))
      .then(async (stored) => {
        if (stored && chunk === 0) await store.withOrganization(actor, ({ claimChunks }) => claimChunks.takeStock());
        if (stored) await request.onChunk?.(batchId);
        return stored !== false;
      });
    // What goes wrong is thrown where it is awaited.
    kept.catch(() => undefined);
  }
  if (!(await kept)) return batchId;
  await store.withOrganization(actor, async ({ claimBatches }) => {
    await claimBatches.setTotal(batchId, total);
    await claimBatches.finishIfDone(batchId);
  });
  return batchId;
}
