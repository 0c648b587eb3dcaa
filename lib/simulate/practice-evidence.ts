import type { FanCalibration, TestFan } from "#lib/job/instrument-schema.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import type { PracticeChannelId, PracticeSetup } from "./practice-setup.ts";

/** What a diagnosis goes by: the set-up, and what the gauge shows. */
export interface PracticeEvidence {
  setup: PracticeSetup;
  fan: TestFan;
  calibration: FanCalibration;
  readings: Readonly<Record<PracticeChannelId, Pascals>>;
  hasFilmBlownOff: boolean;
}

/** A pressure as the gauge shows it. */
export const shownText = (pressurePa: Pascals): string =>
  `${pressurePa < 0 ? "−" : ""}${Math.abs(pressurePa).toFixed(1)} Pa`;
