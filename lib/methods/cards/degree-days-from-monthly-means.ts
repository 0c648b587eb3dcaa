import { z } from "zod";
import { degreeDaysFromMonthlyMeans } from "#lib/climate/degree-days-from-monthly-means.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const degreeDays = {
  heatingDegreeDays: numberField({ unit: "°F·d", title: "Heating degree days" }),
  coolingDegreeDays: numberField({ unit: "°F·d", title: "Cooling degree days" }),
};

const OHARE_MONTHLY_MEANS_F = [23.8, 27.7, 37.9, 48.9, 59.1, 68.9, 74.0, 72.4, 64.6, 52.5, 40.3, 27.7];
const ohare = { sourceId: "noaa-normals-1981-2010", locator: "Chicago O'Hare, base 65 °F" } as const;

export const degreeDaysFromMonthlyMeansCard = defineMethod({
  id: "degree-days-from-monthly-means",
  title: "Degree days from monthly mean temperatures",
  group: "climate",
  summary: "Heating and cooling degree days to any base, from twelve monthly mean temperatures.",
  equation:
    "HDD = s·N^1.5·[h/2 + ln(e^(−ah) + e^(ah))/(2a)], h = (T_b − T_m)/(s·√N), s = 1.45 − 0.0290·T_m + 0.0664·s_yr, a = 1.698, in °C; CDD with −h",
  validRange: "Monthly means and bases from −80 to 120 °F.",
  leftOut: "A month's own spread of days: an average one stands in, so low bases run high.",
  sources: [{ sourceId: "erbs-1983" }],
  input: z.strictObject({
    monthlyMeanTemperaturesF: z
      .array(numberField({ unit: "°F", title: "Monthly mean temperature", min: -80, max: 120 }))
      .length(12)
      .meta({ title: "Monthly mean temperatures, January first" }),
    baseTemperatureF: numberField({ unit: "°F", title: "Base temperature", min: -80, max: 120 }),
  }),
  output: z.strictObject({
    ...degreeDays,
    monthly: z.array(z.strictObject(degreeDays)).length(12).meta({ title: "The same by month, January first" }),
  }),
  defaults: {},
  compute: degreeDaysFromMonthlyMeans,
  checks: [
    {
      name: "heating at O'Hare, 1981-2010",
      source: ohare,
      input: { monthlyMeanTemperaturesF: OHARE_MONTHLY_MEANS_F, baseTemperatureF: 65 },
      expected: { heatingDegreeDays: 6339 },
      relativeTolerance: 0.01,
      toleranceReason: "a correlation against the published count of days",
    },
    {
      name: "cooling at O'Hare, 1981-2010",
      source: ohare,
      input: { monthlyMeanTemperaturesF: OHARE_MONTHLY_MEANS_F, baseTemperatureF: 65 },
      expected: { coolingDegreeDays: 842 },
      relativeTolerance: 0.04,
      toleranceReason: "a correlation; cooling days are few, so each weighs more",
    },
  ],
});
