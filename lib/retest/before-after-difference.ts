import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Ratio, Share } from "#lib/units/quantity.ts";

/** A difference below this many standard uncertainties cannot be told from none at 95 %. Source: jcgm-100 §6. */
const COVERAGE_95 = 1.96;

export interface BeforeAfterDifference {
  difference: number;
  standardUncertainty: number;
  reductionShare: Share;
  reductionStandardUncertainty: Share;
  /** The two readings can be told apart: the difference is beyond its own 95 % interval about zero. */
  isDifferenceClear: boolean;
}

/**
 * What changed between two readings of the same thing, and how surely.
 * u² = (r_b·b)² + (r_a·a)² + g²(b − a)² with one fan and flow restrictor, else + g²(b² + a²); reduction 1 − a/b with
 * u = (a/b)√(R_b² + R_a² − 2ρR_bR_a), R² = r² + g², ρR_bR_a = g² when shared, else 0.
 * Valid for before > 0, after ≥ 0, relative uncertainties 0 to 1. Source: jcgm-100 §5.2 (correlated inputs).
 * Left out: what changed in the house besides the ducts.
 * @throws InputProblem outside the range.
 */
export function beforeAfterDifference({
  before,
  after,
  randomRelativeBefore,
  randomRelativeAfter,
  sharedRelative = 0,
  sameInstrumentAndRestrictor = false,
}: {
  before: number;
  after: number;
  randomRelativeBefore: Ratio;
  randomRelativeAfter: Ratio;
  sharedRelative?: Ratio;
  sameInstrumentAndRestrictor?: boolean;
}): BeforeAfterDifference {
  requireAbove({ field: "before", label: "Value before", value: before });
  requireBetween({ field: "after", label: "Value after", value: after, low: 0, high: 1e15 });
  for (const [field, value] of Object.entries({ randomRelativeBefore, randomRelativeAfter, sharedRelative })) {
    requireBetween({ field, label: "Relative uncertainty", value, low: 0, high: 1 });
  }
  const difference = before - after;
  const sharedSquare = sharedRelative ** 2;
  const sharedPart = sameInstrumentAndRestrictor ? difference ** 2 : before ** 2 + after ** 2;
  const standardUncertainty = Math.sqrt(
    (randomRelativeBefore * before) ** 2 + (randomRelativeAfter * after) ** 2 + sharedSquare * sharedPart,
  );
  // What both readings share cancels in their ratio.
  const sharedInRatio = sameInstrumentAndRestrictor ? 0 : 2 * sharedSquare;
  return {
    difference,
    standardUncertainty,
    reductionShare: 1 - after / before,
    reductionStandardUncertainty:
      (after / before) * Math.sqrt(randomRelativeBefore ** 2 + randomRelativeAfter ** 2 + sharedInRatio),
    isDifferenceClear: Math.abs(difference) > COVERAGE_95 * standardUncertainty,
  };
}
