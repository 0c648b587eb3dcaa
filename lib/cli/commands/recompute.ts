import path from "node:path";
import { parseArgs } from "node:util";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { isDrawnForRanges } from "#lib/claims/draw-sample.ts";
import type { RecomputeOutcome } from "#lib/claims/recompute-claim.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";
import { recomputeSent, recomputeStored } from "#lib/work/claims/recompute-batch.ts";
import { recomputeText } from "#lib/work/claims/recompute-text.ts";
import { BATCH_OPTIONS, batchActor, findBatch, listedOrCanceled, progressTeller, workUntilDone } from "../batches.ts";
import type { Command, CommandContext } from "../command.ts";
import { readLines } from "../read-lines.ts";
import { readText } from "../read-text.ts";
import { usageProblem } from "../usage-problem.ts";

type Counts = Record<RecomputeOutcome["outcome"], number>;

function exitCode(counts: Counts, context: CommandContext): number {
  context.out(`${JSON.stringify(counts)}\n`);
  return counts.differs + counts.invalid > 0 ? 1 : 0;
}

/** One claim a line, in constant memory and without a database; a seeded 1 % gets its draws. */
async function recomputeHere(file: string, context: CommandContext): Promise<number> {
  const counts: Counts = { same: 0, differs: 0, invalid: 0 };
  for await (const { line, text } of readLines(file, context)) {
    const outcome = await recomputeText(text, `line ${line}`, isDrawnForRanges);
    counts[outcome.outcome]++;
    if (outcome.outcome !== "same") context.out(`${JSON.stringify({ line, ...outcome })}\n`);
  }
  return exitCode(counts, context);
}

/** The same through chunks in the database, which every running worker shares; or the claims that stand there. */
async function recomputeShared(
  store: Store,
  context: CommandContext,
  { file, storeOnly }: { file?: string; storeOnly: boolean },
): Promise<number> {
  const batchId =
    file === undefined
      ? await recomputeStored(store, batchActor)
      : await recomputeSent(store, batchActor, {
          lines: readLines(file, context),
          sourceName: file === "-" ? "standard input" : path.basename(file),
        });
  const tell = progressTeller(store, context);
  if (!storeOnly) await workUntilDone(store, batchId, tell);
  await tell(batchId, true);
  const batch = await findBatch(store, batchId);
  if (storeOnly) {
    context.out(`${JSON.stringify(batch)}\n`);
    return 0;
  }
  await store.withOrganization(batchActor, async ({ recomputeChunks }) => {
    for await (const outcome of recomputeChunks.outcomes(batchId)) context.out(`${JSON.stringify(outcome)}\n`);
  });
  return exitCode({ same: batch.sameCount, differs: batch.differsCount, invalid: batch.invalidCount }, context);
}

/** Recomputes claims: same, differs with which number, invalid with why. */
export const recomputeCommand: Command = {
  name: "recompute",
  usage:
    "recompute CLAIM.json… [--without-draws] · recompute --batch FILE.ndjson [--shared [--store-only]] · recompute --stored [--store-only] · recompute --list · recompute --cancel BATCH",
  summary:
    "Recomputes claims from their own inputs and says same, differs or invalid; --shared and --stored by chunks, beside every running worker.",
  examples: [
    "npm run -s ductmend -- recompute claim.json",
    "npm run -s ductmend -- recompute --batch claims.ndjson",
    "npm run -s ductmend -- recompute --stored",
  ],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: {
        batch: { type: "string" },
        "without-draws": { type: "boolean" },
        shared: { type: "boolean" },
        stored: { type: "boolean" },
        "store-only": { type: "boolean" },
        ...BATCH_OPTIONS,
      },
    });
    const { batch: file, shared, stored, list, cancel } = values;
    if (shared && file === undefined) throw usageProblem("Name the file with --batch FILE.ndjson, or “-”.");
    if (shared || stored || list || cancel !== undefined) {
      const store = await openStore();
      try {
        await seedDemo(store, [], ENGINE_VERSION);
        if (await listedOrCanceled(store, context, { list, cancel })) return 0;
        return await recomputeShared(store, context, { file, storeOnly: values["store-only"] === true });
      } finally {
        await store.close();
      }
    }
    if (file !== undefined) return await recomputeHere(file, context);
    if (positionals.length === 0) throw usageProblem("Name at least one claim file, or --batch FILE.ndjson.");
    let isAllSame = true;
    for (const each of positionals) {
      const outcome = await recomputeText(await readText(each, context), each, () => values["without-draws"] !== true);
      context.out(`${JSON.stringify({ file: each, ...outcome })}\n`);
      if (outcome.outcome !== "same") isAllSame = false;
    }
    return isAllSame ? 0 : 1;
  },
};
