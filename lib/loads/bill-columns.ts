import { bisectLeft, bisectRight } from "d3-array";
import type { Days, Fahrenheit, FahrenheitDifference, Share } from "#lib/units/quantity.ts";
import type { BillPeriod, Season } from "./change-point-model.ts";

/** What a fit reads of its bills, prepared once. One entry a period. */
export interface BillColumns {
  usePerDay: readonly number[];
  /** Days over the mean days: longer periods weigh more, for their average is surer. */
  weights: readonly number[];
  meanTemperaturesF: readonly Fahrenheit[];
  /** Average over the period's days of (T_b − T)+, or of (T − T_b)+; of the mean alone where days are not known. */
  degrees(season: Season, balanceF: Fahrenheit): readonly FahrenheitDifference[];
  /** Share of the period's days beyond the balance: what a degree of balance changes in `degrees`. */
  sharesBeyond(season: Season, balanceF: Fahrenheit): readonly Share[];
}

/** Sorted temperatures with their running sums, so that any balance is answered without walking the days. */
interface SortedDays {
  temperaturesF: readonly number[];
  /** Sum of the first k. */
  sums: readonly number[];
}

export function billColumns(periods: readonly BillPeriod[]): BillColumns {
  const totalDays: Days = periods.reduce((sum, period) => sum + period.days, 0);
  const sorted = periods.map(sortDays);
  return {
    usePerDay: periods.map((period) => period.use / period.days),
    weights: periods.map((period) => (period.days * periods.length) / totalDays),
    meanTemperaturesF: sorted.map(({ temperaturesF, sums }) => sums.at(-1)! / temperaturesF.length),
    degrees: (season, balanceF) => sorted.map((days) => averageDegrees(days, season, balanceF)),
    sharesBeyond: (season, balanceF) =>
      sorted.map(({ temperaturesF }) => {
        const beyond =
          season === "heating"
            ? bisectLeft(temperaturesF, balanceF)
            : temperaturesF.length - bisectRight(temperaturesF, balanceF);
        return beyond / temperaturesF.length;
      }),
  };
}

function sortDays({ dailyTemperaturesF, meanTemperatureF }: BillPeriod): SortedDays {
  const temperaturesF = [...(dailyTemperaturesF ?? [meanTemperatureF!])].sort((a, b) => a - b);
  const sums = [0];
  for (const each of temperaturesF) sums.push(sums.at(-1)! + each);
  return { temperaturesF, sums };
}

function averageDegrees({ temperaturesF, sums }: SortedDays, season: Season, balanceF: Fahrenheit): number {
  const count = temperaturesF.length;
  const below = bisectLeft(temperaturesF, balanceF);
  const total =
    season === "heating" ? below * balanceF - sums[below]! : sums[count]! - sums[below]! - (count - below) * balanceF;
  return Math.max(0, total) / count;
}
