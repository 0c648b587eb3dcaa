import { z } from "zod";
import { DEGREE_DAY_BASES, degreeDaysFromHourly } from "#lib/climate/degree-days-from-hourly.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

/** Six hours at 30 °F and eighteen at 50 °F. */
const COLD_DAY_F = [...Array<number>(6).fill(30), ...Array<number>(18).fill(50)];
/** Eight hours at 60 °F and sixteen at 90 °F. */
const WARM_DAY_F = [...Array<number>(8).fill(60), ...Array<number>(16).fill(90)];
const twoDays = { hourlyTemperaturesF: [...COLD_DAY_F, ...WARM_DAY_F], baseTemperatureF: 65 };
const derived = { sourceId: "derived", locator: "two days of two temperatures each, by hand" } as const;

export const degreeDaysFromHourlyCard = defineMethod({
  id: "degree-days-from-hourly",
  title: "Degree days from hourly temperatures",
  group: "climate",
  summary: "Heating and cooling degree days from the hours of whole days, counted by day or by hour.",
  equation:
    "daily-extremes: Σ (T_b − (max + min)/2)₊ over days; hourly: Σ (T_b − T)₊/24 over hours; cooling with the signs turned",
  validRange: "Whole days of hours from midnight, −100 to 140 °F.",
  leftOut: "Extremes between the hours.",
  sources: [{ sourceId: "practice", locator: "definition of the weather services" }],
  input: z.strictObject({
    hourlyTemperaturesF: z
      .array(numberField({ unit: "°F", title: "Hourly temperature", min: -100, max: 140 }))
      .min(24)
      .max(8784 * 30)
      .meta({ title: "Hourly temperatures, from midnight, local standard time" }),
    baseTemperatureF: numberField({ unit: "°F", title: "Base temperature", min: -100, max: 140 }),
    basis: z.enum(DEGREE_DAY_BASES).optional().meta({
      title: "Counted by",
      description: "hourly gives some 2 % more heating and 18 % more cooling degree days.",
    }),
  }),
  output: z.strictObject({
    heatingDegreeDays: numberField({ unit: "°F·d", title: "Heating degree days" }),
    coolingDegreeDays: numberField({ unit: "°F·d", title: "Cooling degree days" }),
    basis: z.enum(DEGREE_DAY_BASES).meta({ title: "Counted by" }),
  }),
  defaults: {
    basis: {
      value: "daily-extremes",
      unit: "choice",
      reason: "As weather services tabulate degree days.",
      source: { sourceId: "practice" },
    },
  },
  compute: degreeDaysFromHourly,
  checks: [
    {
      name: "a cold and a warm day, by their extremes",
      source: derived,
      // (30 + 50)/2 is 25 below 65; (60 + 90)/2 is 10 above.
      input: twoDays,
      expected: { heatingDegreeDays: 25, coolingDegreeDays: 10 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact arithmetic",
    },
    {
      name: "the same days, by their hours",
      source: derived,
      // (6·35 + 18·15 + 8·5)/24 below; 16·25/24 above.
      input: { ...twoDays, basis: "hourly" },
      expected: { heatingDegreeDays: 520 / 24, coolingDegreeDays: 400 / 24 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact arithmetic",
    },
  ],
});
