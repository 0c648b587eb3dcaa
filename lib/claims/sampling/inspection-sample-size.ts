import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { Share } from "#lib/units/quantity.ts";

/** A share of which nothing is known is taken where it needs most claims. Source: cochran-1977 §4.4. */
const WIDEST_SHARE: Share = 0.5;

/**
 * How many of N claims to inspect so that a share found in them lies within ± d of the true one.
 * n₀ = z² p (1 − p) / d², n = n₀ / (1 + (n₀ − 1)/N), rounded up. Valid for N ≥ 1, confidence .5 to .999, precision .005
 * to .5. Source: cochran-1977 §4.4; with N = 10,000, 95 % and ±5 % it gives the 370 of krejcie-morgan-1970. Left out:
 * clusters (inspecting several claims of one contractor tells less than as many of several).
 * @throws InputProblem outside these ranges.
 */
export function inspectionSampleSize({
  populationCount,
  confidenceProbability,
  precisionShare,
  expectedShare = WIDEST_SHARE,
}: {
  populationCount: number;
  confidenceProbability: Share;
  precisionShare: Share;
  expectedShare?: Share;
}): { sampleCount: number; withoutCorrectionCount: number; unroundedCount: number } {
  if (!(Number.isInteger(populationCount) && populationCount >= 1)) {
    refuse({
      field: "populationCount",
      detail: `There must be at least one claim to draw from, not ${populationCount}`,
      fix: "Choose claims first.",
    });
  }
  requireBetween({
    field: "confidenceProbability",
    label: "Confidence",
    value: confidenceProbability,
    low: 0.5,
    high: 0.999,
  });
  requireBetween({ field: "precisionShare", label: "Precision", value: precisionShare, low: 0.005, high: 0.5 });
  requireBetween({ field: "expectedShare", label: "Expected share", value: expectedShare, low: 0.001, high: 0.999 });
  const z = normalQuantile((1 + confidenceProbability) / 2);
  const withoutCorrectionCount = (z ** 2 * expectedShare * (1 - expectedShare)) / precisionShare ** 2;
  const unroundedCount = withoutCorrectionCount / (1 + (withoutCorrectionCount - 1) / populationCount);
  return { sampleCount: Math.min(populationCount, Math.ceil(unroundedCount)), withoutCorrectionCount, unroundedCount };
}
