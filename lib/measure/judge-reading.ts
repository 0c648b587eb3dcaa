import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { FanTest, ReadingPoint } from "#lib/job/duct-test.ts";
import type { TestFan } from "#lib/job/instrument-schema.ts";
import type { Feet, Pascals, Ratio } from "#lib/units/quantity.ts";
import { REFERENCE_PRESSURE } from "./leakage-at-pressure.ts";
import {
  noteDensityLeftOut,
  noteFanPressureOutsideSpan,
  noteLargeBaseline,
  noteLeftoverPressure,
  noteMarkedDoubtful,
  noteReferenceNotReached,
  noteRepeatedReading,
  noteRestrictorChanged,
  noteWrongSign,
} from "./reading-notes.ts";

/** Limits of a curve through several pressures. Source: astm-e779 and iso-9972, form of. */
const LOWEST_EXPONENT = 0.5;
const HIGHEST_EXPONENT = 1;
const LOWEST_R_SQUARED = 0.98;
const COMPLIANT_POINT_COUNT = 5;

const present = (notes: readonly (ValidityNote | null)[]) => notes.filter((note) => note !== null);

/** The first of each kind: ten steps with the same fault are one fault. */
function firstOfEach(notes: readonly (ValidityNote | null)[]): ValidityNote[] {
  const found = present(notes);
  return found.filter((note, i) => found.findIndex((other) => other.code === note.code) === i);
}

/** What makes a leakage curve doubtful: an exponent that no leak has, scatter, too few steps. */
export function judgeFit({
  exponent,
  rSquared,
  pointCount,
}: {
  exponent: Ratio;
  rSquared: number;
  pointCount?: number;
}): ValidityNote[] {
  const isOdd = !(exponent >= LOWEST_EXPONENT && exponent <= HIGHEST_EXPONENT);
  return present([
    isOdd
      ? {
          code: "exponent-outside-range",
          severity: "doubt",
          what: `The exponent of the curve is ${exponent.toFixed(3)}, outside 0.5 to 1.`,
          why: "Leaks lie between turbulent (0.5) and laminar flow (1); something changed while you read.",
          nextMove:
            exponent > HIGHEST_EXPONENT
              ? "Look for masking or a damper that lifts as the pressure rises, then repeat from the highest pressure down."
              : "Look for a flap that closes as the pressure rises, a wrong restrictor or a baseline left in, then repeat.",
        }
      : null,
    rSquared < LOWEST_R_SQUARED
      ? {
          code: "fit-scatters",
          severity: "doubt",
          what: `The readings scatter about the curve (R² ${rSquared.toFixed(3)}, below 0.98).`,
          why: "Wind, a door that moved or a misread step makes the value at 25 Pa uncertain.",
          nextMove: "Read the step that lies farthest from the curve again, with longer averages.",
        }
      : null,
    pointCount !== undefined && pointCount < COMPLIANT_POINT_COUNT
      ? {
          code: "few-points",
          severity: "note",
          what: `The curve stands on ${pointCount} pressures.`,
          why: "A compliant multi-point test takes at least 5, and its interval is wide with fewer.",
          nextMove: "Add steps between 10 and 50 Pa.",
        }
      : null,
  ]);
}

/** The pressure that drives the leaks of one step, with its sign, before the baseline is taken off. */
function drivingPressure(test: FanTest, point: ReadingPoint): Pascals {
  return test.kind === "leakage-to-outside"
    ? test.houseToOutsidePressurePa + test.ductToHousePressurePa
    : point.ductPressurePa;
}

/** Everything about one fan test that makes its readings doubtful. Nothing is changed by it. */
export function judgeFanTest({
  test,
  fan,
  baselinePa,
  elevationFt,
}: {
  test: FanTest;
  fan: TestFan | null;
  baselinePa: Pascals;
  elevationFt: Feet;
}): ValidityNote[] {
  const { direction, points } = test;
  const restrictors = (fan?.calibrations ?? []).filter((row) => row.direction === direction);
  const pressures = points.map((point) => drivingPressure(test, point));
  const highestPressurePa = Math.max(...pressures.map((pressurePa) => Math.abs(pressurePa - baselinePa)));
  const seen = new Set<string>();
  const isRepeated = points.some((point) => {
    const reading = `${point.ductPressurePa} ${point.flowCfm} ${point.fanPressurePa} ${point.restrictorId}`;
    return seen.size === seen.add(reading).size;
  });
  return firstOfEach([
    ...pressures.map((pressurePa) => noteWrongSign({ pressurePa, direction })),
    ...points.map(({ fanPressurePa, restrictorId }) =>
      fanPressurePa === undefined || restrictorId === undefined
        ? null
        : noteFanPressureOutsideSpan({ fanPressurePa, restrictorId, restrictors }),
    ),
    noteRestrictorChanged({ restrictorIds: points.map(({ restrictorId }) => restrictorId), restrictors }),
    ...pressures.map((pressurePa) => noteLargeBaseline({ baselinePa, pressurePa })),
    noteReferenceNotReached({ highestPressurePa, referencePressurePa: REFERENCE_PRESSURE.value }),
    noteDensityLeftOut({ elevationFt, isCorrected: points.every((point) => point.flowCfm === undefined) }),
    test.kind === "leakage-to-outside" ? noteLeftoverPressure(test) : null,
    isRepeated ? noteRepeatedReading({ where: "Two steps of this test" }) : null,
    noteMarkedDoubtful({ stepNumbers: points.flatMap((point, i) => (point.isDoubtful ? [i + 1] : [])) }),
  ]);
}
