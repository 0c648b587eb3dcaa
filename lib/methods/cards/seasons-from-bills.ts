import { z } from "zod";
import { MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { weighSeasons } from "#lib/loads/weigh-seasons.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const own = (unit: string, title: string) => numberField({ unit, title });
const balance = (title: string) => numberField({ unit: "°F", title, min: 30, max: 90 }).optional();

/** A year of monthly means; the days of a month are cooler and warmer by 4 °F, as the method takes them. */
const MEANS_F = [24, 28, 38, 49, 59, 69, 74, 72, 65, 52, 40, 28];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const FELT_F = [-4, 0, 4];
const degrees = (meanF: number, above: (dayF: number) => number) =>
  FELT_F.reduce((sum, off) => sum + Math.max(0, above(meanF + off)), 0) / FELT_F.length;
function synthetic({ base, heating, cooling }: { base: number; heating: number; cooling: number }) {
  return MEANS_F.map((meanTemperatureF, month) => ({
    days: DAYS[month]!,
    meanTemperatureF,
    winterness: Number(Math.cos((2 * Math.PI * month) / MONTHS_PER_YEAR).toFixed(2)),
    use:
      DAYS[month]! *
      (base +
        heating * degrees(meanTemperatureF, (dayF) => 60 - dayF) +
        cooling * degrees(meanTemperatureF, (dayF) => dayF - 66)),
  }));
}
const seasonOf = (slope: number, above: (dayF: number) => number) =>
  MEANS_F.reduce((sum, meanF, month) => sum + slope * DAYS[month]! * degrees(meanF, above), 0);

const derived = { sourceId: "derived", locator: "bills made from these parameters" } as const;
/** What is known of the household as good as for certain, and right. */
const sure = {
  baseStandardUncertainty: 0.001,
  winterSwingShare: 0,
  winterSwingDoubt: 0.001,
  balanceDifferenceF: 0.01,
};
const recovered = {
  relativeTolerance: 1e-3,
  toleranceReason: "bills without noise and priors that are right; the priors keep a weight of their own",
} as const;

export const seasonsFromBillsCard = defineMethod({
  id: "seasons-from-bills",
  title: "Seasons from bills and what is known",
  group: "loads",
  summary:
    "Splits bills into base, heating and cooling use, weighed with what is known of any household and of the equipment on the meter.",
  equation:
    "use/day = b (1 + κ w) + s_h·avg(T_h − T)₊ + s_c·avg(T − T_c)₊; b, κ, T_h, T_c with normal priors, s ≥ 0; mean and spread over all pairs T_h, T_c, each by how likely it makes the bills",
  validRange: "From four bills on; with few of them what is known speaks.",
  leftOut: "Scatter that goes together from month to month, use while nobody is at home.",
  sources: [
    { sourceId: "own-method", locator: "normal priors on the form of the line" },
    { sourceId: "ashrae-guideline-14", locator: "form of" },
  ],
  input: z.strictObject({
    periods: z
      .array(
        z.strictObject({
          days: numberField({ unit: "d", title: "Days of the period", above: 0, max: 400 }),
          use: numberField({ unit: "of the bill", title: "Use over the period", above: 0 }),
          meanTemperatureF: numberField({ unit: "°F", title: "Mean temperature", min: -80, max: 130 }),
          winterness: numberField({ unit: "ratio", title: "1 in midwinter, −1 in midsummer", min: -1, max: 1 }),
        }),
      )
      .min(4)
      .max(200)
      .meta({ title: "Bills" }),
    baseUsePerDay: numberField({ unit: "of the bill/d", title: "Usual base use a day", above: 0 }),
    baseStandardUncertainty: numberField({ unit: "of the bill/d", title: "Its standard uncertainty", above: 0 }),
    winterSwingShare: numberField({ unit: "share", title: "More of it in midwinter", min: 0, max: 1 }),
    winterSwingDoubt: numberField({ unit: "share", title: "Standard uncertainty of that", above: 0, max: 1 }),
    heatingBalanceF: balance("Usual heating balance temperature; empty where nothing here heats"),
    coolingBalanceF: balance("Usual cooling balance temperature; empty where nothing here cools"),
    balanceDifferenceF: numberField({
      unit: "Δ°F",
      title: "Their standard uncertainty",
      above: 0,
      max: 20,
    }),
  }),
  output: z.strictObject({
    baseUsePerDay: own("of the bill/d", "Base use a day"),
    heatingUse: own("of the bill", "Heating use over the periods"),
    coolingUse: own("of the bill", "Cooling use over the periods"),
    heatingStandardUncertainty: own("of the bill", "Standard uncertainty of the heating use"),
    coolingStandardUncertainty: own("of the bill", "Standard uncertainty of the cooling use"),
    heatingBalanceF: numberField({ unit: "°F", title: "Heating balance temperature" }).nullable(),
    coolingBalanceF: numberField({ unit: "°F", title: "Cooling balance temperature" }).nullable(),
  }),
  defaults: {},
  compute: ({ periods, balanceDifferenceF, heatingBalanceF = null, coolingBalanceF = null, ...prior }) => {
    const known = { ...prior, heatingBalanceF, coolingBalanceF, balanceStandardUncertaintyF: balanceDifferenceF };
    const seasons = weighSeasons({ periods, prior: known, year: periods });
    if (seasons) return seasons;
    throw new InputProblem("outside-range", [
      {
        pointer: "#/coolingBalanceF",
        detail: "No pair of balance temperatures near these explains the bills",
        fix: "Give a cooling balance temperature at or above the heating one, and bills in one unit.",
        code: "outside-range",
      },
    ]);
  },
  checks: [
    {
      name: "gas: all that is not base use is heat",
      source: derived,
      input: {
        ...sure,
        periods: synthetic({ base: 1.2, heating: 0.15, cooling: 0 }),
        baseUsePerDay: 1.2,
        heatingBalanceF: 60,
      },
      expected: {
        baseUsePerDay: 1.2,
        heatingUse: seasonOf(0.15, (dayF) => 60 - dayF),
        coolingUse: 0,
        heatingBalanceF: 60,
      },
      ...recovered,
      scale: 100,
    },
    {
      name: "one electric meter: both seasons",
      source: derived,
      input: {
        ...sure,
        periods: synthetic({ base: 15, heating: 0.8, cooling: 1.9 }),
        baseUsePerDay: 15,
        heatingBalanceF: 60,
        coolingBalanceF: 66,
      },
      expected: {
        baseUsePerDay: 15,
        heatingUse: seasonOf(0.8, (dayF) => 60 - dayF),
        coolingUse: seasonOf(1.9, (dayF) => dayF - 66),
      },
      ...recovered,
    },
  ],
});
