import { isDrawnForRanges } from "#lib/claims/draw-sample.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import type { ChunkTask } from "#lib/store/claim-queue.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { ClaimCheck } from "#lib/store/repositories/claim-review.ts";
import type { Scope } from "#lib/store/scope.ts";
import { checkClaim } from "./check-claim.ts";

/** Rules of a program as they were in force, the newest first. */
async function rulesOf({ programs }: Scope, programId: string): Promise<{ from: Date; rule: ProgramRule }[]> {
  return (await programs.rules(programId)).flatMap(({ effectiveOn, document }) => {
    const parsed = programRuleSchema.safeParse(document);
    return parsed.success ? [{ from: effectiveOn, rule: parsed.data }] : [];
  });
}

/**
 * Recomputes the claims of one chunk without draws, a seeded 1 % with them, looks them through beside earlier claims, and
 * keeps it all in one transaction. Doing it twice, or by two workers at once, changes nothing more. False when the chunk
 * was done or canceled before.
 */
export async function checkChunk(store: Store, { organizationId, batchId, chunk }: ChunkTask): Promise<boolean> {
  const program = { organizationId, actorId: null };
  const key = { batchId, chunk };
  const work = await store.withOrganization(program, async (scope) => {
    if (!(await scope.claimChunks.isOpen(key))) return undefined;
    const claims = await scope.claimChunks.claims(key);
    const rules = claims[0] ? await rulesOf(scope, claims[0].programId) : [];
    return { claims, rules, neighbors: await scope.claimChunks.earlierNeighbors(key) };
  });
  if (!work) return false;
  const checks: ClaimCheck[] = [];
  for (const { id: claimId, organizationId: contractorId, packet, completedOn } of work.claims) {
    const rule = work.rules.find(({ from }) => from <= completedOn)?.rule ?? work.rules.at(-1)?.rule;
    if (!rule) throw new Error(`The program of claim ${claimId} has no rule`);
    const neighbors = work.neighbors.get(claimId) ?? [];
    const { check } = await checkClaim({ claimId, contractorId, packet, rule, neighbors, withDraws: isDrawnForRanges });
    checks.push(check);
  }
  return await store.withOrganization(program, async ({ claimChunks, claimBatches }) => {
    const isKept = await claimChunks.saveChecks(key, checks);
    if (isKept) await claimBatches.finishIfDone(batchId);
    return isKept;
  });
}
