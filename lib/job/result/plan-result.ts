import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema } from "../identity.ts";
import { citationSchema } from "./evidence-result.ts";
import { ranged } from "./ranged.ts";

const cents = (title: string) => numberField({ unit: "US¢", title, isInteger: true });

const measureSchema = z
  .strictObject({
    siteId: idSchema,
    repairId: idSchema,
    title: z.string(),
    labourHours: numberField({ unit: "h", title: "Labor" }),
    priceUsdCents: cents("Price"),
    removesCfm25: numberField({ unit: "cfm", title: "Expected to remove at 25 Pa" }),
    firstSiteIds: z.array(idSchema).optional().meta({ title: "Repaired before it" }),
    togetherWithSiteIds: z.array(idSchema).optional().meta({
      title: "Closed together",
      description: "Leaks that its new duct closes, which take no repair of their own; or the leak of that new duct.",
    }),
    notByHandSiteIds: z.array(idSchema).optional().meta({ title: "Left to it and not sealed by hand as well" }),
  })
  .meta({ id: "Measure", title: "Measure" });

export const optionSchema = z
  .strictObject({
    id: idSchema,
    title: z.string(),
    summary: z.string(),
    measures: z.array(measureSchema),
    labourHours: numberField({ unit: "h", title: "Crew hours" }),
    materials: z.array(
      z.strictObject({
        id: idSchema,
        title: z.string(),
        amount: z.number().meta({ unit: "as stated in `unit`", title: "Amount" }),
        unit: z.string(),
      }),
    ),
    priceLines: z.array(z.strictObject({ title: z.string(), amountUsdCents: cents("Amount") })),
    priceUsdCents: cents("Price"),
    predictedCfm25: ranged({ unit: "cfm", title: "Leakage expected after the work, at 25 Pa" }),
    savedUsdPerYear: ranged({ unit: "USD/yr", title: "Money saved a year" }),
    probabilityOfReachingTarget: numberField({
      unit: "share",
      title: "Probability of reaching the target",
      min: 0,
      max: 1,
    }).nullable(),
    provenOptimal: z.boolean(),
    gapRatio: numberField({ unit: "ratio", title: "Gap to the proven bound", min: 0 }).optional(),
    leavesUndone: z.array(z.strictObject({ siteId: idSchema, why: z.string() })),
  })
  .meta({ id: "ScopeOption", title: "Option" });

export const verdictSchema = z
  .strictObject({
    code: z.enum(["worth-sealing", "marginal", "not-worth-sealing"]),
    reason: z.string(),
    otherReasons: z.array(z.string()),
  })
  .meta({ id: "Verdict", title: "Verdict" });

export const scopeSchema = z
  .strictObject({
    target: z
      .strictObject({
        id: idSchema,
        title: z.string(),
        measure: z.enum(["total", "to-outside"]),
        limitCfm25: numberField({ unit: "cfm", title: "Limit at 25 Pa" }),
        source: citationSchema,
      })
      .nullable(),
    options: z.array(optionSchema),
    chosen: idSchema.nullable(),
    frontier: z.array(
      z.strictObject({
        priceUsdCents: cents("Price"),
        predictedCfm25: numberField({ unit: "cfm", title: "Leakage left" }),
        optionId: idSchema,
      }),
    ),
    verdict: verdictSchema,
  })
  .meta({ id: "Scope", title: "Scope" });

export const economicsSchema = z
  .strictObject({
    costUsdCents: cents("Price of the chosen option"),
    measureLifeYears: numberField({ unit: "yr", title: "Years counted" }),
    discountRate: numberField({ unit: "ratio", title: "Discount rate above inflation" }),
    presentValueSavingsUsd: ranged({ unit: "USD", title: "Savings over the years, today's money" }),
    netSavingsUsd: ranged({ unit: "USD", title: "Savings over the years less the price" }),
    savingsToInvestmentRatio: numberField({ unit: "ratio", title: "Savings to investment" }).nullable(),
    adjustedInternalRateOfReturnRate: numberField({
      unit: "ratio",
      title: "Adjusted internal rate of return",
    }).nullable(),
    simplePaybackYears: numberField({ unit: "yr", title: "Simple payback" }).nullable(),
    discountedPaybackYears: numberField({ unit: "yr", title: "Discounted payback" }).nullable(),
    doingNothingUsdPerYear: ranged({ unit: "USD/yr", title: "What the leaks cost a year" }),
  })
  .meta({ id: "Economics", title: "Money over the years" });

export const retestSchema = z
  .strictObject({
    target: z.string(),
    measure: z.enum(["total", "to-outside"]),
    limitCfm25: numberField({ unit: "cfm", title: "Limit at 25 Pa" }),
    acceptanceCfm25: numberField({ unit: "cfm", title: "Meets the limit with confidence at" }),
    confidenceProbability: numberField({ unit: "share", title: "Confidence" }),
    relativeUncertaintyRatio: numberField({ unit: "ratio", title: "Standard uncertainty of a reading" }),
    expectedCfm25: numberField({ unit: "cfm", title: "Expected after the work" }),
    readings: z.array(
      z.strictObject({
        restrictorId: idSchema,
        title: z.string(),
        direction: z.enum(["pushing", "pulling"]),
        fanPressureAtLimitPa: numberField({ unit: "Pa", title: "Fan pressure at the limit" }),
        fanPressureAtAcceptancePa: numberField({ unit: "Pa", title: "Fan pressure that meets it with confidence" }),
      }),
    ),
    stagedChecks: z.array(
      z.strictObject({
        afterSiteIds: z.array(idSchema),
        stopBelowCfm25: numberField({ unit: "cfm", title: "Go on when the gauge reads below" }),
        say: z.string(),
      }),
    ),
    conditions: z.array(z.string()),
  })
  .meta({ id: "Retest", title: "Retest" });

export const complianceSchema = z
  .strictObject({
    ruleId: z.string(),
    title: z.string(),
    measure: z.enum(["total", "to-outside"]),
    limitCfm25: numberField({ unit: "cfm", title: "Limit at 25 Pa" }),
    valueCfm25: numberField({ unit: "cfm", title: "Measured or found" }),
    meetsRule: z.boolean(),
    meetsWithConfidence: z.boolean(),
    probability: numberField({ unit: "share", title: "Probability of meeting it" }),
    predictedAfterCfm25: numberField({ unit: "cfm", title: "Expected after the work" }),
    source: citationSchema,
  })
  .meta({ id: "Compliance", title: "Rule" });

const deemedPartSchema = z
  .strictObject({
    id: z.enum(["leakage-basis", "use", "surroundings", "equipment", "supplementary", "regain", "blower"]),
    title: z.string(),
    electricityKWh: numberField({ unit: "kWh", title: "Of the electricity saved" }),
    naturalGasTherms: numberField({ unit: "therm", title: "Of the gas saved" }),
  })
  .meta({ id: "DeemedPart", title: "A part of the difference" });

export const deemedSchema = z
  .strictObject({
    ruleId: z.string(),
    title: z.string(),
    edition: z.string(),
    reductionCfm25: numberField({ unit: "cfm", title: "Reduction at 25 Pa" }),
    coolingKWh: numberField({ unit: "kWh", title: "Cooling saved by the rule" }),
    heatingTherms: numberField({ unit: "therm", title: "Heating saved by the rule" }),
    blowerKWh: numberField({ unit: "kWh", title: "Blower saved by the rule" }),
    heatingKWh: numberField({ unit: "kWh", title: "Electric heating saved by the rule" }),
    engineeringElectricityKWh: numberField({ unit: "kWh", title: "Electricity saved by this estimate" }),
    engineeringNaturalGasTherms: numberField({ unit: "therm", title: "Gas saved by this estimate" }),
    coincidentKW: numberField({ unit: "kW", title: "Power saved in the program's hours, by the rule" }),
    engineeringCoincidentKW: numberField({ unit: "kW", title: "The same of this estimate" }),
    engineeringPeakKW: numberField({ unit: "kW", title: "Power saved on the design day, by this estimate" }),
    /** In the order in which they were exchanged; the rule and all of them add up to the estimate. */
    parts: z.array(deemedPartSchema),
    difference: z.array(z.string()),
    source: citationSchema,
  })
  .meta({ id: "Deemed", title: "Program rule beside it" });

export type ScopeOption = z.output<typeof optionSchema>;
export type Scope = z.output<typeof scopeSchema>;
export type Verdict = z.output<typeof verdictSchema>;
export type Economics = z.output<typeof economicsSchema>;
export type Retest = z.output<typeof retestSchema>;
export type Compliance = z.output<typeof complianceSchema>;
export type Deemed = z.output<typeof deemedSchema>;
export type DeemedPart = z.output<typeof deemedPartSchema>;
