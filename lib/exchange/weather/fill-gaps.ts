import type { Hours } from "#lib/units/quantity.ts";

/** Longer gaps hide a night or an afternoon. Source: practice. */
export const LONGEST_FILLED_HOURS: Hours = 6;

/**
 * Fills short runs of missing hours on a straight line between their neighbors, at the ends of the year with the nearest
 * value. Returns how many were filled, and where the first run that is too long begins, if there is one.
 * Source: practice.
 */
export function fillGaps(values: readonly (number | null)[]): {
  filled: number[];
  filledCount: number;
  longGapIndex: number | null;
} {
  const filled: number[] = [];
  let filledCount = 0;
  let index = 0;
  while (index < values.length) {
    const value = values[index]!;
    if (value !== null) {
      filled.push(value);
      index += 1;
      continue;
    }
    let end = index;
    while (end < values.length && values[end] === null) end += 1;
    const before = values[index - 1] ?? values[end] ?? null;
    const after = values[end] ?? before;
    if (end - index > LONGEST_FILLED_HOURS || before === null || after === null)
      return { filled, filledCount, longGapIndex: index };
    for (let hour = index; hour < end; hour += 1)
      filled.push(before + ((after - before) * (hour - index + 1)) / (end - index + 1));
    filledCount += end - index;
    index = end;
  }
  return { filled, filledCount, longGapIndex: null };
}
