import "server-only";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { leakWalk } from "#lib/estimate/leak-walk.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { computeEffects, liveResult } from "./compute-result.ts";
import { buildAnswer, LIVE_DRAWS } from "./trip/answer.ts";
import { type Draft, numberAt } from "./trip/draft.ts";
import { readLiveTests } from "./trip/live-readings.ts";
import type { CloserLook, LiveAnswer } from "./trip/use-answer.ts";
import { walkWords } from "./trip/walk-words.ts";

/** Until it is known where the house stands. */
const SEA_LEVEL_FT = 0;

/** The answer to a draft as it was saved, at once; and what takes longer, which the page is sent after it. */
export interface Glimpse {
  first: LiveAnswer;
  later: Promise<CloserLook>;
}

/** The answer to a draft as it was saved with its readings, or what keeps it from being answered. */
export async function glimpse(document: unknown, units: UnitSystem): Promise<Glimpse> {
  const draft = document as Draft;
  const told = numberAt(draft, "house/elevationFt");
  try {
    const job = parseJob(document);
    const reference = await loadReferenceData(job);
    const { place, climate } = reference;
    return {
      first: {
        answer: buildAnswer({ job, result: await liveResult(job, 0), units }),
        problems: [],
        readings: readLiveTests(draft, told ?? place.elevation?.value ?? climate.elevationFt),
        walk: walkWords({ walks: leakWalk(job, reference), job, text: unitText(units) }),
      },
      later: lookCloser(job, units),
    };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    const readings = readLiveTests(draft, told ?? SEA_LEVEL_FT);
    return { first: { answer: null, problems: thrown.errors, readings }, later: Promise.resolve({}) };
  }
}

/** What the engine says beside the form after the values: ranges, and what each assumption does to them; the same numbers as in the browser, for the same draws. */
async function lookCloser(job: Job, units: UnitSystem): Promise<CloserLook> {
  // The page goes out first.
  await new Promise(setImmediate);
  const result = await liveResult(job, LIVE_DRAWS);
  const effects = await computeEffects(job, result);
  return { answer: buildAnswer({ job, result, units, effects }) };
}
