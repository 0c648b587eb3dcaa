import { parseArgs } from "node:util";
import { parseJson } from "#lib/errors/parse-json.ts";
import { elevationOf } from "#lib/estimate/elevation-of.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { readHpxml } from "#lib/exchange/hpxml/read-hpxml.ts";
import { writeHpxml } from "#lib/exchange/hpxml/write-hpxml.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Command, CommandContext } from "../command.ts";
import { readText } from "../read-text.ts";
import { usageProblem } from "../usage-problem.ts";

const WAYS = ["hpxml to job", "job to hpxml"];

/** A job with its result in the words of HPXML; without draws, for the standard has no ranges. */
async function toHpxml(text: string, name: string, on: string | undefined): Promise<string> {
  const job = parseJob(parseJson(text, name));
  const reference = await loadReferenceData(job);
  const result = await estimate(job, reference);
  const date = on ?? job.date ?? job.tests.find((test) => test.date !== undefined)?.date;
  if (date === undefined) throw usageProblem("Neither the job nor a test has a date: give one with --on YYYY-MM-DD.");
  const elevationFt = elevationOf(job, reference);
  return writeHpxml({ job, result, elevationFt, date });
}

function toJob(text: string, { say }: CommandContext): string {
  const { job, remarks } = readHpxml(text);
  for (const remark of remarks) say(`${remark}\n`);
  return `${JSON.stringify(job, null, 2)}\n`;
}

/** Between a job and the open standard of the trade. */
export const convertCommand: Command = {
  name: "convert",
  usage: "convert FILE --from hpxml --to job · convert JOB.json --from job --to hpxml [--on YYYY-MM-DD]",
  summary: "Writes a job with its result as HPXML 4.2, or reads an HPXML file and lists what could not be read.",
  examples: [
    "npm run -s ductmend -- convert lib/examples/mixed-crawlspace-retest.json --from job --to hpxml > house.xml",
  ],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: { from: { type: "string" }, to: { type: "string" }, on: { type: "string" } },
    });
    const [file] = positionals;
    if (file === undefined || positionals.length > 1) throw usageProblem("Name one file, or “-” for standard input.");
    const way = `${values.from} to ${values.to}`;
    if (!WAYS.includes(way)) throw usageProblem(`This converts ${WAYS.join(" and ")}: name both with --from and --to.`);
    const text = await readText(file, context);
    context.out(way === "job to hpxml" ? await toHpxml(text, file, values.on) : toJob(text, context));
    return 0;
  },
};
