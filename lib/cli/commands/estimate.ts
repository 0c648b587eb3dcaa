import { parseArgs } from "node:util";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { DrawPool } from "#lib/work/draw-pool.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import type { Command, CommandContext } from "../command.ts";
import { readJson } from "../read-text.ts";
import { summarizeResult } from "../summarize-result.ts";
import { usageProblem } from "../usage-problem.ts";
import { wholeNumber } from "../whole-number.ts";
import { withBills } from "../with-bills.ts";
import { withWeather } from "../with-weather.ts";

const MOST_DRAWS = 1_000_000;
const PROGRESS_DRAWS = 10_000;
const MOST_THREADS = 256;

/** The draws in several threads, with how far they are on standard error; an interrupt stops them all. */
async function threadsOf(threads: number, { say }: CommandContext): Promise<DrawPool> {
  const { createDrawPool } = await import("#lib/work/draw-pool.ts");
  return createDrawPool({
    threads,
    onProgress: ({ done, draws }) => {
      if (done === draws || done % PROGRESS_DRAWS === 0) say(`${done} of ${draws} draws\n`);
    },
  });
}

/** The whole trip for one job. */
export const estimateCommand: Command = {
  name: "estimate",
  usage:
    "estimate JOB.json [--weather FILE] [--bills FILE] [--temperatures FILE] [--draws 10000] [--seed 1] [--threads 1] [--documents DIR] [--human]",
  summary: "From the readings to scope, savings and retest, with the doubt of each number.",
  examples: [
    "npm run -s ductmend -- estimate lib/examples/cold-attic-furnace.json --human",
    "npm run -s ductmend -- estimate job.json --documents ./out > result.json",
    "npm run -s ductmend -- estimate job.json --weather town.epw",
    "npm run -s ductmend -- estimate job.json --bills green-button.xml --temperatures daily.csv",
  ],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: {
        draws: { type: "string", default: "10000" },
        seed: { type: "string", default: "1" },
        threads: { type: "string", default: "1" },
        documents: { type: "string" },
        weather: { type: "string" },
        bills: { type: "string" },
        temperatures: { type: "string" },
        human: { type: "boolean" },
      },
    });
    const [file] = positionals;
    if (file === undefined || positionals.length > 1)
      throw usageProblem("Name one job file, or “-” for standard input.");
    const draws = wholeNumber(values.draws, { name: "draws", low: 0, high: MOST_DRAWS });
    const seed = wholeNumber(values.seed, { name: "seed", low: 0, high: 2 ** 31 - 1 });
    const threads = wholeNumber(values.threads, { name: "threads", low: 1, high: MOST_THREADS });
    const told = parseJob(await readJson(file, context));
    const billed =
      values.bills === undefined && values.temperatures === undefined ? told : await withBills(told, values, context);
    const job = values.weather === undefined ? billed : await withWeather(billed, values.weather, context);
    const referenceData = await loadReferenceData(job);
    const solve = await createHighsSolver();
    const pool = threads > 1 && draws > 0 ? await threadsOf(threads, context) : null;
    const result = await estimate(job, referenceData, { solve, draws, seed, drawElsewhere: pool?.draw });
    await pool?.close();
    if (values.documents !== undefined) {
      const { writeDocuments } = await import("../write-documents.ts");
      for (const written of await writeDocuments({ job, result, folder: values.documents, context }))
        context.say(`wrote ${written}\n`);
    }
    context.out(values.human ? summarizeResult(job, result) : `${JSON.stringify(result)}\n`);
    return 0;
  },
};
