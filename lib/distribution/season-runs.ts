import type { SeasonLoad } from "./fixed-equipment-season.ts";
import type { WeatherColumns } from "./weather-columns.ts";

/** What a season's bins hold side by side: a bin is read from one place of the memory. */
export const BIN = { temperatureF: 0, sunBtuPerHFt2: 1, humidityRatio: 2, enthalpyBtuPerLb: 3, loadShare: 4 } as const;
export const BIN_STRIDE = 5;

/**
 * A season's bins in runs that share their part of the year, their ground and whether it is night, so that what these
 * add to a straight line of the weather is added once a run. In a run the bins stand one after the other, packed.
 */
export interface SeasonRuns {
  /** First place of each run in `packed`, and the end of the last. */
  readonly starts: Int32Array;
  readonly slotIndex: Uint8Array;
  readonly groundF: Float64Array;
  readonly isNight: Float64Array;
  readonly packed: Float64Array;
}

/**
 * Packs a season. The order of its bins changes, which a sum over them does not see: by part of the year, day before
 * night. Neighbors whose ground differs begin a new run.
 */
export function packRuns(season: WeatherColumns & SeasonLoad): SeasonRuns {
  const { count, slotIndex, groundF, isNight } = season;
  const order = orderedBySlotAndNight(season);
  const packed = new Float64Array(count * BIN_STRIDE);
  const firsts: number[] = [];
  for (let at = 0; at < count; at++) {
    const bin = order[at]!;
    const before = order[at - 1];
    if (
      before === undefined ||
      slotIndex[bin] !== slotIndex[before] ||
      isNight[bin] !== isNight[before] ||
      groundF[bin] !== groundF[before]
    )
      firsts.push(at);
    const place = at * BIN_STRIDE;
    packed[place + BIN.temperatureF] = season.temperatureF[bin]!;
    packed[place + BIN.sunBtuPerHFt2] = season.sunBtuPerHFt2[bin]!;
    packed[place + BIN.humidityRatio] = season.humidityRatio[bin]!;
    packed[place + BIN.enthalpyBtuPerLb] = season.enthalpyBtuPerLb[bin]!;
    packed[place + BIN.loadShare] = season.loadShare[bin]!;
  }
  return {
    starts: Int32Array.from([...firsts, count], (at) => at * BIN_STRIDE),
    slotIndex: Uint8Array.from(firsts, (at) => slotIndex[order[at]!]!),
    groundF: Float64Array.from(firsts, (at) => groundF[order[at]!]!),
    isNight: Float64Array.from(firsts, (at) => isNight[order[at]!]!),
    packed,
  };
}

/** Twelve months by three shifts: see SeasonLoad. */
const MOST_SLOTS = 36;

/** Counting sort: seasons are packed anew for every house, and a house has a few hundred bins. */
function orderedBySlotAndNight({ count, slotIndex, isNight }: WeatherColumns & SeasonLoad): Uint32Array {
  const next = new Uint32Array(2 * MOST_SLOTS + 1);
  const groupOf = (bin: number) => 2 * slotIndex[bin]! + isNight[bin]!;
  for (let bin = 0; bin < count; bin++) next[groupOf(bin) + 1]! += 1;
  for (let group = 1; group < next.length; group++) next[group]! += next[group - 1]!;
  const order = new Uint32Array(count);
  for (let bin = 0; bin < count; bin++) {
    const group = groupOf(bin);
    order[next[group]!] = bin;
    next[group]! += 1;
  }
  return order;
}
