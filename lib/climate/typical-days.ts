import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { ClimateYear } from "./climate-year.ts";
import { dailyTemperatures } from "./daily-temperatures.ts";

/**
 * Answers with any number of daily temperatures of a month that spread as the month's days do: its evenly spaced
 * quantiles, coldest first. A bill's days of that month in a typical year.
 * T_i = quantile((i + ½)/N) of the month's bins of daily temperatures. Source: derived.
 */
export function typicalDays(
  climate: Pick<ClimateYear, "bins" | "months">,
): (month: number, days: number) => Fahrenheit[] {
  const { bins } = climate;
  const { temperatureF } = dailyTemperatures(climate);
  const sorted = Array.from(temperatureF, (dayF, bin) => ({ dayF, bin })).sort((a, b) => a.dayF - b.dayF);
  const byMonth = Array.from({ length: 12 }, (_, index) =>
    sorted.flatMap(({ dayF, bin }) => (bins.month[bin] === index + 1 ? [{ dayF, hours: bins.hours[bin]! }] : [])),
  );
  return (month, days) => {
    const rows = byMonth[month - 1]!;
    const totalHours = rows.reduce((sum, row) => sum + row.hours, 0);
    let row = 0;
    let hoursUpToRow = rows[0]!.hours;
    return Array.from({ length: days }, (_, day) => {
      const wantedHours = ((day + 0.5) / days) * totalHours;
      while (hoursUpToRow < wantedHours && row < rows.length - 1) {
        row += 1;
        hoursUpToRow += rows[row]!.hours;
      }
      return rows[row]!.dayF;
    });
  };
}
