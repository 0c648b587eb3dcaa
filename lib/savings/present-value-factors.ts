import { requireBetween } from "#lib/errors/require-number.ts";
import type { Ratio, Years } from "#lib/units/quantity.ts";

const MOST_YEARS = 100;

/** Rates that money calculations accept: half to twice the price of a year ago. */
function requireRate(field: string, label: string, value: Ratio): void {
  requireBetween({ field, label, value, low: -0.5, high: 1 });
}

function requireWholeYears(years: Years): void {
  requireBetween({
    field: "years",
    label: "Years",
    value: Number.isInteger(years) ? years : Number.NaN,
    low: 1,
    high: MOST_YEARS,
    fix: `Enter a whole number of years from 1 to ${MOST_YEARS}.`,
  });
}

/**
 * What one dollar at the end of a year is worth today.
 * SPV = 1/(1 + d)^N. Valid for whole years to 100, rates from −0.5 to 1. Source: nist-hb-135 §3.
 * @throws InputProblem outside the range.
 */
export function singlePresentValueFactor({ discountRate, years }: { discountRate: Ratio; years: Years }): Ratio {
  requireRate("discountRate", "Discount rate", discountRate);
  requireWholeYears(years);
  return (1 + discountRate) ** -years;
}

/**
 * What a yearly amount is worth today when it rises each year: the amount at base-date prices, escalated and
 * discounted once in year 1, paid at the end of each year.
 * UPV* = Σ_{t=1}^{N} ((1 + e)/(1 + d))^t = ((1 + e)/(d − e))·(1 − ((1 + e)/(1 + d))^N), N at e = d.
 * Valid for whole years to 100, rates from −0.5 to 1. Source: nist-hb-135 §3. The sum is taken term by term, so that
 * nothing is lost where e is near d.
 * @throws InputProblem outside the range.
 */
export function modifiedUniformPresentValueFactor({
  discountRate,
  escalationRate,
  years,
}: {
  discountRate: Ratio;
  escalationRate: Ratio;
  years: Years;
}): Ratio {
  requireRate("discountRate", "Discount rate", discountRate);
  requireRate("escalationRate", "Escalation rate", escalationRate);
  requireWholeYears(years);
  const ratio = (1 + escalationRate) / (1 + discountRate);
  let factor = 0;
  let term = 1;
  for (let year = 1; year <= years; year += 1) {
    term *= ratio;
    factor += term;
  }
  return factor;
}
