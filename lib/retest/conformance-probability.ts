import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import { normalCdf } from "#lib/numeric/distributions.ts";
import type { Share } from "#lib/units/quantity.ts";

/**
 * How probable it is that a measured thing truly meets its limits.
 * p = Φ((U − y)/u) − Φ((L − y)/u). Valid for u ≥ 0 (0: 1 or 0), at least one limit. Source: jcgm-106 §7.
 * Left out: knowledge from before the measurement; the doubt is taken as normal.
 * @throws InputProblem without a limit, or with the limits the wrong way round.
 */
export function conformanceProbability({
  value,
  standardUncertainty,
  lowerLimit,
  upperLimit,
}: {
  value: number;
  standardUncertainty: number;
  lowerLimit?: number;
  upperLimit?: number;
}): { probability: Share } {
  requireBetween({ field: "value", label: "Value", value, low: -1e15, high: 1e15 });
  requireBetween({
    field: "standardUncertainty",
    label: "Standard uncertainty",
    value: standardUncertainty,
    low: 0,
    high: 1e15,
  });
  if (lowerLimit === undefined && upperLimit === undefined) {
    refuse({ field: "upperLimit", detail: "There is no limit to meet", fix: "Give upperLimit, lowerLimit, or both." });
  }
  if (!((lowerLimit ?? Number.NEGATIVE_INFINITY) < (upperLimit ?? Number.POSITIVE_INFINITY))) {
    refuse({
      field: "lowerLimit",
      detail: `The lower limit ${lowerLimit} must be below the upper limit ${upperLimit}`,
      fix: "Exchange the two limits, or leave one out.",
    });
  }
  if (standardUncertainty === 0) {
    const isWithin = value <= (upperLimit ?? value) && value >= (lowerLimit ?? value);
    return { probability: isWithin ? 1 : 0 };
  }
  const below = upperLimit === undefined ? 1 : normalCdf((upperLimit - value) / standardUncertainty);
  const tooLow = lowerLimit === undefined ? 0 : normalCdf((lowerLimit - value) / standardUncertainty);
  return { probability: Math.max(0, below - tooLow) };
}
