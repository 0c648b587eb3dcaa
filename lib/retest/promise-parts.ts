import { requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm, Quantity } from "#lib/units/quantity.ts";

export interface PromiseParts {
  /** More or less was sealed than promised, each cfm worth what it was promised to be. */
  howMuchUsdPerYear: Quantity<"USD/yr">;
  /** It was sealed at other places than promised, so that each cfm is worth more or less. */
  whereUsdPerYear: Quantity<"USD/yr">;
}

const HIGHEST = 1e9;

/**
 * Why a verified saving differs from the promised one, in two parts that add up to the whole difference.
 * how much = (R_v − R_p)·S_p/R_p; where = S_v − S_p − how much; R removed leakage, S saving, p promised, v verified.
 * Valid for R_p > 0. Null where nothing was promised to be removed. Source: own-method (a difference of two products
 * split at the promised rate). Left out: the doubt of both, which the ranges beside it tell.
 * @throws InputProblem when a value is no number in its range.
 */
export function promiseParts(values: {
  promisedRemovedCfm25: Cfm;
  verifiedRemovedCfm25: Cfm;
  promisedUsdPerYear: Quantity<"USD/yr">;
  verifiedUsdPerYear: Quantity<"USD/yr">;
}): PromiseParts | null {
  for (const [field, value] of Object.entries(values)) {
    requireBetween({ field, label: field, value, low: -HIGHEST, high: HIGHEST });
  }
  const { promisedRemovedCfm25, verifiedRemovedCfm25, promisedUsdPerYear, verifiedUsdPerYear } = values;
  if (!(promisedRemovedCfm25 > 0)) return null;
  const howMuchUsdPerYear = (verifiedRemovedCfm25 - promisedRemovedCfm25) * (promisedUsdPerYear / promisedRemovedCfm25);
  return { howMuchUsdPerYear, whereUsdPerYear: verifiedUsdPerYear - promisedUsdPerYear - howMuchUsdPerYear };
}
