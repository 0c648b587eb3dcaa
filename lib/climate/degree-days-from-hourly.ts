import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import type { DegreeDays, Fahrenheit } from "#lib/units/quantity.ts";

/** `daily-extremes` is how weather services tabulate degree days; `hourly` counts each hour's own difference. */
export const DEGREE_DAY_BASES = ["daily-extremes", "hourly"] as const;
export type DegreeDayBasis = (typeof DEGREE_DAY_BASES)[number];

/**
 * Degree days from the hourly temperatures of whole days.
 * daily-extremes: Σ (T_b − (max + min)/2)+ over the days; hourly: Σ (T_b − T)+ / 24 over the hours; cooling with the
 * signs turned. In a cold place hourly gives some 2 % more heating and 18 % more cooling degree days than
 * daily-extremes, so a result always says which.
 * Valid for whole days of hours from midnight, −100 to 140 °F. Source: practice (definition of the weather services).
 * Left out: extremes between the hours, which thermometers that record the extremes would see.
 * @throws InputProblem when the hours are not whole days, or a temperature is outside the range.
 */
export function degreeDaysFromHourly({
  hourlyTemperaturesF,
  baseTemperatureF,
  basis = "daily-extremes",
}: {
  hourlyTemperaturesF: ArrayLike<Fahrenheit>;
  baseTemperatureF: Fahrenheit;
  basis?: DegreeDayBasis;
}): { heatingDegreeDays: DegreeDays; coolingDegreeDays: DegreeDays; basis: DegreeDayBasis } {
  const hours = Array.from(hourlyTemperaturesF);
  if (!(hours.length > 0 && hours.length % HOURS_PER_DAY === 0)) {
    refuse({
      field: "hourlyTemperaturesF",
      detail: `${hours.length} hours are not whole days`,
      fix: "Give 24 temperatures a day, from midnight to midnight.",
    });
  }
  requireBetween({
    field: "baseTemperatureF",
    label: "Base temperature",
    value: baseTemperatureF,
    unit: "°F",
    low: -100,
    high: 140,
  });
  hours.forEach((value, hour) => {
    requireBetween({
      field: `hourlyTemperaturesF/${hour}`,
      label: "An hourly temperature",
      value,
      unit: "°F",
      low: -100,
      high: 140,
    });
  });

  const steps = basis === "hourly" ? hours : daysOf(hours).map((day) => (Math.max(...day) + Math.min(...day)) / 2);
  const dayShare = basis === "hourly" ? 1 / HOURS_PER_DAY : 1;
  const total = (differences: readonly number[]) =>
    differences.reduce((sum, difference) => sum + Math.max(0, difference) * dayShare, 0);
  return {
    heatingDegreeDays: total(steps.map((temperature) => baseTemperatureF - temperature)),
    coolingDegreeDays: total(steps.map((temperature) => temperature - baseTemperatureF)),
    basis,
  };
}

function daysOf(hours: readonly number[]): number[][] {
  const count = hours.length / HOURS_PER_DAY;
  return Array.from({ length: count }, (_, day) => hours.slice(day * HOURS_PER_DAY, (day + 1) * HOURS_PER_DAY));
}
