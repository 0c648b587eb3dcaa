import { z } from "zod";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import { numberField } from "#lib/units/field.ts";
import { shortTextSchema } from "./identity.ts";

const SHIFTS_IN_YEAR = 36;
const MOST_BINS = 2000;
const HOURS_IN_MONTH = [744, 672, 744, 720, 744, 720, 744, 744, 720, 744, 720, 744] as const;

const temperature = (title: string) => numberField({ unit: "°F", title, min: -100, max: 150 });
const degreeDays = (title: string) => z.array(numberField({ unit: "°F·d", title, min: 0, max: 5000 })).length(12);
const ratio = (title: string) => numberField({ unit: "ratio", title, min: 0, max: 0.2 });
const twelve = (title: string) => z.array(temperature(title)).length(12).meta({ title });

/**
 * A year of the user's own weather file, sorted into bins of 5 °F by month and 8-hour shift, some 4 KB: it stands in the
 * job, so that whoever has the job can compute the same answer without the file.
 */
export const weatherYearSchema = z
  .strictObject({
    stationId: z
      .string()
      .regex(/^[\w-]{1,20}$/)
      .meta({ title: "Station, as the file names it" }),
    title: shortTextSchema.meta({ title: "Name of the weather file" }),
    elevationFt: numberField({ unit: "ft", title: "Elevation of the weather file", min: -1500, max: 17_000 }),
    stationPressurePa: numberField({ unit: "Pa", title: "Mean pressure there", min: 40_000, max: 120_000 }),
    design: z.strictObject({
      heating99F: temperature("Colder in 1 % of the hours"),
      heating996F: temperature("Colder in 0.4 % of the hours"),
      cooling1F: temperature("Hotter in 1 % of the hours"),
      cooling04F: temperature("Hotter in 0.4 % of the hours"),
      coolingHumidityRatio: ratio("Humidity ratio on the hottest afternoons"),
    }),
    meanTemperatureF: twelve("Mean temperature by month"),
    meanDailyMaximumF: twelve("Mean daily maximum by month"),
    meanDailyMinimumF: twelve("Mean daily minimum by month"),
    heatingDegreeDaysAt65: degreeDays("Heating degree days at 65 °F"),
    coolingDegreeDaysAt65: degreeDays("Cooling degree days at 65 °F"),
    coldestBinLowF: z
      .array(temperature("Lower end of the coldest bin"))
      .length(SHIFTS_IN_YEAR)
      .meta({ title: "Coldest bin", description: "January shift 1, 2, 3, February shift 1 and so on." }),
    binsCount: z
      .array(numberField({ unit: "count", title: "Bins of the shift", min: 1, max: 50, isInteger: true }))
      .length(SHIFTS_IN_YEAR),
    hours: z
      .array(numberField({ unit: "h", title: "Hours in the bin", min: 0, max: 248, isInteger: true }))
      .max(MOST_BINS),
    humidityRatio: z.array(ratio("Mean humidity ratio of the bin")).max(MOST_BINS),
    globalIrradianceWPerM2: z
      .array(numberField({ unit: "W/m²", title: "Mean sun on the level in the bin", min: 0, max: 1500 }))
      .max(MOST_BINS),
  })
  .meta({ id: "WeatherYear", title: "Own weather file" });

export type WeatherYear = z.output<typeof weatherYearSchema>;

/** What the schema alone cannot say of a packed year: columns of one length, and every hour of every month. */
export function checkWeatherYear(year: WeatherYear | undefined): FieldProblem[] {
  if (!year) return [];
  const bins = year.binsCount.reduce((sum, each) => sum + each, 0);
  const isWhole = [year.hours, year.humidityRatio, year.globalIrradianceWPerM2].every(({ length }) => length === bins);
  let at = 0;
  const hoursByMonth = Array.from({ length: 12 }, () => 0);
  year.binsCount.forEach((count, group) => {
    for (let bin = 0; bin < count; bin += 1) hoursByMonth[Math.floor(group / 3)]! += year.hours[at++] ?? 0;
  });
  const month = hoursByMonth.findIndex((hours, index) => hours !== HOURS_IN_MONTH[index]);
  if (isWhole && month === -1) return [];
  return [
    {
      pointer: "#/house/weatherYear/hours",
      detail: isWhole
        ? `Month ${month + 1} of the weather has ${hoursByMonth[month]} hours, not ${HOURS_IN_MONTH[month]}`
        : "The columns of the weather do not have one entry for each bin",
      code: "does-not-fit",
      fix: "Read the weather file in again.",
    },
  ];
}
