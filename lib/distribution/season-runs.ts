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

/** Packs a season. The order of its bins changes, which a sum over them does not see. */
export function packRuns(season: WeatherColumns & SeasonLoad): SeasonRuns {
  const { slotIndex, groundF, isNight } = season;
  const order = Array.from({ length: season.count }, (_, bin) => bin).sort(
    (a, b) => slotIndex[a]! - slotIndex[b]! || isNight[a]! - isNight[b]! || groundF[a]! - groundF[b]! || a - b,
  );
  const isNewRun = (bin: number, before: number | undefined) =>
    before === undefined ||
    slotIndex[bin] !== slotIndex[before] ||
    isNight[bin] !== isNight[before] ||
    groundF[bin] !== groundF[before];
  const firsts = order.flatMap((bin, at) => (isNewRun(bin, order[at - 1]) ? [at] : []));
  const packed = new Float64Array(order.length * BIN_STRIDE);
  order.forEach((bin, at) => {
    for (const key of Object.keys(BIN) as (keyof typeof BIN)[]) packed[at * BIN_STRIDE + BIN[key]] = season[key][bin]!;
  });
  const ofFirsts = (column: Float64Array) => Float64Array.from(firsts, (at) => column[order[at]!]!);
  return {
    starts: Int32Array.from([...firsts, order.length], (at) => at * BIN_STRIDE),
    slotIndex: Uint8Array.from(firsts, (at) => slotIndex[order[at]!]!),
    groundF: ofFirsts(groundF),
    isNight: ofFirsts(isNight),
    packed,
  };
}
