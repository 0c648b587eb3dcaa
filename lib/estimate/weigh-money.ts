import type { Economics } from "#lib/job/result/plan-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { lifeCycleCost } from "#lib/savings/life-cycle-cost.ts";
import type { HouseModel } from "./complete/complete-house.ts";
import { presentValueFactor } from "./plan-problem.ts";

const CENTS_PER_DOLLAR = 100;

function mapRanged(number: Ranged, formula: (value: number) => number): Ranged {
  const { value, p10, p50, p90 } = number;
  return {
    value: formula(value),
    ...(p10 === undefined ? {} : { p10: formula(p10), p50: formula(p50!), p90: formula(p90!) }),
  };
}

/**
 * The money over the measure's life: NIST Handbook 135 (life-cycle-cost). Net savings are a rising function of the
 * yearly saving, so their percentiles follow from its percentiles.
 */
export function weighMoney({
  house,
  costUsdCents,
  savedUsdPerYear,
  allLeaksUsdPerYear,
}: {
  house: HouseModel;
  costUsdCents: number;
  savedUsdPerYear: Ranged;
  allLeaksUsdPerYear: number;
}): Economics {
  const { measureLifeYears, discountRate, escalationRate } = house.prices;
  const factor = presentValueFactor(house);
  const costUsd = costUsdCents / CENTS_PER_DOLLAR;
  const account =
    costUsd > 0
      ? lifeCycleCost({
          costUsd,
          years: measureLifeYears,
          discountRate,
          savings: [{ annualAtBaseDateUsd: savedUsdPerYear.value, escalationRate }],
        })
      : null;
  return {
    costUsdCents,
    measureLifeYears,
    discountRate,
    presentValueSavingsUsd: mapRanged(savedUsdPerYear, (value) => value * factor),
    netSavingsUsd: mapRanged(savedUsdPerYear, (value) => value * factor - costUsd),
    savingsToInvestmentRatio: account?.savingsToInvestmentRatio ?? null,
    adjustedInternalRateOfReturnRate: account?.adjustedInternalRateOfReturn ?? null,
    simplePaybackYears: account?.simplePaybackYears ?? null,
    discountedPaybackYears: account?.discountedPaybackYears ?? null,
    doingNothingUsdPerYear: { value: allLeaksUsdPerYear },
  };
}
