import { refuse } from "#lib/errors/input-problem.ts";
import type { Fahrenheit, FahrenheitDifference } from "#lib/units/quantity.ts";
import { type ClimateMonths, type ClimateYear, MONTHS_PER_YEAR } from "./climate-year.ts";
import { dailyTemperatures } from "./daily-temperatures.ts";
import { countDegreeDays } from "./degree-days-by-month.ts";

/** A larger gap between a typical year and a nearby normal means another place, not another climate. From memory. */
const LARGEST_SHIFT_F = 15;

/**
 * Moves a typical year to the level of 1991-2020, month by month, keeping its shape.
 * T' = T + Δ_month, Δ = normal mean − (mean daily maximum + mean daily minimum)/2 of the typical year: both are daily
 * mid-ranges, so like is compared with like. Degree days are counted again with the same daily spread; estimated design
 * temperatures move with the coldest and the hottest month.
 * Valid for gaps up to 15 °F. Sources: noaa-normals-1991-2020 (level), nrel-tmy3 (shape).
 * Left out: humidity ratio and sun stay as they are.
 * @throws InputProblem when there are not twelve normals, or a gap says that they belong to another place.
 */
export function shiftToNormals(
  climate: ClimateYear,
  normalMeanTemperaturesF: readonly Fahrenheit[],
): { climate: ClimateYear; monthlyShiftF: readonly FahrenheitDifference[] } {
  if (normalMeanTemperaturesF.length !== MONTHS_PER_YEAR) {
    refuse({
      field: "normalMeanTemperaturesF",
      detail: `There must be 12 normals, not ${normalMeanTemperaturesF.length}`,
      fix: "Give the 1991-2020 mean of each month, January first.",
    });
  }
  const { months, bins, design } = climate;
  const midRange = (month: number) => (months.meanDailyMaximumF[month]! + months.meanDailyMinimumF[month]!) / 2;
  const monthlyShiftF = normalMeanTemperaturesF.map((normalF, month) => {
    const shiftF = normalF - midRange(month);
    if (!(Math.abs(shiftF) <= LARGEST_SHIFT_F)) {
      refuse({
        field: `normalMeanTemperaturesF/${month}`,
        detail: `A normal of ${normalF} °F is too far from the typical year's ${midRange(month).toFixed(1)} °F`,
        fix: "Use normals of a station at a like elevation, or leave the typical year as it is.",
      });
    }
    return shiftF;
  });
  const shifted = (values: Float64Array) => values.map((value, month) => value + monthlyShiftF[month]!);

  const shiftedBins = {
    ...bins,
    temperatureF: bins.temperatureF.map((binF, bin) => binF + monthlyShiftF[bins.month[bin]! - 1]!),
  };
  const shiftedMonths: ClimateMonths = {
    meanTemperatureF: shifted(months.meanTemperatureF),
    meanDailyMaximumF: shifted(months.meanDailyMaximumF),
    meanDailyMinimumF: shifted(months.meanDailyMinimumF),
    ...shiftedDegreeDays(climate, monthlyShiftF),
  };
  const coldestShiftF = monthlyShiftF[indexOfLeast(months.meanTemperatureF)]!;
  const hottestShiftF = monthlyShiftF[indexOfLeast(months.meanTemperatureF.map((meanF) => -meanF))]!;
  return {
    monthlyShiftF,
    climate: {
      ...climate,
      basis: "tmy3-at-1991-2020-normals",
      bins: shiftedBins,
      months: shiftedMonths,
      design: {
        ...design,
        heating99F: design.heating99F + coldestShiftF,
        heating996F: design.heating996F + coldestShiftF,
        cooling1F: design.cooling1F + hottestShiftF,
        cooling04F: design.cooling04F + hottestShiftF,
      },
    },
  };
}

/** A month moved up by Δ has at 65 °F the degree days that it had at 65 − Δ. */
function shiftedDegreeDays(climate: ClimateYear, monthlyShiftF: readonly number[]) {
  const moved = countDegreeDays({
    bins: climate.bins,
    temperatureF: dailyTemperatures(climate).temperatureF,
    baseOfMonthF: (month) => 65 - monthlyShiftF[month]!,
  });
  return {
    heatingDegreeDaysAt65: Float64Array.from(moved, (month) => month.heatingDegreeDays),
    coolingDegreeDaysAt65: Float64Array.from(moved, (month) => month.coolingDegreeDays),
  };
}

function indexOfLeast(values: Float64Array): number {
  return values.reduce((least, value, index) => (value < values[least]! ? index : least), 0);
}
