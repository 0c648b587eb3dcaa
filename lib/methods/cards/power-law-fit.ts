import { z } from "zod";
import { REFERENCE_PRESSURE } from "#lib/measure/leakage-at-pressure.ts";
import { powerLawFit } from "#lib/measure/power-law-fit.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

const cfm = (title: string) => numberField({ unit: "cfm", title });
const ratio = (title: string) => numberField({ unit: "ratio", title });
const derived = { sourceId: "derived", locator: "the regression, worked apart" } as const;

export const powerLawFitCard = defineMethod({
  id: "power-law-fit",
  title: "Leakage curve through several pressures",
  group: "measure",
  summary: "Leakage curve through readings at several pressures, and the leakage at 25 Pa with its interval.",
  equation: "ln Q = ln C + n·ln P by least squares; ± t·s·√(1/N + (ln P_ref − mean)²/Σ(ln P − mean)²) of ln Q",
  validRange: "3 points to fit, 5 for a compliant test; an exponent outside 0.5 to 1 or R² below 0.98 is noted.",
  leftOut: "What all points share, such as the fan's calibration.",
  sources: [
    { sourceId: "astm-e779", locator: "annex, form of" },
    { sourceId: "iso-9972", locator: "annex, form of" },
    { sourceId: "nist-strd", locator: "Norris, for the regression" },
  ],
  input: z.strictObject({
    points: z
      .array(
        z.strictObject({
          pressurePa: numberField({ unit: "Pa", title: "Pressure", above: 0, max: 500 }),
          flowCfm: numberField({ unit: "cfm", title: "Flow", above: 0, max: 50000 }),
        }),
      )
      .min(3)
      .max(100)
      .meta({ title: "Readings" }),
    referencePressurePa: numberField({ unit: "Pa", title: "Reference pressure", above: 0, max: 500 }).optional(),
    confidence: numberField({ unit: "share", title: "Confidence of the intervals", min: 0.5, max: 0.999 }).optional(),
  }),
  output: z.strictObject({
    coefficient: z.number().meta({ unit: "cfm/Pa^n", title: "Coefficient" }),
    exponent: ratio("Exponent"),
    exponentLow: ratio("Exponent, low end"),
    exponentHigh: ratio("Exponent, high end"),
    rSquared: ratio("R²"),
    leakageCfm: cfm("Leakage"),
    leakageLowCfm: cfm("Leakage, low end"),
    leakageHighCfm: cfm("Leakage, high end"),
    notes: notesField,
  }),
  defaults: {
    referencePressurePa: { ...REFERENCE_PRESSURE, reason: "Duct leakage is stated at 25 Pa." },
    confidence: {
      value: 0.95,
      unit: "share",
      reason: "The confidence that the standards state intervals at.",
      source: { sourceId: "astm-e779", locator: "annex, form of" },
    },
  },
  compute: powerLawFit,
  checks: [
    {
      name: "seven steps from 10 to 50 Pa",
      source: derived,
      input: {
        points: [
          { pressurePa: 10, flowCfm: 101.8 },
          { pressurePa: 15, flowCfm: 129.6 },
          { pressurePa: 20, flowCfm: 153.5 },
          { pressurePa: 25, flowCfm: 176.9 },
          { pressurePa: 30, flowCfm: 196.0 },
          { pressurePa: 40, flowCfm: 233.5 },
          { pressurePa: 50, flowCfm: 265.8 },
        ],
      },
      expected: {
        exponent: 0.597758,
        coefficient: 25.6955,
        leakageCfm: 175.9897,
        leakageLowCfm: 175.463,
        leakageHighCfm: 176.518,
      },
      relativeTolerance: 3e-6,
      toleranceReason: "stated to 6 figures",
    },
  ],
});
