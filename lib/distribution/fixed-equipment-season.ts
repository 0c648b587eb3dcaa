import type { BtuPerHour } from "#lib/units/quantity.ts";
import type { CoolingLines } from "./cooling-performance.ts";
import { BIN, BIN_STRIDE, type SeasonRuns } from "./season-runs.ts";
import type { UsefulLine } from "./useful-line.ts";

/** How a season's load is shared out over bins. Columns of equal length; shares add up to 1 over the year. */
export interface SeasonLoad {
  readonly count: number;
  /** Which part of the year's account a bin falls into: its month (0 to 11), or month × 3 + 8-hour shift. */
  readonly slotIndex: Uint8Array;
  readonly hours: Float64Array;
  readonly loadShare: Float64Array;
}

/** What one Btu of yearly load asks of equipment whose efficiency does not depend on the load. Multiply by the load. */
export interface FixedEquipmentSeason {
  runHoursPerBtu: number;
  readonly runHoursPerBtuBySlot: Float64Array;
  /** Run hours times the outdoor temperature, °F·h: cooling only, whose output and input are straight lines of it. */
  runDegreeHoursPerBtu: number;
  readonly runDegreeHoursPerBtuBySlot: Float64Array;
}

/** `slots` parts of the year are kept apart: 12 months, or 36 where prices follow the shifts. */
export const createFixedEquipmentSeason = (slots = 12): FixedEquipmentSeason => ({
  runHoursPerBtu: 0,
  runHoursPerBtuBySlot: new Float64Array(slots),
  runDegreeHoursPerBtu: 0,
  runDegreeHoursPerBtuBySlot: new Float64Array(slots),
});

/** Of the capacity; below it a load has no finite answer, so it is held there. Source: practice. */
export const LEAST_USEFUL_SHARE = 0.05;

interface Season {
  useful: UsefulLine;
  runs: SeasonRuns;
  capacityBtuPerH: BtuPerHour;
  out: FixedEquipmentSeason;
}

/**
 * Run time of a furnace or resistance heater over a season, per Btu of load.
 * Σ share/useful over the bins, useful the straight line of useful-line: a load-weighted season. Energy = load × run hours
 * per Btu × capacity/efficiency; the season's distribution efficiency = 1/(capacity × run hours per Btu), times the
 * equipment factor. Valid for equipment that meets the load; before and after share the load. Source: derived (energy is
 * additive, as seasonal-efficiency). Left out: unmet load of equipment that is too small. Unguarded, allocates nothing.
 */
export function fillFixedHeating({ useful, runs, capacityBtuPerH, out }: Season): void {
  const { starts, slotIndex, groundF, isNight, packed } = runs;
  const { constant, outdoor, sun, ground, night } = useful.line;
  const { runHoursPerBtuBySlot } = out;
  const base = useful.perCapacityFactor * capacityBtuPerH + constant;
  const least = LEAST_USEFUL_SHARE * capacityBtuPerH;
  runHoursPerBtuBySlot.fill(0);
  for (let run = 0; run < slotIndex.length; run++) {
    const inRun = base + ground * groundF[run]! + night * isNight[run]!;
    const end = starts[run + 1]!;
    let sum = 0;
    for (let at = starts[run]!; at < end; at += BIN_STRIDE) {
      const arrives = inRun + outdoor * packed[at + BIN.temperatureF]! + sun * packed[at + BIN.sunBtuPerHFt2]!;
      // biome-ignore lint/complexity/useMathMinMax: a tenth slower in this loop, which is most of a draw
      sum += packed[at + BIN.loadShare]! / (arrives > least ? arrives : least);
    }
    runHoursPerBtuBySlot[slotIndex[run]!]! += sum;
  }
  out.runHoursPerBtu = sumOf(runHoursPerBtuBySlot);
}

/**
 * The same of an air conditioner, whose line also holds moisture and whose capacity falls as it gets hotter outdoors
 * (cooling-performance). Beside the run hours it gives them times the outdoor temperature: output and input follow.
 */
export function fillFixedCooling({
  useful,
  runs,
  capacityBtuPerH,
  lines,
  out,
}: Season & { lines: Pick<CoolingLines, "capacityConstant" | "capacityPerF"> }): void {
  const { starts, slotIndex, groundF, isNight, packed } = runs;
  const { constant, sun, ground, night } = useful.line;
  const { moistureLine, perEnthalpy } = useful;
  const moistOutdoor = moistureLine.outdoor;
  const moistSun = moistureLine.sun;
  const { runHoursPerBtuBySlot, runDegreeHoursPerBtuBySlot } = out;
  const perRated = useful.perCapacityFactor * capacityBtuPerH;
  const base = perRated * lines.capacityConstant + constant;
  const outdoor = useful.line.outdoor + perRated * lines.capacityPerF;
  const least = LEAST_USEFUL_SHARE * capacityBtuPerH;
  runHoursPerBtuBySlot.fill(0);
  runDegreeHoursPerBtuBySlot.fill(0);
  for (let run = 0; run < slotIndex.length; run++) {
    const groundTemperatureF = groundF[run]!;
    const nightFlag = isNight[run]!;
    const inRun = base + ground * groundTemperatureF + night * nightFlag;
    const moistInRun =
      moistureLine.constant + moistureLine.ground * groundTemperatureF + moistureLine.night * nightFlag;
    const end = starts[run + 1]!;
    let sum = 0;
    let degrees = 0;
    for (let at = starts[run]!; at < end; at += BIN_STRIDE) {
      const outdoorF = packed[at + BIN.temperatureF]!;
      const sunRate = packed[at + BIN.sunBtuPerHFt2]!;
      const arrives =
        inRun +
        outdoor * outdoorF +
        sun * sunRate +
        packed[at + BIN.humidityRatio]! * (moistInRun + moistOutdoor * outdoorF + moistSun * sunRate) +
        perEnthalpy * packed[at + BIN.enthalpyBtuPerLb]!;
      // biome-ignore lint/complexity/useMathMinMax: a tenth slower in this loop, which is most of a draw
      const hours = packed[at + BIN.loadShare]! / (arrives > least ? arrives : least);
      sum += hours;
      degrees += hours * outdoorF;
    }
    runHoursPerBtuBySlot[slotIndex[run]!]! += sum;
    runDegreeHoursPerBtuBySlot[slotIndex[run]!]! += degrees;
  }
  out.runHoursPerBtu = sumOf(runHoursPerBtuBySlot);
  out.runDegreeHoursPerBtu = sumOf(runDegreeHoursPerBtuBySlot);
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
}
