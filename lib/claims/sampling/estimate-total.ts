import { normalQuantile } from "#lib/numeric/distributions.ts";

/** A figure of a sample, summed up as its claims go by. */
export interface SampleSums {
  count: number;
  sum: number;
  sumOfSquares: number;
}

const TWO_SIDED_95 = normalQuantile(0.975);

/**
 * The total over N claims by a simple random sample of n of them, with the range that covers it in 95 of 100 samples.
 * T = N·ȳ, s(T) = N·√(s²/n·(1 − n/N)), normal. Valid for a sample of some hundreds. With all claims in it the range is
 * the total itself. Source: cochran-1977 §2. Left out: very lopsided figures, of which the range covers less.
 */
export function estimateTotal(
  { count, sum, sumOfSquares }: SampleSums,
  populationCount: number,
): { total: number; low: number; high: number } {
  if (count === 0) return { total: 0, low: 0, high: 0 };
  const mean = sum / count;
  const variance = count > 1 ? Math.max(0, sumOfSquares - count * mean ** 2) / (count - 1) : 0;
  const notSeenShare = Math.max(0, 1 - count / populationCount);
  const half = TWO_SIDED_95 * populationCount * Math.sqrt((variance / count) * notSeenShare);
  const total = populationCount * mean;
  return { total, low: total - half, high: total + half };
}
