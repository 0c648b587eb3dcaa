import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { ductTestSchema, type FanTest } from "#lib/job/duct-test.ts";
import { fanSchema, gaugeSchema, type TestFan } from "#lib/job/instrument-schema.ts";
import { judgeInstruments } from "#lib/measure/judge-instruments.ts";
import { judgeFanTest } from "#lib/measure/judge-reading.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import { powerLawFit } from "#lib/measure/power-law-fit.ts";
import { baselineOf, REFERENCE_PRESSURE_PA, readFanTest } from "#lib/measure/read-fan-test.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import { COMPACT_WIDTH, type Scene, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { testPointsScene } from "#lib/pictures/test-points.ts";
import { type Draft, listAt, numberAt, readAt, textAt } from "./draft.ts";

/** One step as it is read just now. */
export interface LiveStep {
  flowCfm: number;
  pressurePa: number;
  /** Flow above the line through all steps; absent while there is no line. */
  aboveLineCfm?: number;
}

/** What makes a test doubtful, and which steps it is about, by their place in the form. */
export type LiveNote = ValidityNote & { steps: readonly number[] };

/** A test read while it is typed, whatever else of the job is still missing. */
export interface LiveReading {
  /** In the order of the form; null where a step is not complete. */
  steps: readonly (LiveStep | null)[];
  result?: { cfm25: number; lowCfm25: number; highCfm25: number };
  notes: readonly LiveNote[];
  picture?: { wide: Scene; compact: Scene };
}

/** By the id of the test. */
export type LiveReadings = Readonly<Record<string, LiveReading>>;

/** The same share of the distribution as all ranges of the answer. */
const RANGE_FACTOR = normalQuantile(0.9);
/** Faults of a single step; all others are of the test as a whole. */
const STEP_CODES = new Set(["wrong-sign", "fan-pressure-outside-span", "baseline-large"]);
const CURVE_POINTS = 9;

/** Reads each fan test of a draft as far as it is complete. */
export function readLiveTests(draft: Draft, elevationFt: number): LiveReadings {
  const fans = listAt(draft, "instruments/fans").flatMap((fan) => fanSchema.safeParse(fan).data ?? []);
  const gauges = listAt(draft, "instruments/gauges").flatMap((gauge) => gaugeSchema.safeParse(gauge).data ?? []);
  return Object.fromEntries(
    listAt(draft, "tests").flatMap((test, testIndex) => {
      const fan = fans.find(({ id }) => id === test.fanId) ?? null;
      const complete = listAt(test, "points").map((point) => isComplete(point, test, fan));
      const candidate = { ...test, points: listAt(test, "points").filter((_, i) => complete[i]) };
      const parsed = ductTestSchema.safeParse(candidate).data;
      const belowZero = listAt(test, "points").flatMap((point, i) =>
        (numberAt(point, "fanPressurePa") ?? 1) < 0 ? [i] : [],
      );
      if (belowZero.length > 0) {
        return [[String(test.id), { steps: complete.map(() => null), notes: [fanPressureBelowZero(belowZero)] }]];
      }
      if (test.kind !== "total-leakage" && test.kind !== "leakage-to-outside") return [];
      const gauge = gauges.find(({ id }) => id === test.gaugeId) ?? null;
      const onDate = textAt(test, "date") ?? textAt(draft, "date");
      const ofInstruments = judgeInstruments({ instruments: [fan, gauge], onDate }).map((note) => ({
        ...note,
        steps: [],
      }));
      // What is wrong with an instrument is said before anything is read with it.
      if (parsed?.kind !== "total-leakage" && parsed?.kind !== "leakage-to-outside") {
        return [[String(test.id), { steps: complete.map(() => null), notes: ofInstruments }]];
      }
      const places = complete.flatMap((isThere, i) => (isThere ? [i] : []));
      const live = readLive({ context: { test: parsed, testIndex, fan, gauge, elevationFt }, places, complete });
      return [[parsed.id, { ...live, notes: [...live.notes, ...ofInstruments] }]];
    }),
  );
}

/** A flow tap sucks, so most gauges show the fan with a minus; a calibration counts its size alone. */
const fanPressureBelowZero = (steps: readonly number[]): LiveNote => ({
  code: "fan-pressure-below-zero",
  severity: "problem",
  what: "The fan pressure is typed with a minus.",
  why: "A gauge shows it so, because the flow tap sucks; the calibration of the fan counts its size alone.",
  nextMove: "Type it without the minus.",
  steps,
});

function isComplete(point: Draft, test: Draft, fan: TestFan | null): boolean {
  const drivingPa =
    test.kind === "leakage-to-outside" ? numberAt(test, "houseToOutsidePressurePa") : numberAt(point, "ductPressurePa");
  if (drivingPa === undefined || drivingPa === 0) return false;
  if (numberAt(point, "flowCfm") !== undefined) return true;
  const restrictorId = textAt(point, "restrictorId");
  const isCalibrated = fan?.calibrations.some(
    (row) => row.restrictorId === restrictorId && row.direction === readAt(test, "direction"),
  );
  return numberAt(point, "fanPressurePa") !== undefined && isCalibrated === true;
}

interface LiveInput {
  context: Parameters<typeof readFanTest>[0];
  /** Where in the form each complete step stands. */
  places: readonly number[];
  complete: readonly boolean[];
}

function readLive({ context, places, complete }: LiveInput): LiveReading {
  try {
    return showReading(readFanTest(context), { context, places, complete });
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    const [first] = thrown.errors;
    const note: LiveNote = {
      code: "not-readable",
      severity: "problem",
      what: `${first?.detail ?? thrown.message}.`,
      why: "No leakage can be read from these steps.",
      nextMove: first?.fix ?? "Read them again.",
      steps: [],
    };
    return { steps: complete.map(() => null), notes: [note] };
  }
}

function showReading(read: Measurement, { context, places, complete }: LiveInput): LiveReading {
  const { test } = context;
  const line = read.fit;
  const onLine = (pressurePa: number) => (line ? line.coefficient * pressurePa ** line.exponent : undefined);
  const steps = complete.map((isThere, place): LiveStep | null => {
    const step = isThere ? read.steps[places.indexOf(place)] : undefined;
    if (!step) return null;
    const expectedCfm = onLine(step.pressurePa);
    return { ...step, ...(expectedCfm === undefined ? {} : { aboveLineCfm: step.flowCfm - expectedCfm }) };
  });
  const half = RANGE_FACTOR * read.standardUncertaintyCfm25;
  const result = { cfm25: read.cfm25, lowCfm25: read.cfm25 - half, highCfm25: read.cfm25 + half };
  const farthest = steps.reduce(
    (worst, step, i) => (off(step) > off(steps[worst] ?? null) ? i : worst),
    places[0] ?? 0,
  );
  const notes = read.notes.map((note): LiveNote => {
    if (note.code === "fit-scatters") return { ...note, steps: [farthest] };
    const isOfStep = STEP_CODES.has(note.code);
    return { ...note, steps: isOfStep ? places.filter((_, i) => codesOfStep(context, i).has(note.code)) : [] };
  });
  return { steps, result, notes, ...(read.steps.length > 1 ? { picture: drawPicture(read, test, places) } : {}) };
}

const off = (step: LiveStep | null): number =>
  step?.aboveLineCfm === undefined ? 0 : Math.abs(step.aboveLineCfm / step.flowCfm);

function codesOfStep({ test, fan, elevationFt }: LiveInput["context"], index: number): ReadonlySet<string> {
  const alone = { ...test, points: test.points.slice(index, index + 1) };
  return new Set(judgeFanTest({ test: alone, fan, baselinePa: baselineOf(test), elevationFt }).map(({ code }) => code));
}

/** The steps on log-log paper, with the line and where it may lie once there are enough of them. */
function drawPicture(read: Measurement, test: FanTest, places: readonly number[]): { wide: Scene; compact: Scene } {
  const points = read.steps.map((step, i) => ({
    id: `step-${places[i]}`,
    number: places[i]! + 1,
    pressurePa: step.pressurePa,
    flowCfm: step.flowCfm,
    isDoubtful: test.points[i]?.isDoubtful === true,
  }));
  const pressures = [...read.steps.map(({ pressurePa }) => pressurePa), REFERENCE_PRESSURE_PA];
  const [low, high] = [Math.min(...pressures), Math.max(...pressures)];
  const band = read.fit
    ? Array.from({ length: CURVE_POINTS }, (_, i) => low * (high / low) ** (i / (CURVE_POINTS - 1))).map(
        (pressurePa) => {
          const fit = powerLawFit({ points: read.steps, referencePressurePa: pressurePa });
          return { pressurePa, lowCfm: fit.leakageLowCfm, highCfm: fit.leakageHighCfm };
        },
      )
    : undefined;
  const at25 = read.fit ? powerLawFit({ points: read.steps }) : undefined;
  const input = {
    points,
    ...(read.fit ? { fit: read.fit } : {}),
    ...(band ? { band } : {}),
    reading: {
      pressurePa: REFERENCE_PRESSURE_PA,
      flowCfm: read.cfm25,
      ...(at25 ? { lowCfm: at25.leakageLowCfm, highCfm: at25.leakageHighCfm } : {}),
    },
  };
  return {
    wide: testPointsScene(input, { width: WIDE_WIDTH }),
    compact: testPointsScene(input, { width: COMPACT_WIDTH }),
  };
}
