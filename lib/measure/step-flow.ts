import { airDensity } from "#lib/air/air-density.ts";
import type { FanTest, ReadingPoint } from "#lib/job/duct-test.ts";
import type { FanCalibration, Gauge, TestFan } from "#lib/job/instrument-schema.ts";
import type { Feet } from "#lib/units/quantity.ts";
import { fanFlow } from "./fan-flow.ts";

/** Outside its span a calibration may err by this share, as a bound. Source: practice. */
const OUTSIDE_SPAN_SHARE = 0.1;
/** A bound read as a rectangular distribution. Source: jcgm-100 §4.3.7. */
const RECTANGULAR = Math.sqrt(3);

export interface FanTestContext {
  test: FanTest;
  testIndex: number;
  fan: TestFan | null;
  gauge: Gauge | null;
  elevationFt: Feet;
}

/** The calibration that turns a step into a flow; null where the flow itself was told. */
const calibrationOf = (point: ReadingPoint, { test, fan }: FanTestContext): FanCalibration | null =>
  point.flowCfm === undefined
    ? (fan?.calibrations.find((row) => row.restrictorId === point.restrictorId && row.direction === test.direction) ??
      null)
    : null;

/** What the calibration adds to the doubt of a step read outside its span. */
export function spanRelativeUncertainty(points: readonly ReadingPoint[], context: FanTestContext): number {
  const isOutside = points.some((point) => {
    const calibration = calibrationOf(point, context);
    const pressurePa = point.fanPressurePa ?? 0;
    return (
      calibration !== null &&
      !(pressurePa >= calibration.minFanPressurePa && pressurePa <= calibration.maxFanPressurePa)
    );
  });
  return isOutside ? OUTSIDE_SPAN_SHARE / RECTANGULAR : 0;
}

/** The flow of one step: as told, or from the fan's calibration, corrected for the density of the air it moved. */
export function stepFlow(point: ReadingPoint, context: FanTestContext): number {
  if (point.flowCfm !== undefined) return point.flowCfm;
  const { test, fan, elevationFt } = context;
  const calibration = calibrationOf(point, context);
  if (!fan || !calibration) throw new Error(`Step of ${test.id} was let through without a calibration`);
  // Pushing, the fan breathes room air; pulling, it breathes what comes out of the ducts, which has been in the house.
  const { densityLbPerFt3 } = airDensity({ temperatureF: test.indoorTemperatureF ?? 70, elevationFt });
  return fanFlow({
    coefficient: calibration.coefficient,
    exponent: calibration.exponent,
    fanPressurePa: point.fanPressurePa!,
    fanAirDensityLbPerFt3: densityLbPerFt3,
    calibrationDensityLbPerFt3: fan.calibrationDensityLbPerFt3,
  }).flowCfm;
}
