import { type ClimateYear, DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { typicalDays } from "#lib/climate/typical-days.ts";
import { BTU_PER_H_FT2_PER_W_PER_M2 } from "#lib/units/conversions.ts";

/** One day of a month, hour by hour, and how many days of the year are like it. */
export interface TrueDay {
  /** 0 to 11. */
  month: number;
  weightDays: number;
  temperatureF: Float64Array;
  sunBtuPerHFt2: Float64Array;
  humidityRatio: number;
}

export interface TrueWeather {
  days: readonly TrueDay[];
  meanByMonthF: readonly number[];
  yearlyMeanF: number;
}

export const HOURS = 24;
const DAY_KINDS = 5;
const SUNRISE = 6;
const SUNSET = 18;
const WARMEST_HOUR = 15;

/** Mean of a column over the hours of each month. */
function monthlyMean({ bins }: ClimateYear, column: Float64Array): number[] {
  const sums = new Array<number>(12).fill(0);
  const hours = new Array<number>(12).fill(0);
  column.forEach((value, bin) => {
    sums[bins.month[bin]! - 1]! += value * bins.hours[bin]!;
    hours[bins.month[bin]! - 1]! += bins.hours[bin]!;
  });
  return sums.map((sum, month) => sum / hours[month]!);
}

/**
 * A year as typical days instead of bins: five kinds of day a month (quantiles of the daily temperature), each with a
 * sine of the month's daily swing and a half sine of its sun. Nothing of the estimate's own season is used.
 */
export function trueWeather(climate: ClimateYear): TrueWeather {
  const dayOf = typicalDays(climate);
  const sun = monthlyMean(climate, climate.bins.globalIrradianceWPerM2);
  const humidity = monthlyMean(climate, climate.bins.humidityRatio);
  const { meanDailyMaximumF, meanDailyMinimumF } = climate.months;
  const meanByMonthF = meanOfHours(climate.bins);
  const days = DAYS_IN_MONTH.flatMap((daysInMonth, month) => {
    const swing = meanDailyMaximumF[month]! - meanDailyMinimumF[month]!;
    return dayOf(month + 1, DAY_KINDS).map((dayF): TrueDay => {
      const hours = Float64Array.from({ length: HOURS }, (_, hour) => hour + 0.5);
      // A half sine from sunrise to sunset has 2/π of its peak on average.
      const peak = (sun[month]! * BTU_PER_H_FT2_PER_W_PER_M2 * HOURS) / (SUNSET - SUNRISE) / (2 / Math.PI);
      return {
        month,
        weightDays: daysInMonth / DAY_KINDS,
        temperatureF: hours.map((hour) => dayF + (swing / 2) * Math.cos((2 * Math.PI * (hour - WARMEST_HOUR)) / HOURS)),
        sunBtuPerHFt2: hours.map((hour) =>
          hour > SUNRISE && hour < SUNSET ? peak * Math.sin((Math.PI * (hour - SUNRISE)) / (SUNSET - SUNRISE)) : 0,
        ),
        // Warmer days of a month are more humid.
        humidityRatio: humidity[month]! * Math.exp(0.025 * (dayF - meanByMonthF[month]!)),
      };
    });
  });
  const yearlyMeanF = meanByMonthF.reduce((sum, each) => sum + each, 0) / meanByMonthF.length;
  return { days, meanByMonthF, yearlyMeanF };
}
