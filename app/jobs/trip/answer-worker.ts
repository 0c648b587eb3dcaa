/// <reference lib="webworker" />
import { InputProblem } from "#lib/errors/input-problem.ts";
import { type AssumptionEffect, assumptionEffects } from "#lib/estimate/assumption-effects.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { leakWalk } from "#lib/estimate/leak-walk.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { fetchReferenceData } from "#lib/reference-data/load-browser.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { buildAnswer, LIVE_DRAWS } from "./answer.ts";
import { type Draft, numberAt, textAt } from "./draft.ts";
import { drawInTurns, Superseded, turnsOf } from "./draw-in-turns.ts";
import { readLiveTests } from "./live-readings.ts";
import type { LiveAnswer } from "./use-answer.ts";
import { walkWords } from "./walk-words.ts";
import { WARMING_ID, WARMING_RUNS } from "./warming.ts";

/** One state of the form, numbered so that an answer that comes late is known as late. */
export interface AnswerRequest {
  id: number;
  jobId: string;
  draft: Draft;
  units: UnitSystem;
  /** Values alone, while one types; else their ranges after them. */
  isQuick: boolean;
}

/** What has become known; all else stays as it is. */
export type AnswerReply = { id: number } & Partial<LiveAnswer>;

let latestId = 0;
/** Of the place, once its tables are here; thin air moves a reading by a few percent. */
let placeElevationFt = 0;
/** The place that the elevation is of. */
let placeKey = "";
/** Stays until the next ones are worked out, so that nothing flickers while one types. */
let lastEffects: readonly AssumptionEffect[] = [];
let effectsJobId = "";
const reply = (message: AnswerReply) => postMessage(message);

/** The same engine as on the server, beside the form: first the values at once, then their ranges, then what each assumption does to them. */
addEventListener("message", async ({ data: { id, jobId, draft, units, isQuick } }: MessageEvent<AnswerRequest>) => {
  latestId = id;
  if (jobId !== effectsJobId) {
    lastEffects = [];
    effectsJobId = jobId;
  }
  const read = () => readLiveTests(draft, numberAt(draft, "house/elevationFt") ?? placeElevationFt);
  // The readings first where the place is not known yet: whoever stands at the gauge waits for them.
  if (placeKey !== placeKeyOf(draft)) {
    reply({ id, readings: read() });
    await findPlace(draft);
  }
  const readings = read();
  try {
    const job = parseJob(draft);
    const reference = await fetchReferenceData(job);
    const answerValues = async () =>
      buildAnswer({ job, result: await estimate(job, reference), effects: lastEffects, units });
    const answer = await answerValues();
    if (latestId !== id) return;
    reply({ id, readings, problems: [], answer });
    // The walk weighs the leaks many times over; the values do not wait for it.
    const nextTurn = turnsOf(() => latestId === id);
    await nextTurn();
    reply({ id, walk: walkWords({ walks: leakWalk(job, reference), job, text: unitText(units) }) });
    await nextTurn();
    if (id === WARMING_ID) {
      for (let run = 0; run < WARMING_RUNS; run++) {
        await answerValues();
        await nextTurn();
      }
    }
    if (isQuick) return;
    const result = await estimate(job, reference, { draws: LIVE_DRAWS, drawElsewhere: drawInTurns(nextTurn) });
    reply({ id, answer: buildAnswer({ job, result, effects: lastEffects, units }) });
    lastEffects = await assumptionEffects({ job, reference, result, between: nextTurn });
    reply({ id, answer: buildAnswer({ job, result, effects: lastEffects, units }) });
  } catch (thrown) {
    if (thrown instanceof Superseded) return;
    if (!(thrown instanceof InputProblem)) throw thrown;
    reply({ id, readings, problems: thrown.errors });
  }
});

const placeKeyOf = (draft: Draft): string => `${textAt(draft, "house/zip")} ${textAt(draft, "house/stationId")}`;

/** Learns how high the house lies, as soon as it is known where it stands and whatever else is missing. */
async function findPlace(draft: Draft): Promise<void> {
  const [zip, stationId] = [textAt(draft, "house/zip"), textAt(draft, "house/stationId")];
  if (zip === undefined && stationId === undefined) return;
  try {
    const house = { ...(zip ? { zip } : {}), ...(stationId ? { stationId } : {}) };
    const { place, climate } = await fetchReferenceData({ house });
    placeElevationFt = place.elevation?.value ?? climate.elevationFt;
    placeKey = placeKeyOf(draft);
  } catch (thrown) {
    // A ZIP code half typed, or tables not on this device yet: the readings are shown for sea level until they come.
    if (!(thrown instanceof InputProblem)) throw thrown;
  }
}
