import { flowOnFanCurve } from "#lib/air/fan-curve.ts";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import type { Gauge, TestFan } from "#lib/job/instrument-schema.ts";
import { formatNumber } from "#lib/units/format.ts";

/** The flows that a fan reads in standard air, from its least restrictor's lowest to its widest one's highest. */
export function spanWords({ calibrations }: TestFan): string {
  const density = STANDARD_AIR_DENSITY.value;
  const flows = calibrations.flatMap((row) =>
    [row.minFanPressurePa, row.maxFanPressurePa].map((pressurePa) => flowOnFanCurve(row, pressurePa, density, density)),
  );
  const restrictors = new Set(calibrations.map(({ restrictorId }) => restrictorId)).size;
  return `${formatNumber(Math.min(...flows))} to ${formatNumber(Math.max(...flows))} cfm, ${restrictors} ${restrictors === 1 ? "restrictor" : "restrictors"}`;
}

/** How the calibration stands on a day, in words. */
export function calibrationState(
  {
    calibrationDate,
    calibrationDueDate,
    isInvented,
  }: Pick<TestFan | Gauge, "calibrationDate" | "calibrationDueDate" | "isInvented">,
  today: string,
): string {
  const invented = isInvented ? "; invented for demonstration" : "";
  if (!calibrationDueDate)
    return `${calibrationDate ? `of ${calibrationDate}, no due date` : "no date entered"}${invented}`;
  return `${calibrationDueDate < today ? "was due on" : "due on"} ${calibrationDueDate}${invented}`;
}
