import { standardPressure } from "#lib/air/air-density.ts";
import { METERS_PER_FOOT } from "#lib/units/conversions.ts";
import type { Point } from "../great-circle-miles.ts";
import { numberIn, type Row, textIn } from "./source-rows.ts";
import { stationTitle } from "./station-title.ts";

const PASCALS_PER_MBAR = 100;
/** Mean pressure this far from what the elevation implies means that the header's elevation is another place's. */
const LARGEST_PRESSURE_GAP_PA = 2000;
const ELEVATION_STEPS = 60;

export interface StationSite extends Point {
  id: string;
  title: string;
  state: string;
  elevationFt: number;
  stationPressurePa: number;
  row: Row;
}

/** The facts of one station. An elevation that its own pressure contradicts is replaced by the one that fits it. */
export function readSite(row: Row): StationSite {
  const headerFt = numberIn(row, "elev_m") / METERS_PER_FOOT;
  const stationPressurePa = numberIn(row, "pressure_mbar_mean") * PASCALS_PER_MBAR;
  const isContradicted = Math.abs(standardPressure(headerFt) - stationPressurePa) > LARGEST_PRESSURE_GAP_PA;
  return {
    id: textIn(row, "tmy3_id"),
    title: `${stationTitle(textIn(row, "name"))}, ${textIn(row, "state")}`,
    state: textIn(row, "state"),
    latitudeDegrees: numberIn(row, "lat"),
    longitudeDegrees: numberIn(row, "lon"),
    elevationFt: Math.round(isContradicted ? elevationAt(stationPressurePa) : headerFt),
    stationPressurePa,
    row,
  };
}

/** The elevation whose standard pressure this is, by halving: pressure falls with height. */
function elevationAt(pressurePa: number): number {
  let low = -1000;
  let high = 15000;
  for (let step = 0; step < ELEVATION_STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (standardPressure(middle) > pressurePa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
