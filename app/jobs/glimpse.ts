import "server-only";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { glimpseResult } from "./compute-result.ts";
import { buildAnswer } from "./trip/answer.ts";
import { type Draft, numberAt } from "./trip/draft.ts";
import { readLiveTests } from "./trip/live-readings.ts";
import type { LiveAnswer } from "./trip/use-answer.ts";

/** Until it is known where the house stands. */
const SEA_LEVEL_FT = 0;

/** The answer to a draft as it was saved with its readings, or what keeps it from being answered. */
export async function glimpse(document: unknown, units: UnitSystem): Promise<LiveAnswer> {
  const draft = document as Draft;
  const told = numberAt(draft, "house/elevationFt");
  try {
    const job = parseJob(document);
    const { place, climate } = await loadReferenceData(job);
    return {
      answer: buildAnswer({ job, result: await glimpseResult(job), units }),
      problems: [],
      readings: readLiveTests(draft, told ?? place.elevation?.value ?? climate.elevationFt),
    };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { answer: null, problems: thrown.errors, readings: readLiveTests(draft, told ?? SEA_LEVEL_FT) };
  }
}
