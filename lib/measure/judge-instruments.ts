import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Gauge, TestFan } from "#lib/job/instrument-schema.ts";

type Instrument = Pick<TestFan | Gauge, "name" | "calibrationDueDate" | "isInvented">;

/**
 * What makes the instruments of a test doubtful on the day they were used: a calibration that has run out, or an
 * instrument that exists only in a demonstration. Dates as 2026-11-25; without a date nothing is said of the calibration.
 * The last day of a calibration still counts.
 */
export function judgeInstruments({
  instruments,
  onDate,
}: {
  instruments: readonly (Instrument | null | undefined)[];
  onDate: string | undefined;
}): ValidityNote[] {
  return instruments.flatMap((instrument): ValidityNote[] => {
    if (!instrument) return [];
    const { name, calibrationDueDate, isInvented } = instrument;
    return [
      ...(calibrationDueDate && onDate && calibrationDueDate < onDate
        ? [
            {
              code: "calibration-expired",
              severity: "doubt" as const,
              what: `The calibration of ${name} was due on ${calibrationDueDate}, before the test of ${onDate}.`,
              why: "Programs may refuse a reading made after that day; the warning stands in every document that uses it.",
              nextMove: "Have it calibrated and look whether its numbers moved, or test again with another instrument.",
            },
          ]
        : []),
      ...(isInvented
        ? [
            {
              code: "invented-instrument",
              severity: "note" as const,
              what: `${name} does not exist.`,
              why: "Its curves are invented for demonstration.",
              nextMove: "Enter your own instrument with its calibration.",
            },
          ]
        : []),
    ];
  });
}
