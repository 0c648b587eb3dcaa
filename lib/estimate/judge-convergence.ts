import type { Convergence } from "#lib/job/result/result-schema.ts";
import { quantileOfSorted } from "#lib/numeric/quantile.ts";

const BATCHES = 10;
const LEAST_DRAWS = 100;

/**
 * How much the ends of the range of the yearly saving would move with other draws: standard errors of its quantiles.
 * The draws are cut into ten batches; s of the batches' quantiles over √10. Valid from 100 draws. Source: jcgm-101 §7.9
 * (form of: the scatter of batches of trials). Null below, and without draws.
 */
export function judgeConvergence(savedUsdPerYear: Float64Array | undefined): Convergence | null {
  if (!savedUsdPerYear || savedUsdPerYear.length < LEAST_DRAWS) return null;
  const size = Math.floor(savedUsdPerYear.length / BATCHES);
  const batches = Array.from({ length: BATCHES }, (_, k) =>
    Float64Array.from(savedUsdPerYear.subarray(k * size, (k + 1) * size)).sort(),
  );
  const standardError = (share: number) => {
    const quantiles = batches.map((batch) => quantileOfSorted(batch, share));
    const mean = quantiles.reduce((sum, each) => sum + each, 0) / BATCHES;
    const squares = quantiles.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    return Math.sqrt(squares / (BATCHES - 1) / BATCHES);
  };
  return {
    p10StandardErrorUsdPerYear: standardError(0.1),
    p50StandardErrorUsdPerYear: standardError(0.5),
    p90StandardErrorUsdPerYear: standardError(0.9),
  };
}
