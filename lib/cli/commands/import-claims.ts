import { createReadStream } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";
import { type ClaimColumns, csvLines, ndjsonLines } from "#lib/work/claims/claim-lines.ts";
import { importClaims } from "#lib/work/claims/import-claims.ts";
import { receiveHpxml } from "#lib/work/claims/receive-hpxml.ts";
import { BATCH_OPTIONS, batchActor, findBatch, listedOrCanceled, progressTeller, workUntilDone } from "../batches.ts";
import type { Command, CommandContext } from "../command.ts";
import { readText } from "../read-text.ts";
import { usageProblem } from "../usage-problem.ts";

async function* textsOf(file: string, context: CommandContext): AsyncGenerator<string> {
  const full = path.resolve(context.workingFolder, file);
  const input = file === "-" ? process.stdin.setEncoding("utf8") : createReadStream(full, { encoding: "utf8" });
  try {
    for await (const text of input) yield String(text);
  } catch (thrown) {
    if (!(thrown instanceof Error && "syscall" in thrown)) throw thrown;
    const detail = `The file cannot be read: ${full}`;
    const fix = "Check the path and the permissions.";
    throw new InputProblem("file-unreadable", [{ pointer: "#", detail, code: "file-unreadable", fix }]);
  }
}

/** `claim=Packet,contractor=Firm`: which column holds what. */
function columnsOf(text: string): ClaimColumns {
  const pairs = text.split(",").map((pair) => pair.split("=").map((each) => each.trim()));
  const known = ["claim", "contractor", "reference"];
  for (const [name = "", column = ""] of pairs)
    if (!known.includes(name) || column === "")
      throw usageProblem(`“${name}=${column}” is not a column. Use ${known.map((each) => `${each}=NAME`).join(",")}.`);
  return { claim: "claim", ...Object.fromEntries(pairs) } as ClaimColumns;
}

interface ImportOptions {
  program?: string;
  contractor?: string;
  columns?: string;
  storeOnly: boolean;
}

/** One house as HPXML: its claim, checked, and each thing of the file that was not read. */
async function runHouse(
  store: Store,
  context: CommandContext,
  { file, options }: { file: string; options: ImportOptions },
): Promise<number> {
  const { claimId, unread } = await receiveHpxml(store, batchActor, {
    text: await readText(file, context),
    sourceName: path.basename(file),
    contractorId: options.contractor,
    programId: options.program,
  });
  const { reference, recomputeOutcome, flagCount } = await store.withOrganization(batchActor, ({ claims }) =>
    claims.find(claimId),
  );
  context.out(`${JSON.stringify({ claimId, reference, recomputeOutcome, flagCount, unread })}\n`);
  return recomputeOutcome === "same" ? 0 : 1;
}

async function runImport(
  store: Store,
  context: CommandContext,
  { file, options }: { file: string; options: ImportOptions },
): Promise<number> {
  const texts = textsOf(file, context);
  const isTable = options.columns !== undefined || file.toLowerCase().endsWith(".csv");
  const tell = progressTeller(store, context);
  const batchId = await importClaims(store, batchActor, {
    programId: options.program,
    contractorId: options.contractor,
    sourceName: file === "-" ? "standard input" : path.basename(file),
    lines: isTable ? csvLines(texts, columnsOf(options.columns ?? "claim=claim")) : ndjsonLines(texts),
    onChunk: (id) => tell(id),
  });
  if (!options.storeOnly) await workUntilDone(store, batchId, tell);
  await tell(batchId, true);
  const batch = await findBatch(store, batchId);
  const refused = await store.withOrganization(batchActor, ({ claimBatches }) => claimBatches.refusedLines(batchId));
  context.out(`${JSON.stringify({ ...batch, refused })}\n`);
  return batch.refusedCount + batch.differsCount + batch.invalidCount > 0 ? 1 : 0;
}

/** Takes in claims by the hundred thousand. */
export const importClaimsCommand: Command = {
  name: "import-claims",
  usage:
    "import-claims FILE.ndjson|FILE.csv|FILE.xml [--contractor ID] [--program ID] [--columns claim=NAME,contractor=NAME,reference=NAME] [--store-only] · import-claims --list · import-claims --cancel BATCH",
  summary:
    "Takes claims into a program, one a line or one house as HPXML, and checks them together with every running worker.",
  examples: [
    "npm run -s ductmend -- import-claims claims.ndjson --contractor d0000001-0000-4000-8000-000000000000",
    "npm run -s ductmend -- import-claims house.xml --contractor d0000001-0000-4000-8000-000000000000",
  ],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: {
        contractor: { type: "string" },
        program: { type: "string" },
        columns: { type: "string" },
        "store-only": { type: "boolean" },
        ...BATCH_OPTIONS,
      },
    });
    const store = await openStore();
    try {
      await seedDemo(store, [], ENGINE_VERSION);
      if (await listedOrCanceled(store, context, values)) return 0;
      const [file] = positionals;
      if (file === undefined || positionals.length > 1)
        throw usageProblem("Name one file with claims, or “-” for standard input.");
      const { program, contractor, columns } = values;
      const options = { program, contractor, columns, storeOnly: values["store-only"] === true };
      const run = /\.xml$/i.test(file) ? runHouse : runImport;
      return await run(store, context, { file, options });
    } finally {
      await store.close();
    }
  },
};
