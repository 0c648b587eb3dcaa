import type { Ranged } from "#lib/job/result/ranged.ts";
import { quantilesInPlace } from "#lib/numeric/quantiles-in-place.ts";

/** Names of the numbers that one evaluation of the house yields, each with its place in the output array. */
export interface OutputLayout {
  readonly keys: readonly string[];
  /** Adds a number and returns its place. */
  add(key: string): number;
  at(key: string): number;
}

export function createOutputLayout(): OutputLayout {
  const keys: string[] = [];
  const places = new Map<string, number>();
  return {
    keys,
    add(key) {
      if (places.has(key)) throw new Error(`Output ${key} is laid out twice`);
      places.set(key, keys.length);
      keys.push(key);
      return keys.length - 1;
    },
    at(key) {
      const place = places.get(key);
      if (place === undefined) throw new Error(`No output is called ${key}`);
      return place;
    },
  };
}

/** The deterministic outputs, and one row of draws for each output when draws were made. */
export interface Outcome {
  readonly values: Float64Array;
  readonly draws: readonly Float64Array[] | null;
}

/** Room for one row at a time, kept because a result has hundreds of ranges. */
let room = new Float64Array(0);

function roomFor(count: number): Float64Array {
  if (room.length !== count) room = new Float64Array(count);
  return room;
}

/** A value with the 10th, 50th and 90th percentile of its draws, which are reordered. */
function withPercentiles(value: number, sample: Float64Array): Ranged {
  const [p10, p50, p90] = quantilesInPlace(sample, [0.1, 0.5, 0.9]);
  return { value, p10, p50, p90 };
}

/** A number with its 10th, 50th and 90th percentile, or alone when no draws were made. */
export function rangedOf(outcome: Outcome, place: number): Ranged {
  const value = outcome.values[place]!;
  const row = outcome.draws?.[place];
  if (!row) return { value };
  const sample = roomFor(row.length);
  sample.set(row);
  return withPercentiles(value, sample);
}

/** The range of a number that is made of other outputs, draw by draw. */
export function rangedOfFunction(outcome: Outcome, formula: (read: (place: number) => number) => number): Ranged {
  const value = formula((place) => outcome.values[place]!);
  const { draws } = outcome;
  if (!draws || draws.length === 0) return { value };
  const count = draws[0]!.length;
  const sample = roomFor(count);
  for (let k = 0; k < count; k++) sample[k] = formula((place) => draws[place]![k]!);
  return withPercentiles(value, sample);
}
