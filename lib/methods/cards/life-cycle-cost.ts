import { z } from "zod";
import { lifeCycleCost } from "#lib/savings/life-cycle-cost.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const rate = (title: string) => numberField({ unit: "ratio", title, min: -0.5, max: 1 });
const usd = (title: string) => numberField({ unit: "USD", title });
const handbook = (locator: string) => ({ sourceId: "nist-hb-135", locator }) as const;
const asPrinted = { relativeTolerance: 5e-4, toleranceReason: "printed to four figures" } as const;
const derived = { sourceId: "derived", locator: "the equations by hand" } as const;

export const lifeCycleCostCard = defineMethod({
  id: "life-cycle-cost",
  title: "Life-cycle cost",
  group: "savings",
  summary: "What yearly savings over the life of a measure are worth today beside its cost.",
  equation:
    "PV = Σ A·UPV*, UPV* = ((1 + e)/(d − e))·(1 − ((1 + e)/(1 + d))^N), N at e = d; NS = PV − C; SIR = PV/C; AIRR = (1 + r)·SIR^(1/N) − 1",
  validRange: "A cost above zero, 1 to 100 whole years, rates from −0.5 to 1 (all real, or all nominal).",
  leftOut: "Repairs, replacement, residual value, taxes.",
  sources: [{ sourceId: "nist-hb-135", locator: "end-of-year flows" }],
  input: z.strictObject({
    costUsd: numberField({ unit: "USD", title: "Cost of the measure", above: 0, max: 1e9 }),
    years: numberField({ unit: "yr", title: "Years counted", min: 1, max: 100, isInteger: true }),
    discountRate: rate("Discount rate"),
    savings: z
      .array(
        z.strictObject({
          annualAtBaseDateUsd: usd("Yearly saving at base-date prices"),
          escalationRate: rate("Yearly rise of that price").optional(),
        }),
      )
      .min(1)
      .max(100)
      .meta({ title: "Yearly savings" }),
    reinvestmentRate: rate("Reinvestment rate").optional(),
  }),
  output: z.strictObject({
    presentValueSavings: usd("Savings in today's money"),
    netSavings: usd("Savings less cost"),
    savingsToInvestmentRatio: numberField({ unit: "ratio", title: "Savings to investment" }),
    adjustedInternalRateOfReturn: numberField({ unit: "ratio", title: "Adjusted internal rate of return" }).nullable(),
    simplePaybackYears: numberField({ unit: "yr", title: "Simple payback" }).nullable(),
    discountedPaybackYears: numberField({ unit: "yr", title: "Discounted payback" }).nullable(),
  }),
  defaults: {
    "savings.*.escalationRate": {
      value: 0,
      unit: "ratio",
      reason: "The price rises with general prices only.",
      source: { sourceId: "nist-hb-135" },
    },
    reinvestmentRate: {
      value: "discountRate",
      sameAs: "discountRate",
      unit: "ratio",
      reason: "Savings are put to use at the discount rate.",
      source: { sourceId: "nist-hb-135" },
    },
  },
  compute: lifeCycleCost,
  checks: [
    {
      name: "uniform present value, 3 %, 15 years: 11.94",
      source: handbook("table of UPV factors"),
      input: { costUsd: 1, years: 15, discountRate: 0.03, savings: [{ annualAtBaseDateUsd: 1 }] },
      expected: { presentValueSavings: 11.94 },
      ...asPrinted,
    },
    {
      name: "modified uniform present value at 2 % escalation: 13.89",
      source: handbook("table of UPV* factors"),
      input: { costUsd: 1, years: 15, discountRate: 0.03, savings: [{ annualAtBaseDateUsd: 1, escalationRate: 0.02 }] },
      expected: { presentValueSavings: 13.89 },
      ...asPrinted,
    },
    {
      name: "$1,200 that saves $180 a year, 3 %, 1 % escalation, 20 years",
      source: derived,
      input: {
        costUsd: 1200,
        years: 20,
        discountRate: 0.03,
        savings: [{ annualAtBaseDateUsd: 180, escalationRate: 0.01 }],
      },
      // Payback: 1200/180; discounted, 180 Σ (1.01/1.03)^t is 1,165.85 after 7 years and 1,319.71 after 8.
      expected: {
        presentValueSavings: 2948.89,
        netSavings: 1748.89,
        savingsToInvestmentRatio: 2.45741,
        adjustedInternalRateOfReturn: 0.077361,
        simplePaybackYears: 1200 / 180,
        discountedPaybackYears: 8,
      },
      relativeTolerance: 1e-5,
      toleranceReason: "given to five or six figures",
    },
    {
      name: "escalation equal to discount: as many dollars as years",
      source: derived,
      input: {
        costUsd: 100,
        years: 12,
        discountRate: 0.04,
        savings: [{ annualAtBaseDateUsd: 10, escalationRate: 0.04 }],
      },
      expected: { presentValueSavings: 120, savingsToInvestmentRatio: 1.2, discountedPaybackYears: 10 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact arithmetic",
    },
  ],
});
