import { parseArgs } from "node:util";
import { createClaim } from "#lib/claims/create-claim.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { Command } from "../command.ts";
import { readJson } from "../read-text.ts";
import { usageProblem } from "../usage-problem.ts";
import { wholeNumber } from "../whole-number.ts";

const MOST_DRAWS = 1_000_000;
/** A program that has no rule of its own claims gross savings over the measure's own life. Source: practice. */
const GROSS = 1;

/** The claim packet of a job with its retest. */
export const claimCommand: Command = {
  name: "claim",
  usage: "claim JOB.json [--draws 10000] [--seed 1] [--on YYYY-MM-DD] [--by NAME] [--private-key FILE]",
  summary: "Prints the claim packet of a job with its retest, in canonical form.",
  examples: ["npm run -s ductmend -- claim lib/examples/mixed-crawlspace-retest.json > claim.json"],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: {
        draws: { type: "string", default: "10000" },
        seed: { type: "string", default: "1" },
        on: { type: "string" },
        by: { type: "string" },
        "private-key": { type: "string" },
      },
    });
    const [file] = positionals;
    if (file === undefined || positionals.length > 1)
      throw usageProblem("Name one job file, or “-” for standard input.");
    const job = parseJob(await readJson(file, context));
    const reference = await loadReferenceData(job);
    // Without a solver: the measures stated in the job are the scope, so that anyone recomputes the same.
    const result = await estimate(job, reference, {
      draws: wholeNumber(values.draws, { name: "draws", low: 0, high: MOST_DRAWS }),
      seed: wholeNumber(values.seed, { name: "seed", low: 0, high: 2 ** 31 - 1 }),
    });
    const retest = job.tests.filter((test) => test.stage === "retest" || test.stage === "final").at(-1);
    const claimedOn = values.on ?? retest?.date ?? job.date;
    if (claimedOn === undefined)
      throw usageProblem("Neither the retest nor the job has a date: give one with --on YYYY-MM-DD.");
    const privateKey =
      values["private-key"] === undefined
        ? undefined
        : (await import("../read-text.ts")).readText(values["private-key"], context);
    const claim = createClaim({
      job,
      reference,
      result,
      claimedBy: values.by ?? retest?.by ?? "not named",
      claimedOn,
      measureLifeYears: result.economics.measureLifeYears,
      netToGrossRatio: GROSS,
      signer: privateKey === undefined ? undefined : { privateKey: (await privateKey).trim() },
    });
    context.out(`${canonicalJson(claim)}\n`);
    return 0;
  },
};
