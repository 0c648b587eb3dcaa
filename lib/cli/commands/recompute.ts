import { createReadStream } from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { parseArgs } from "node:util";
import { isDrawnForRanges } from "#lib/claims/draw-sample.ts";
import { type RecomputeOutcome, recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Command, CommandContext } from "../command.ts";
import { parseJson, readText } from "../read-text.ts";
import { usageProblem } from "../usage-problem.ts";

type Counts = Record<RecomputeOutcome["outcome"], number>;

async function recomputeText(
  text: string,
  name: string,
  withDraws: (packet: unknown) => boolean,
): Promise<RecomputeOutcome> {
  try {
    const packet = parseJson(text, name);
    return await recomputeClaim(packet, { loadReference: loadReferenceData, withDraws: withDraws(packet) });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { outcome: "invalid", errors: [...thrown.errors] };
  }
}

function refuseUnreadable(full: string, thrown: unknown): never {
  const reason =
    (thrown as NodeJS.ErrnoException).code === "ENOENT" ? "There is no such file" : "The file cannot be read";
  throw new InputProblem("file-unreadable", [
    { pointer: "#", detail: `${reason}: ${full}`, code: "file-unreadable", fix: "Check the path and the permissions." },
  ]);
}

/** One claim a line, in constant memory; a seeded 1 % gets its draws. */
async function recomputeBatch(file: string, context: CommandContext): Promise<Counts> {
  const counts: Counts = { same: 0, differs: 0, invalid: 0 };
  const full = path.resolve(context.workingFolder, file);
  const input = file === "-" ? process.stdin : createReadStream(full, { encoding: "utf8" });
  let line = 0;
  try {
    for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      line++;
      if (text.trim() === "") continue;
      const outcome = await recomputeText(text, `line ${line}`, isDrawnForRanges);
      counts[outcome.outcome]++;
      if (outcome.outcome !== "same") context.out(`${JSON.stringify({ line, ...outcome })}\n`);
    }
  } catch (thrown) {
    if (thrown instanceof Error && "code" in thrown && "syscall" in thrown) refuseUnreadable(full, thrown);
    throw thrown;
  }
  return counts;
}

/** Recomputes claims: same, differs with which number, invalid with why. */
export const recomputeCommand: Command = {
  name: "recompute",
  usage: "recompute CLAIM.json… [--without-draws] · recompute --batch FILE.ndjson",
  summary: "Recomputes claims from their own inputs and says same, differs or invalid.",
  examples: ["npm run -s ductmend -- recompute claim.json", "npm run -s ductmend -- recompute --batch claims.ndjson"],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: { batch: { type: "string" }, "without-draws": { type: "boolean" } },
    });
    if (values.batch !== undefined) {
      const counts = await recomputeBatch(values.batch, context);
      context.out(`${JSON.stringify(counts)}\n`);
      return counts.differs + counts.invalid > 0 ? 1 : 0;
    }
    if (positionals.length === 0) throw usageProblem("Name at least one claim file, or --batch FILE.ndjson.");
    let isAllSame = true;
    for (const file of positionals) {
      const outcome = await recomputeText(await readText(file, context), file, () => values["without-draws"] !== true);
      context.out(`${JSON.stringify({ file, ...outcome })}\n`);
      if (outcome.outcome !== "same") isAllSame = false;
    }
    return isAllSame ? 0 : 1;
  },
};
