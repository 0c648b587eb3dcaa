import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import { celsiusFromFahrenheit, FAHRENHEIT_DEGREES_PER_CELSIUS_DEGREE } from "#lib/units/conversions.ts";
import type { DegreeDays, Fahrenheit } from "#lib/units/quantity.ts";
import { DAYS_IN_MONTH, MONTHS_PER_YEAR } from "./climate-year.ts";

/** Shape of the daily temperatures' spread about the monthly mean, day to day. Source: erbs-1983. */
const SPREAD_CONSTANT = 1.698;

export interface DegreeDaysOfAMonth {
  heatingDegreeDays: DegreeDays;
  coolingDegreeDays: DegreeDays;
}

/**
 * Degree days to any base from twelve monthly mean temperatures.
 * In °C: s_m = 1.45 − 0.0290 T_m + 0.0664 s_yr, with s_yr the sample standard deviation of the twelve means;
 * h = (T_b − T_m)/(s_m √N); HDD = s_m N^1.5 [h/2 + ln(e^(−ah) + e^(ah))/(2a)], a = 1.698; CDD with −h.
 * Valid for means and bases from −80 to 120 °F. Source: erbs-1983.
 * Left out: local departures from the average spread; far from the base (low bases) it runs high.
 * @throws InputProblem when there are not twelve means or one is outside the range.
 */
export function degreeDaysFromMonthlyMeans({
  monthlyMeanTemperaturesF,
  baseTemperatureF,
}: {
  monthlyMeanTemperaturesF: ArrayLike<Fahrenheit>;
  baseTemperatureF: Fahrenheit;
}): DegreeDaysOfAMonth & { monthly: DegreeDaysOfAMonth[] } {
  const meansF = Array.from(monthlyMeanTemperaturesF);
  if (meansF.length !== MONTHS_PER_YEAR) {
    refuse({
      field: "monthlyMeanTemperaturesF",
      detail: `There must be 12 monthly means, not ${meansF.length}`,
      fix: "Enter the mean temperature of each month, January first.",
    });
  }
  meansF.forEach((value, month) => {
    requireBetween({
      field: `monthlyMeanTemperaturesF/${month}`,
      label: "A monthly mean",
      value,
      unit: "°F",
      low: -80,
      high: 120,
    });
  });
  requireBetween({
    field: "baseTemperatureF",
    label: "Base temperature",
    value: baseTemperatureF,
    unit: "°F",
    low: -80,
    high: 120,
  });

  const meansC = meansF.map(celsiusFromFahrenheit);
  const yearlySpreadC = sampleStandardDeviation(meansC);
  const monthly = meansC.map((meanC, month) => {
    const days = DAYS_IN_MONTH[month]!;
    const dailySpreadC = 1.45 - 0.029 * meanC + 0.0664 * yearlySpreadC;
    const h = (celsiusFromFahrenheit(baseTemperatureF) - meanC) / (dailySpreadC * Math.sqrt(days));
    const degreeDays = (signedH: number) =>
      FAHRENHEIT_DEGREES_PER_CELSIUS_DEGREE *
      dailySpreadC *
      days ** 1.5 *
      (signedH / 2 + lnOfTwoCosh(SPREAD_CONSTANT * signedH) / (2 * SPREAD_CONSTANT));
    return { heatingDegreeDays: Math.max(0, degreeDays(h)), coolingDegreeDays: Math.max(0, degreeDays(-h)) };
  });
  return {
    heatingDegreeDays: monthly.reduce((sum, month) => sum + month.heatingDegreeDays, 0),
    coolingDegreeDays: monthly.reduce((sum, month) => sum + month.coolingDegreeDays, 0),
    monthly,
  };
}

/** ln(e^(−x) + e^x), in the form that cannot overflow. */
function lnOfTwoCosh(x: number): number {
  return Math.abs(x) + Math.log1p(Math.exp(-2 * Math.abs(x)));
}

function sampleStandardDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
