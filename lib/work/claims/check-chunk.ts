import { isDrawnForRanges } from "#lib/claims/draw-sample.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import type { RecomputeOutcome } from "#lib/claims/recompute-claim.ts";
import type { ChunkTask } from "#lib/store/claim-queue.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { ClaimCheck } from "#lib/store/repositories/claim-review.ts";
import type { SentPacket } from "#lib/store/repositories/recompute-chunks.ts";
import type { Scope } from "#lib/store/scope.ts";
import { checkClaim } from "./check-claim.ts";
import { recomputeText } from "./recompute-text.ts";

/** Rules of a program as they were in force, the newest first. */
async function rulesOf({ programs }: Scope, programId: string): Promise<{ from: Date; rule: ProgramRule }[]> {
  return (await programs.rules(programId)).flatMap(({ effectiveOn, document }) => {
    const parsed = programRuleSchema.safeParse(document);
    return parsed.success ? [{ from: effectiveOn, rule: parsed.data }] : [];
  });
}

/** Stored claims: recomputed and looked through beside earlier ones; what came out is kept with each. */
async function checkStored(
  store: Store,
  { organizationId, ...key }: ChunkTask,
  ids: readonly string[],
): Promise<boolean> {
  const program = { organizationId, actorId: null };
  const work = await store.withOrganization(program, async (scope) => {
    const claims = await scope.claimChunks.claims(ids);
    const rules = new Map<string, Awaited<ReturnType<typeof rulesOf>>>();
    for (const programId of new Set(claims.map((claim) => claim.programId)))
      rules.set(programId, await rulesOf(scope, programId));
    return { claims, rules, neighbors: await scope.claimChunks.earlierNeighbors(ids) };
  });
  const checks: ClaimCheck[] = [];
  for (const { id: claimId, organizationId: contractorId, programId, packet, completedOn } of work.claims) {
    const rules = work.rules.get(programId) ?? [];
    const rule = rules.find(({ from }) => from <= completedOn)?.rule ?? rules.at(-1)?.rule;
    if (!rule) throw new Error(`The program of claim ${claimId} has no rule`);
    const neighbors = work.neighbors.get(claimId) ?? [];
    const { check } = await checkClaim({ claimId, contractorId, packet, rule, neighbors, withDraws: isDrawnForRanges });
    checks.push(check);
  }
  return await store.withOrganization(program, async ({ claimChunks, claimBatches }) => {
    const isKept = await claimChunks.saveChecks(key, checks);
    if (isKept) await claimBatches.finishIfDone(key.batchId);
    return isKept;
  });
}

/** Packets of a file that belong to nobody here: recomputed, and only those that are not the same told one by one. */
async function checkSent(
  store: Store,
  { organizationId, ...key }: ChunkTask,
  packets: readonly SentPacket[],
): Promise<boolean> {
  const counts = { same: 0, differs: 0, invalid: 0 };
  const outcomes: ({ line: number } & RecomputeOutcome)[] = [];
  for (const { line, text } of packets) {
    const outcome = await recomputeText(text, `line ${line}`, isDrawnForRanges);
    counts[outcome.outcome]++;
    if (outcome.outcome !== "same") outcomes.push({ line, ...outcome });
  }
  const { same: sameCount, differs: differsCount, invalid: invalidCount } = counts;
  return await store.withOrganization({ organizationId, actorId: null }, async ({ recomputeChunks, claimBatches }) => {
    const isKept = await recomputeChunks.saveOutcomes(key, { sameCount, differsCount, invalidCount, outcomes });
    if (isKept) await claimBatches.finishIfDone(key.batchId);
    return isKept;
  });
}

/**
 * Recomputes the claims of one chunk without draws, a seeded 1 % with them, and keeps what came out in one transaction.
 * Doing it twice, or by two workers at once, changes nothing more. False when the chunk was done or canceled before.
 */
export async function checkChunk(store: Store, task: ChunkTask): Promise<boolean> {
  const { organizationId, batchId, chunk } = task;
  const work = await store.withOrganization({ organizationId, actorId: null }, ({ claimChunks }) =>
    claimChunks.openWork({ batchId, chunk }),
  );
  if (!work) return false;
  const key = { organizationId, batchId, chunk };
  return work.packets ? await checkSent(store, key, work.packets) : await checkStored(store, key, work.claimIds ?? []);
}
