import "server-only";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { glimpseResult } from "./compute-result.ts";
import { buildAnswer } from "./trip/answer.ts";
import type { LiveAnswer } from "./trip/use-answer.ts";

/** The answer to a draft as it was saved, or what keeps it from being answered. */
export async function glimpse(document: unknown, units: UnitSystem): Promise<LiveAnswer> {
  try {
    const job = parseJob(document);
    return { answer: buildAnswer({ job, result: await glimpseResult(job), units }), problems: [] };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { answer: null, problems: thrown.errors };
  }
}
