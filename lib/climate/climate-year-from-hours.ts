import { refuse } from "#lib/errors/input-problem.ts";
import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import type { Feet, Pascals } from "#lib/units/quantity.ts";
import {
  type ClimateBins,
  type ClimateMonths,
  type ClimateYear,
  DAYS_IN_MONTH,
  type EstimatedDesignTemperatures,
} from "./climate-year.ts";
import { degreeDaysFromHourly } from "./degree-days-from-hourly.ts";

const BIN_WIDTH_F = 5;
const HOURS_PER_SHIFT = 8;
const HOURS_PER_YEAR = 8760;

/** The hours of a weather file, in °F, January 1 first, hour-ending, local standard time. */
export interface WeatherHours {
  stationId: string;
  stationName: string;
  elevationFt: Feet;
  stationPressurePa: Pascals;
  temperatureF: ArrayLike<number>;
  humidityRatio: ArrayLike<number>;
  globalIrradianceWPerM2: ArrayLike<number>;
}

/**
 * Sorts the 8,760 hours of a weather file into a climate year: bins of 5 °F by month and 8-hour shift, monthly means,
 * degree days at 65 °F by daily extremes, and percentiles as estimated design temperatures.
 * Source: derived. Left out: a leap day (drop it before).
 * @throws InputProblem when there are not 8,760 hours of each, or one is not a number.
 */
export function climateYearFromHours(hours: WeatherHours): ClimateYear {
  for (const name of ["temperatureF", "humidityRatio", "globalIrradianceWPerM2"] as const) {
    const column = Array.from(hours[name]);
    if (!(column.length === HOURS_PER_YEAR && column.every(Number.isFinite))) {
      refuse({
        field: name,
        detail: `A weather file must have ${HOURS_PER_YEAR} hours of numbers, not ${column.length}`,
        fix: "Give the whole year without a leap day, missing hours filled.",
      });
    }
  }
  const temperatureF = Array.from(hours.temperatureF);
  return {
    stationId: hours.stationId,
    stationName: hours.stationName,
    elevationFt: hours.elevationFt,
    stationPressurePa: hours.stationPressurePa,
    basis: "weather-file",
    bins: binHours(hours),
    months: monthsOf(temperatureF),
    design: designOf(temperatureF, hours.humidityRatio),
  };
}

/** 1 to 12 for each day of the year. */
const MONTH_OF_DAY = DAYS_IN_MONTH.flatMap((days, month) => Array<number>(days).fill(month + 1));

function binHours({ temperatureF, humidityRatio, globalIrradianceWPerM2 }: WeatherHours): ClimateBins {
  const sums = new Map<
    string,
    { month: number; shift: number; lowF: number; hours: number; ratio: number; sun: number }
  >();
  for (let hour = 0; hour < HOURS_PER_YEAR; hour += 1) {
    const month = MONTH_OF_DAY[Math.floor(hour / HOURS_PER_DAY)]!;
    const shift = Math.floor((hour % HOURS_PER_DAY) / HOURS_PER_SHIFT) + 1;
    const lowF = Math.floor(temperatureF[hour]! / BIN_WIDTH_F) * BIN_WIDTH_F;
    const key = `${month} ${shift} ${lowF}`;
    const sum = sums.get(key) ?? { month, shift, lowF, hours: 0, ratio: 0, sun: 0 };
    sum.hours += 1;
    sum.ratio += humidityRatio[hour]!;
    sum.sun += globalIrradianceWPerM2[hour]!;
    sums.set(key, sum);
  }
  const rows = [...sums.values()].sort((a, b) => a.month - b.month || a.shift - b.shift || a.lowF - b.lowF);
  return {
    month: Uint8Array.from(rows, (row) => row.month),
    shift: Uint8Array.from(rows, (row) => row.shift),
    temperatureF: Float64Array.from(rows, (row) => row.lowF + BIN_WIDTH_F / 2),
    hours: Float64Array.from(rows, (row) => row.hours),
    humidityRatio: Float64Array.from(rows, (row) => row.ratio / row.hours),
    globalIrradianceWPerM2: Float64Array.from(rows, (row) => row.sun / row.hours),
  };
}

function monthsOf(temperatureF: readonly number[]): ClimateMonths {
  const monthHours = DAYS_IN_MONTH.map((days, month) => {
    const firstDay = DAYS_IN_MONTH.slice(0, month).reduce((sum, each) => sum + each, 0);
    return temperatureF.slice(firstDay * HOURS_PER_DAY, (firstDay + days) * HOURS_PER_DAY);
  });
  const dailyMean = (month: readonly number[], extreme: (day: readonly number[]) => number) => {
    const days = month.length / HOURS_PER_DAY;
    const each = Array.from({ length: days }, (_, day) =>
      extreme(month.slice(day * HOURS_PER_DAY, (day + 1) * HOURS_PER_DAY)),
    );
    return mean(each);
  };
  const degreeDays = monthHours.map((month) =>
    degreeDaysFromHourly({ hourlyTemperaturesF: month, baseTemperatureF: 65 }),
  );
  return {
    meanTemperatureF: Float64Array.from(monthHours, mean),
    meanDailyMaximumF: Float64Array.from(monthHours, (month) => dailyMean(month, (day) => Math.max(...day))),
    meanDailyMinimumF: Float64Array.from(monthHours, (month) => dailyMean(month, (day) => Math.min(...day))),
    heatingDegreeDaysAt65: Float64Array.from(degreeDays, (month) => month.heatingDegreeDays),
    coolingDegreeDaysAt65: Float64Array.from(degreeDays, (month) => month.coolingDegreeDays),
  };
}

function designOf(temperatureF: readonly number[], humidityRatio: ArrayLike<number>): EstimatedDesignTemperatures {
  const ascending = [...temperatureF].sort((a, b) => a - b);
  const exceededBy = (share: number) =>
    ascending[Math.min(HOURS_PER_YEAR - 1, Math.round((1 - share) * HOURS_PER_YEAR))]!;
  const cooling1F = exceededBy(0.01);
  const ratiosNearby = Array.from(humidityRatio).filter((_, hour) => Math.abs(temperatureF[hour]! - cooling1F) <= 1);
  return {
    label: "estimated from the weather file",
    heating99F: exceededBy(0.99),
    heating996F: exceededBy(0.996),
    cooling1F,
    cooling04F: exceededBy(0.004),
    coolingHumidityRatio: mean(ratiosNearby),
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
