import { z } from "zod";
import { changePointDoubt } from "#lib/loads/change-point-doubt.ts";
import { fitChangePoint } from "#lib/loads/change-point-fit.ts";
import { CHANGE_POINT_MODELS, PARAMETERS_OF } from "#lib/loads/change-point-model.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const own = (unit: string, title: string) => numberField({ unit, title });
const range = (unit: string, title: string) =>
  z.strictObject({ low: own(unit, `${title}, low`), high: own(unit, `${title}, high`) }).nullable();
const balanceRange = (title: string) =>
  z.strictObject({ lowF: own("°F", `${title}, low`), highF: own("°F", `${title}, high`) }).nullable();
const CONFIDENCE = {
  value: 0.95,
  unit: "share",
  reason: "The usual confidence of a fit.",
  source: { sourceId: "practice" },
} as const;

/** Bills made from known parameters over a year of monthly means. */
const MEANS_F = [24, 28, 38, 49, 59, 69, 74, 72, 65, 52, 40, 28];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
function synthetic({
  base,
  heating = { slope: 0, balanceF: 0 },
  cooling = { slope: 0, balanceF: 200 },
}: {
  base: number;
  heating?: { slope: number; balanceF: number };
  cooling?: { slope: number; balanceF: number };
}) {
  return MEANS_F.map((meanTemperatureF, month) => {
    const heatingUse = heating.slope * Math.max(0, heating.balanceF - meanTemperatureF);
    const coolingUse = cooling.slope * Math.max(0, meanTemperatureF - cooling.balanceF);
    return { days: DAYS[month]!, meanTemperatureF, use: DAYS[month]! * (base + heatingUse + coolingUse) };
  });
}
const derived = { sourceId: "derived", locator: "bills made from these parameters" } as const;
const exact = { relativeTolerance: 1e-6, toleranceReason: "bills without noise are recovered up to rounding" } as const;

export const changePointFitCard = defineMethod({
  id: "change-point-fit",
  title: "Change-point fit of bills",
  group: "loads",
  summary: "Splits bills into base, heating and cooling use by the outdoor temperature beyond which use rises.",
  equation:
    "use/days = b + s_h·avg(T_h − T)₊ + s_c·avg(T − T_c)₊; T_h, T_c searched, b and s ≥ 0 by least squares; cvRmse = √(Σe²/(n − p))/ȳ",
  validRange:
    "At least one period more than parameters (3, or 5 for both); balance temperatures between the second coldest and the second warmest period.",
  leftOut: "Sun, holidays, vacancy, changes of the house within the bills.",
  sources: [{ sourceId: "ashrae-guideline-14", locator: "form of" }],
  input: z.strictObject({
    periods: z
      .array(
        z.strictObject({
          days: numberField({ unit: "d", title: "Days of the period", above: 0, max: 400 }),
          use: numberField({ unit: "of the bill", title: "Use over the period", min: 0 }),
          dailyTemperaturesF: z
            .array(numberField({ unit: "°F", title: "Daily mean temperature", min: -80, max: 130 }))
            .min(1)
            .max(400)
            .optional(),
          meanTemperatureF: numberField({ unit: "°F", title: "Mean temperature", min: -80, max: 130 }).optional(),
        }),
      )
      .min(4)
      .max(1000)
      .meta({ title: "Bills" }),
    model: z.enum(CHANGE_POINT_MODELS).meta({ title: "Model" }),
    confidence: numberField({ unit: "share", title: "Confidence of the intervals", min: 0.5, max: 0.999 }).optional(),
  }),
  output: z.strictObject({
    baseUsePerDay: own("of the bill/d", "Base use a day"),
    heatingSlope: own("of the bill/(°F·d)", "Heating use per degree and day"),
    coolingSlope: own("of the bill/(°F·d)", "Cooling use per degree and day"),
    balanceHeatingF: numberField({ unit: "°F", title: "Heating balance temperature" }).nullable(),
    balanceCoolingF: numberField({ unit: "°F", title: "Cooling balance temperature" }).nullable(),
    cvRmse: own("ratio", "Scatter over the mean"),
    nmbe: own("ratio", "Bias over the mean"),
    rSquared: own("ratio", "Share of the variation explained"),
    heatingUse: own("of the bill", "Heating use over the periods"),
    coolingUse: own("of the bill", "Cooling use over the periods"),
    isBalanceAtLimit: z.boolean().meta({ title: "The bills do not tell the balance temperature" }),
    intervals: z
      .strictObject({
        baseUsePerDay: range("of the bill/d", "Base use a day"),
        heatingSlope: range("of the bill/(°F·d)", "Heating use per degree and day"),
        coolingSlope: range("of the bill/(°F·d)", "Cooling use per degree and day"),
        balanceHeatingF: balanceRange("Heating balance temperature"),
        balanceCoolingF: balanceRange("Cooling balance temperature"),
      })
      .nullable()
      .meta({ title: "Intervals; none with fewer than two periods more than parameters" }),
  }),
  defaults: { confidence: CONFIDENCE },
  compute: ({ confidence = CONFIDENCE.value, ...asked }) => {
    const fit = fitChangePoint(asked);
    if (!(asked.periods.length >= PARAMETERS_OF[asked.model] + 2)) return { ...fit, intervals: null };
    const {
      relativeUncertaintyOfHeatingUse: _,
      relativeUncertaintyOfCoolingUse: __,
      ...intervals
    } = changePointDoubt({
      ...asked,
      fit,
      confidence,
    });
    return { ...fit, intervals };
  },
  checks: [
    {
      name: "gas bills, heating model",
      source: derived,
      input: { periods: synthetic({ base: 1.2, heating: { slope: 0.15, balanceF: 61.3 } }), model: "heating" },
      expected: { baseUsePerDay: 1.2, heatingSlope: 0.15, balanceHeatingF: 61.3, rSquared: 1 },
      ...exact,
    },
    {
      name: "electric bills, cooling model",
      source: derived,
      input: { periods: synthetic({ base: 20, cooling: { slope: 2.2, balanceF: 63.7 } }), model: "cooling" },
      expected: { baseUsePerDay: 20, coolingSlope: 2.2, balanceCoolingF: 63.7 },
      ...exact,
    },
    {
      name: "electric bills of a heat pump, both",
      source: derived,
      input: {
        periods: synthetic({
          base: 15,
          heating: { slope: 0.8, balanceF: 57.13 },
          cooling: { slope: 1.9, balanceF: 66.77 },
        }),
        model: "both",
      },
      expected: {
        baseUsePerDay: 15,
        heatingSlope: 0.8,
        coolingSlope: 1.9,
        balanceHeatingF: 57.13,
        balanceCoolingF: 66.77,
      },
      ...exact,
    },
    {
      // Σ days·0.15·(61.3 − mean)₊ over the eight months below the balance: 5,210.9 °F·d.
      name: "heating use of the gas bills",
      source: derived,
      input: { periods: synthetic({ base: 1.2, heating: { slope: 0.15, balanceF: 61.3 } }), model: "heating" },
      expected: { heatingUse: 781.635 },
      ...exact,
    },
  ],
});
