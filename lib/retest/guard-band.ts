import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { Ratio, Share } from "#lib/units/quantity.ts";

/**
 * The reading that meets a limit with confidence: the limit moved inward by the doubt of a reading there.
 * Upper: U − z u, or U/(1 + z r); lower: L + z u, or L/(1 − z r); z = Φ⁻¹(confidence), u = r × the acceptance limit.
 * Valid for one limit, one kind of uncertainty, confidence 0.5 to 0.9999. Source: jcgm-106 §8.3 (guarded acceptance).
 * Left out: the risk of the customer over many houses; each reading is judged alone.
 * @throws InputProblem outside the range, or where no reading could meet a lower limit.
 */
export function guardBand({
  upperLimit,
  lowerLimit,
  standardUncertainty,
  relativeStandardUncertainty,
  confidence = 0.95,
}: {
  upperLimit?: number;
  lowerLimit?: number;
  standardUncertainty?: number;
  relativeStandardUncertainty?: Ratio;
  confidence?: Share;
}): { acceptanceLimit: number } {
  requireOneOf({ upperLimit, lowerLimit }, "limit");
  requireOneOf({ standardUncertainty, relativeStandardUncertainty }, "uncertainty");
  requireBetween({ field: "confidence", label: "Confidence", value: confidence, low: 0.5, high: 0.9999 });
  const z = normalQuantile(confidence);
  // Inward is down from an upper limit and up from a lower one.
  const inward = upperLimit === undefined ? 1 : -1;
  const limit = (upperLimit ?? lowerLimit)!;
  if (standardUncertainty !== undefined) {
    requireBetween({
      field: "standardUncertainty",
      label: "Standard uncertainty",
      value: standardUncertainty,
      low: 0,
      high: 1e15,
    });
    return { acceptanceLimit: limit + inward * z * standardUncertainty };
  }
  const ratio = relativeStandardUncertainty!;
  requireBetween({
    field: "relativeStandardUncertainty",
    label: "Relative uncertainty",
    value: ratio,
    low: 0,
    high: 1,
  });
  if (!(limit >= 0)) {
    refuse({
      field: upperLimit === undefined ? "lowerLimit" : "upperLimit",
      detail: `A relative uncertainty needs a limit of 0 or more, not ${limit}`,
      fix: "Give standardUncertainty in the unit of the limit instead.",
    });
  }
  const divisor = 1 - inward * z * ratio;
  if (!(divisor > 0)) {
    refuse({
      field: "relativeStandardUncertainty",
      detail: `At ${ratio} no reading meets the lower limit with a confidence of ${confidence}`,
      fix: "Measure more exactly, or ask for less confidence.",
    });
  }
  return { acceptanceLimit: limit / divisor };
}

/** Exactly one of two values, and that one a finite number. */
function requireOneOf(values: Readonly<Record<string, number | undefined>>, what: string): void {
  const names = Object.keys(values);
  const given = names.filter((name) => values[name] !== undefined);
  if (given.length !== 1 || !Number.isFinite(values[given[0]!])) {
    refuse({
      field: given[1] ?? names[0]!,
      detail: `Exactly one ${what} is needed, not ${given.length === 0 ? "none" : given.map((name) => `${name} ${values[name]}`).join(" and ")}`,
      fix: `Give ${names.join(" or ")}.`,
    });
  }
}
