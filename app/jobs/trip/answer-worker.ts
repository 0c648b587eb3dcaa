/// <reference lib="webworker" />
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { type AssumptionEffect, assumptionEffects } from "#lib/estimate/assumption-effects.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { leakWalk } from "#lib/estimate/leak-walk.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { fetchReferenceData } from "#lib/reference-data/load-browser.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { type Answer, buildAnswer } from "./answer.ts";
import { type Draft, numberAt, textAt } from "./draft.ts";
import { type LiveReadings, readLiveTests } from "./live-readings.ts";
import { type WalkWords, walkWords } from "./walk-words.ts";

/** One state of the form, numbered so that an answer that comes late is known as late. */
export interface AnswerRequest {
  id: number;
  draft: Draft;
  units: UnitSystem;
  /** Values alone, while one types; else their ranges after them. */
  isQuick: boolean;
}

export type AnswerReply =
  | { id: number; readings: LiveReadings }
  | { id: number; walk: WalkWords }
  | { id: number; answer: Answer; problems?: undefined }
  | { id: number; answer?: undefined; problems: readonly FieldProblem[] };

/** Enough for a range that stands still to two figures, and quick enough to follow typing. */
const LIVE_DRAWS = 2000;

let latestId = 0;
/** Of the place, once its tables are here; thin air moves a reading by a few percent. */
let placeElevationFt = 0;
/** The place that the elevation is of, so that its tables are asked for once and not with every key. */
let placeKey = "";
/** Stays until the next ones are worked out, so that nothing flickers while one types. */
let lastEffects: readonly AssumptionEffect[] = [];
const reply = (message: AnswerReply) => postMessage(message);
const nextTask = () => new Promise((resolve) => setTimeout(resolve));

/** The same engine as on the server, beside the form: first the values at once, then their ranges, then what each assumption does to them. */
addEventListener("message", async ({ data: { id, draft, units, isQuick } }: MessageEvent<AnswerRequest>) => {
  latestId = id;
  // The readings first, whatever else is missing: whoever stands at the gauge waits for them.
  const read = () =>
    reply({ id, readings: readLiveTests(draft, numberAt(draft, "house/elevationFt") ?? placeElevationFt) });
  read();
  if (await findPlace(draft)) read();
  try {
    const job = parseJob(draft);
    const reference = await fetchReferenceData(job);
    reply({ id, answer: buildAnswer({ job, result: await estimate(job, reference), effects: lastEffects, units }) });
    if (isQuick) return;
    await nextTask();
    if (latestId !== id) return;
    reply({ id, walk: walkWords({ walks: leakWalk(job, reference), job, text: unitText(units) }) });
    const result = await estimate(job, reference, { draws: LIVE_DRAWS });
    reply({ id, answer: buildAnswer({ job, result, effects: lastEffects, units }) });
    await nextTask();
    if (latestId !== id) return;
    lastEffects = await assumptionEffects({ job, reference, result });
    reply({ id, answer: buildAnswer({ job, result, effects: lastEffects, units }) });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    reply({ id, problems: thrown.errors });
  }
});

/** Learns how high the house lies, as soon as it is known where it stands and whatever else is missing. Whether it did. */
async function findPlace(draft: Draft): Promise<boolean> {
  const [zip, stationId] = [textAt(draft, "house/zip"), textAt(draft, "house/stationId")];
  const key = `${zip} ${stationId}`;
  if (key === placeKey || (zip === undefined && stationId === undefined)) return false;
  try {
    const house = { ...(zip ? { zip } : {}), ...(stationId ? { stationId } : {}) };
    const { place, climate } = await fetchReferenceData({ house });
    placeElevationFt = place.elevation?.value ?? climate.elevationFt;
    placeKey = key;
    return true;
  } catch (thrown) {
    // A ZIP code half typed, or tables not on this device yet: the readings are shown for sea level until they come.
    if (!(thrown instanceof InputProblem)) throw thrown;
    return false;
  }
}
