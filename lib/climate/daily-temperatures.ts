import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import type { Fahrenheit, Share } from "#lib/units/quantity.ts";
import { type ClimateYear, DAYS_IN_MONTH, MONTHS_PER_YEAR } from "./climate-year.ts";

/** Bisection halves the interval each time: 50 halvings leave nothing a double can tell. */
const BISECTION_STEPS = 50;
const TABULATED_BASE_F = 65;
/** Where the year hardly ever crosses 65 °F the degree days do not tell κ: below this share of them, the usual one. */
const LEAST_TELLING_SHARE = 0.01;
/** Median of 1,011 typical years. Source: nrel-tmy3, by this method. */
const TYPICAL_SPREAD_SHARE = 0.69;

/** The bins of a year, drawn together as far as the daily means are. */
export interface DailyTemperatures {
  /** In step with the year's bins. */
  temperatureF: Float64Array;
  /** Mean of the daily (maximum + minimum)/2, month by month. */
  midRangeMeanF: readonly Fahrenheit[];
  /** How wide days spread about their month, as a share of how wide hours do. */
  spreadShare: Share;
}

/** Made once for each year that is held: a batch of houses shares few of them, and a year never changes. */
const made = new WeakMap<object, DailyTemperatures>();

/**
 * Turns bins of hours into bins of daily temperatures, so that degree days to any base can be counted as weather
 * services count them.
 * Each month: T_day = μ + κ (T_hour − mean T_hour), with μ = 65 − (HDD65 − CDD65)/N, exact by definition, and one κ a
 * year, from 0 to 1, such that the year's HDD65 + CDD65 come out as tabulated.
 * Over 1,011 typical years the months come within 5 to 25 °F·d of the tabulated ones (5th to 95th percentile of each
 * year's worst month). Source: own-method, held against nrel-tmy3. Left out: that κ differs a little by month.
 */
export function dailyTemperatures(year: Pick<ClimateYear, "bins" | "months">): DailyTemperatures {
  const known = made.get(year);
  if (known) return known;
  const daily = drawTogether(year);
  made.set(year, daily);
  return daily;
}

function drawTogether({ bins, months }: Pick<ClimateYear, "bins" | "months">): DailyTemperatures {
  const midRangeMeanF = DAYS_IN_MONTH.map(
    (days, month) =>
      TABULATED_BASE_F - (months.heatingDegreeDaysAt65[month]! - months.coolingDegreeDaysAt65[month]!) / days,
  );
  const hourlyMeanF = meanOfHours(bins);
  const middleF = Float64Array.from(bins.month, (month) => midRangeMeanF[month - 1]!);
  const offsetF = bins.temperatureF.map((hourF, bin) => hourF - hourlyMeanF[bins.month[bin]! - 1]!);
  const spreadShare = findSpreadShare({ middleF, offsetF, hours: bins.hours, months });
  return { temperatureF: middleF.map((eachF, bin) => eachF + spreadShare * offsetF[bin]!), midRangeMeanF, spreadShare };
}

/** Wider spread, more degree days: the sum grows with κ, so halving finds it. */
function findSpreadShare({
  middleF,
  offsetF,
  hours,
  months,
}: {
  middleF: Float64Array;
  offsetF: Float64Array;
  hours: Float64Array;
  months: ClimateYear["months"];
}): Share {
  const degreeDaysAt = (spreadShare: number) => {
    let degreeDays = 0;
    for (let bin = 0; bin < hours.length; bin += 1) {
      const dayF = middleF[bin]! + spreadShare * offsetF[bin]!;
      degreeDays += (Math.abs(dayF - TABULATED_BASE_F) * hours[bin]!) / HOURS_PER_DAY;
    }
    return degreeDays;
  };
  const tabulated = sum(months.heatingDegreeDaysAt65) + sum(months.coolingDegreeDaysAt65);
  if (!(degreeDaysAt(1) - degreeDaysAt(0) > LEAST_TELLING_SHARE * tabulated)) return TYPICAL_SPREAD_SHARE;
  let low = 0;
  let high = 1;
  for (let step = 0; step < BISECTION_STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (degreeDaysAt(middle) > tabulated) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Mean temperature of each month's hours. */
export function meanOfHours({ month, temperatureF, hours }: ClimateYear["bins"]): Fahrenheit[] {
  const weighted = new Float64Array(MONTHS_PER_YEAR);
  const total = new Float64Array(MONTHS_PER_YEAR);
  month.forEach((number, bin) => {
    weighted[number - 1]! += temperatureF[bin]! * hours[bin]!;
    total[number - 1]! += hours[bin]!;
  });
  return Array.from(weighted, (value, index) => value / total[index]!);
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
