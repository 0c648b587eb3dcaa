import { requireBetween } from "#lib/errors/require-number.ts";
import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import { type ClimateYear, MONTHS_PER_YEAR } from "./climate-year.ts";
import { dailyTemperatures } from "./daily-temperatures.ts";
import type { DegreeDayBasis } from "./degree-days-from-hourly.ts";
import type { DegreeDaysOfAMonth } from "./degree-days-from-monthly-means.ts";

/** Bases that degree days may be asked for. */
export const DEGREE_DAY_BASE_RANGE_F = { low: -20, high: 110 } as const;

/**
 * Degree days of each month of a typical year, to any base.
 * daily-extremes: Σ hours/24 · (T_b − T_day)+ over the bins of daily temperatures; hourly: the same over the bins of
 * hours. Source: own-method (`dailyTemperatures`); at 65 °F the year's sum is the tabulated one.
 * Valid for bases from −20 to 110 °F. Hourly counts more (some 2 % heating, 18 % cooling in a cold place), so the basis
 * comes back with the answer.
 * @throws InputProblem when the base is outside the range.
 */
export function degreeDaysByMonth({
  climate,
  baseTemperatureF,
  basis = "daily-extremes",
}: {
  climate: Pick<ClimateYear, "bins" | "months">;
  baseTemperatureF: Fahrenheit;
  basis?: DegreeDayBasis;
}): DegreeDaysOfAMonth & { monthly: DegreeDaysOfAMonth[]; basis: DegreeDayBasis } {
  requireBetween({
    field: "baseTemperatureF",
    label: "Base temperature",
    value: baseTemperatureF,
    unit: "°F",
    ...DEGREE_DAY_BASE_RANGE_F,
  });
  const { bins } = climate;
  const temperatureF = basis === "hourly" ? bins.temperatureF : dailyTemperatures(climate).temperatureF;
  const monthly = countDegreeDays({ bins, temperatureF, baseOfMonthF: () => baseTemperatureF });
  return {
    heatingDegreeDays: monthly.reduce((total, month) => total + month.heatingDegreeDays, 0),
    coolingDegreeDays: monthly.reduce((total, month) => total + month.coolingDegreeDays, 0),
    monthly,
    basis,
  };
}

/** Σ hours/24 · (T_b − T)+ month by month, the base a matter of the month (0 to 11). Unguarded. */
export function countDegreeDays({
  bins,
  temperatureF,
  baseOfMonthF,
}: {
  bins: ClimateYear["bins"];
  temperatureF: Float64Array;
  baseOfMonthF: (month: number) => Fahrenheit;
}): DegreeDaysOfAMonth[] {
  const heating = new Float64Array(MONTHS_PER_YEAR);
  const cooling = new Float64Array(MONTHS_PER_YEAR);
  for (let bin = 0; bin < temperatureF.length; bin += 1) {
    const index = bins.month[bin]! - 1;
    const belowF = baseOfMonthF(index) - temperatureF[bin]!;
    const days = bins.hours[bin]! / HOURS_PER_DAY;
    heating[index]! += days * Math.max(0, belowF);
    cooling[index]! += days * Math.max(0, -belowF);
  }
  return Array.from(heating, (heatingDegreeDays, month) => ({
    heatingDegreeDays,
    coolingDegreeDays: cooling[month]!,
  }));
}
