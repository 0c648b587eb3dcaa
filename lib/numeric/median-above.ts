import { normalCdf } from "./distributions.ts";
import { findRoot } from "./find-root.ts";

/** So far below its threshold a mean would be told once in a million. */
const DEEPEST = 5;

/**
 * The mean of a normal quantity that is only told where it came out above a threshold, without the bias of that
 * telling: as often too high as too low. Where `1 − Φ((x − μ)/u) = ½·(1 − Φ((c − μ)/u))`, x told, c the threshold.
 * Valid for x above c; nearly x once it is two uncertainties above. Source: derived (median of the truncated normal
 * distribution). Left out: what is known of the quantity beforehand.
 */
export function medianAbove({
  value,
  standardUncertainty,
  threshold,
}: {
  value: number;
  standardUncertainty: number;
  threshold: number;
}): number {
  if (!(standardUncertainty > 0)) return value;
  const above = (mean: number, at: number) => normalCdf((mean - at) / standardUncertainty);
  const excess = (mean: number) => above(mean, value) / above(mean, threshold) - 0.5;
  const lowest = threshold - DEEPEST * standardUncertainty;
  if (excess(lowest) >= 0) return lowest;
  return findRoot({ valueAt: excess, low: lowest, high: value, tolerance: 1e-9 * standardUncertainty });
}
