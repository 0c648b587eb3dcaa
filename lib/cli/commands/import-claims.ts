import { createReadStream } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import type { MemberActor } from "#lib/access/actor.ts";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { seedDemo } from "#lib/access/seed-demo.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";
import type { BatchRecord } from "#lib/store/repositories/claim-batches.ts";
import { type ClaimColumns, csvLines, ndjsonLines } from "#lib/work/claims/claim-lines.ts";
import { cancelImport, importClaims } from "#lib/work/claims/import-claims.ts";
import { workOnClaims } from "#lib/work/claims/work-on-claims.ts";
import type { Command, CommandContext } from "../command.ts";
import { stopSignal } from "../stop-signal.ts";
import { usageProblem } from "../usage-problem.ts";

/** Until there is a sign-in the program's reviewer acts. */
const actor: MemberActor = DEMO_IDENTITIES.reviewer;
const PROGRESS_MS = 1000;

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

const checked = ({ sameCount, differsCount, invalidCount }: BatchRecord) => sameCount + differsCount + invalidCount;

function progressText(batch: BatchRecord): string {
  const of = batch.totalCount === null ? "" : ` of ${batch.totalCount}`;
  return `${batch.lineCount}${of} lines read, ${batch.storedCount} claims kept, ${checked(batch)} checked, ${batch.alreadyThereCount} there before, ${batch.refusedCount} refused`;
}

async function runImport(
  store: Store,
  context: CommandContext,
  {
    file,
    options,
  }: { file: string; options: { program?: string; contractor?: string; columns?: string; storeOnly: boolean } },
): Promise<number> {
  const find = (id: string) => store.withOrganization(actor, ({ claimBatches }) => claimBatches.find(id));
  const texts = textsOf(file, context);
  const isTable = options.columns !== undefined || file.toLowerCase().endsWith(".csv");
  let saidAt = 0;
  const say = async (id: string) => {
    if (Date.now() - saidAt < PROGRESS_MS) return;
    saidAt = Date.now();
    context.say(`${progressText(await find(id))}\n`);
  };
  const batchId = await importClaims(store, actor, {
    programId: options.program,
    contractorId: options.contractor,
    sourceName: file === "-" ? "standard input" : path.basename(file),
    lines: isTable ? csvLines(texts, columnsOf(options.columns ?? "claim=claim")) : ndjsonLines(texts),
    onChunk: say,
  });
  const isOpen = async () => (await find(batchId)).state === "running";
  if (!options.storeOnly) {
    const { signal } = stopSignal();
    await workOnClaims(store, { signal, goesOn: isOpen, onChunk: () => void say(batchId).catch(() => undefined) });
  }
  const batch = await find(batchId);
  context.say(`${progressText(batch)}\n`);
  const refused = await store.withOrganization(actor, ({ claimBatches }) => claimBatches.refusedLines(batchId));
  context.out(`${JSON.stringify({ ...batch, refused })}\n`);
  return batch.refusedCount + batch.differsCount + batch.invalidCount > 0 ? 1 : 0;
}

/** Takes in claims by the hundred thousand. */
export const importClaimsCommand: Command = {
  name: "import-claims",
  usage:
    "import-claims FILE.ndjson|FILE.csv [--contractor ID] [--program ID] [--columns claim=NAME,contractor=NAME,reference=NAME] [--store-only] · import-claims --list · import-claims --cancel BATCH",
  summary: "Takes claims into a program, one a line, and checks them together with every running worker.",
  examples: ["npm run -s ductmend -- import-claims claims.ndjson --contractor d0000001-0000-4000-8000-000000000000"],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: {
        contractor: { type: "string" },
        program: { type: "string" },
        columns: { type: "string" },
        "store-only": { type: "boolean" },
        list: { type: "boolean" },
        cancel: { type: "string" },
      },
    });
    const store = await openStore();
    try {
      await seedDemo(store, [], ENGINE_VERSION);
      if (values.list) {
        const batches = await store.withOrganization(actor, ({ claimBatches }) => claimBatches.list());
        for (const batch of batches) context.out(`${JSON.stringify(batch)}\n`);
        return 0;
      }
      if (values.cancel !== undefined) {
        await cancelImport(store, actor, values.cancel);
        return 0;
      }
      const [file] = positionals;
      if (file === undefined || positionals.length > 1)
        throw usageProblem("Name one file with claims, or “-” for standard input.");
      const { program, contractor, columns } = values;
      const options = { program, contractor, columns, storeOnly: values["store-only"] === true };
      return await runImport(store, context, { file, options });
    } finally {
      await store.close();
    }
  },
};
