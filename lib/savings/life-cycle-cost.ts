import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Dollars, Ratio, Years } from "#lib/units/quantity.ts";
import { modifiedUniformPresentValueFactor } from "./present-value-factors.ts";

/** A yearly saving at the prices of the base date, and how those prices rise. */
export interface YearlySaving {
  annualAtBaseDateUsd: Dollars;
  escalationRate?: Ratio;
}

export interface LifeCycleCost {
  presentValueSavings: Dollars;
  netSavings: Dollars;
  savingsToInvestmentRatio: Ratio;
  /** Null where the savings are worth nothing or less. */
  adjustedInternalRateOfReturn: Ratio | null;
  /** Cost over the base-date savings; null where nothing is saved. */
  simplePaybackYears: Years | null;
  /** First whole year whose savings so far, in today's money, cover the cost; null if none within the years. */
  discountedPaybackYears: Years | null;
}

/**
 * What savings over the years are worth beside what they cost.
 * PV = Σ A·UPV*, NS = PV − C, SIR = PV/C, AIRR = (1 + r)·SIR^(1/N) − 1. Valid for a cost above zero, whole years to
 * 100. Source: nist-hb-135 §§3, 6. Left out: repairs, replacement, residual value, taxes.
 * @throws InputProblem outside the range.
 */
export function lifeCycleCost({
  costUsd,
  years,
  discountRate,
  savings,
  reinvestmentRate = discountRate,
}: {
  costUsd: Dollars;
  years: Years;
  discountRate: Ratio;
  savings: readonly YearlySaving[];
  reinvestmentRate?: Ratio;
}): LifeCycleCost {
  requireAbove({ field: "costUsd", label: "Cost", value: costUsd, unit: "USD" });
  const presentValueOver = (span: Years) =>
    savings.reduce(
      (sum, { annualAtBaseDateUsd, escalationRate = 0 }) =>
        sum + annualAtBaseDateUsd * modifiedUniformPresentValueFactor({ discountRate, escalationRate, years: span }),
      0,
    );
  const presentValueSavings = presentValueOver(years);
  requireBetween({
    field: "reinvestmentRate",
    label: "Reinvestment rate",
    value: reinvestmentRate,
    low: -0.5,
    high: 1,
  });
  if (!Number.isFinite(presentValueSavings)) {
    refuse({ field: "savings", detail: "A saving is not a number", fix: "Enter each yearly saving in dollars." });
  }
  const savingsToInvestmentRatio = presentValueSavings / costUsd;
  const firstYear = savings.reduce((sum, each) => sum + each.annualAtBaseDateUsd, 0);
  return {
    presentValueSavings,
    netSavings: presentValueSavings - costUsd,
    savingsToInvestmentRatio,
    adjustedInternalRateOfReturn:
      savingsToInvestmentRatio > 0 ? (1 + reinvestmentRate) * savingsToInvestmentRatio ** (1 / years) - 1 : null,
    simplePaybackYears: firstYear > 0 && Number.isFinite(costUsd / firstYear) ? costUsd / firstYear : null,
    discountedPaybackYears: firstYearCovering({ costUsd, years, presentValueOver }),
  };
}

function firstYearCovering({
  costUsd,
  years,
  presentValueOver,
}: {
  costUsd: Dollars;
  years: Years;
  presentValueOver: (span: Years) => Dollars;
}): Years | null {
  for (let year = 1; year <= years; year += 1) if (presentValueOver(year) >= costUsd) return year;
  return null;
}
