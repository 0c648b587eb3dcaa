import { z } from "zod";
import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { leakageAtPressure, REFERENCE_PRESSURE } from "#lib/measure/leakage-at-pressure.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "power law, worked by hand" } as const;
const figures = { relativeTolerance: 3e-6, toleranceReason: "stated to 6 figures" } as const;

export const leakageAtPressureCard = defineMethod({
  id: "leakage-at-pressure",
  title: "Leakage at another pressure",
  group: "measure",
  summary: "Leakage at the reference pressure from one reading at another.",
  equation: "Q_ref = Q·(P_ref/P)^n; relative doubt of the exponent 0.05·|ln(P_ref/P)|",
  validRange:
    "1 to 250 Pa. Ducts take 0.6, envelopes 0.65. The doubt cancels between two tests at equal pressure only.",
  leftOut: "The doubt of the flow and of the pressure.",
  sources: [{ sourceId: "astm-e1554", locator: "form of" }, { sourceId: "practice" }],
  input: z.strictObject({
    flowCfm: numberField({ unit: "cfm", title: "Flow", min: 0, max: 50000 }),
    ductPressurePa: numberField({
      unit: "Pa",
      title: "Duct pressure",
      description: "Its size, after the baseline is taken off.",
      min: 1,
      max: 250,
    }),
    referencePressurePa: numberField({ unit: "Pa", title: "Reference pressure", min: 1, max: 250 }).optional(),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
  }),
  output: z.strictObject({
    leakageCfm: numberField({ unit: "cfm", title: "Leakage" }),
    relativeStandardUncertaintyOfExponent: numberField({ unit: "ratio", title: "Doubt that the exponent adds" }),
  }),
  defaults: {
    referencePressurePa: { ...REFERENCE_PRESSURE, reason: "Duct leakage is stated at 25 Pa." },
    exponent: DUCT_LEAK_EXPONENT,
  },
  compute: leakageAtPressure,
  checks: [
    {
      name: "150 cfm read at 18 Pa",
      source: derived,
      input: { flowCfm: 150, ductPressurePa: 18 },
      expected: { leakageCfm: 182.68 },
      ...figures,
    },
    {
      name: "150 cfm at 25 Pa, carried to 30 Pa",
      source: derived,
      input: { flowCfm: 150, ductPressurePa: 25, referencePressurePa: 30 },
      expected: { leakageCfm: 167.34 },
      ...figures,
    },
    {
      name: "envelope from 50 to 25 Pa: 0.5^0.65",
      source: derived,
      input: { flowCfm: 1000, ductPressurePa: 50, exponent: 0.65 },
      expected: { leakageCfm: 637 },
      relativeTolerance: 8e-4,
      toleranceReason: "stated to 3 figures",
    },
    {
      name: "doubt of the exponent from 10 Pa",
      source: { sourceId: "practice", locator: "exponent ± 0.05" },
      input: { flowCfm: 100, ductPressurePa: 10 },
      expected: { relativeStandardUncertaintyOfExponent: 0.046 },
      relativeTolerance: 0.01,
      toleranceReason: "stated to 2 figures",
    },
  ],
});
