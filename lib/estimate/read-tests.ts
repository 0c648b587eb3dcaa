import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { judgeInstruments } from "#lib/measure/judge-instruments.ts";
import { judgeTestsTogether } from "#lib/measure/judge-tests-together.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import { readFanTest } from "#lib/measure/read-fan-test.ts";
import { readSubtractionTest } from "#lib/measure/read-subtraction-test.ts";
import type { Ledger } from "./ledger.ts";

/** A method names its own input; here it becomes the place in the job. */
function atTest<Value>(testIndex: number, read: () => Value): Value {
  try {
    return read();
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    const errors = thrown.errors.map((each) => ({ ...each, pointer: `#/tests/${testIndex}${each.pointer.slice(1)}` }));
    throw new InputProblem(thrown.code, errors);
  }
}

/** Reads every test of a job; what makes a reading doubtful goes into the warnings, the reading itself is kept. */
export function readTests({
  job,
  elevationFt,
  ledger,
}: {
  job: Job;
  elevationFt: number;
  ledger: Ledger;
}): Measurement[] {
  const fans = new Map((job.instruments?.fans ?? []).map((fan) => [fan.id, fan]));
  const gauges = new Map((job.instruments?.gauges ?? []).map((gauge) => [gauge.id, gauge]));
  const measurements = job.tests.flatMap((test, testIndex) =>
    atTest(testIndex, (): Measurement[] => {
      switch (test.kind) {
        case "total-leakage":
        case "leakage-to-outside":
          return [
            readFanTest({
              test,
              testIndex,
              fan: fans.get(test.fanId ?? "") ?? null,
              gauge: gauges.get(test.gaugeId ?? "") ?? null,
              elevationFt,
            }),
          ];
        case "blower-door-subtraction": {
          const { measurement, notes } = readSubtractionTest({ test, testIndex });
          if (measurement) return [measurement];
          for (const note of notes) ledger.warn({ ...note, path: `#/tests/${testIndex}` });
          return [];
        }
        case "delta-q":
          // It measures leakage at operating pressure, which never becomes a figure at 25 Pa.
          return [];
      }
    }),
  );
  warnOfInstruments({ job, ledger });
  for (const { testIndex, notes } of measurements)
    for (const note of notes) ledger.warn({ ...note, path: `#/tests/${testIndex}` });
  for (const { testId, ...note } of judgeTestsTogether(measurements))
    ledger.warn({ ...note, path: `#/tests/${job.tests.findIndex((test) => test.id === testId)}` });
  return measurements;
}

/** Each instrument speaks once, however many tests it served: what counts is the last day on which it was used. */
function warnOfInstruments({ job, ledger }: { job: Job; ledger: Ledger }): void {
  for (const [list, key] of [
    ["fans", "fanId"],
    ["gauges", "gaugeId"],
  ] as const) {
    (job.instruments?.[list] ?? []).forEach((instrument, index) => {
      const used = job.tests.filter((test) => test[key] === instrument.id);
      if (used.length === 0) return;
      const onDate = used
        .flatMap((test) => test.date ?? job.date ?? [])
        .sort()
        .at(-1);
      for (const note of judgeInstruments({ instruments: [instrument], onDate }))
        ledger.warn({ ...note, path: `#/instruments/${list}/${index}` });
    });
  }
}
