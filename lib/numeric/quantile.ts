import { refuse } from "#lib/errors/input-problem.ts";

/**
 * The value that a share of a sample lies below, from the sample in rising order (a typed array sorts by value).
 * Linear between order statistics at (count − 1)·share, counted from 0 (type 7). Valid from one value, share 0 to 1.
 * Source: jcgm-101 §7.7 (quantiles of a Monte Carlo).
 * @throws InputProblem for an empty sample or a share outside 0 to 1.
 */
export function quantileOfSorted(sorted: Float64Array, share: number): number {
  if (!(share >= 0 && share <= 1)) {
    refuse({ field: "share", detail: `A share must be from 0 to 1, not ${share}`, fix: "Enter a share, such as 0.9." });
  }
  if (sorted.length === 0) refuse({ field: "sample", detail: "The sample is empty", fix: "Make at least one draw." });
  const position = (sorted.length - 1) * share;
  const below = Math.floor(position);
  const lower = sorted[below]!;
  const upper = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return lower + (position - below) * (upper - lower);
}
