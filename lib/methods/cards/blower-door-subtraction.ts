import { z } from "zod";
import { ENVELOPE_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { BLOWER_DOOR_FLOW_UNCERTAINTY, blowerDoorSubtraction } from "#lib/measure/blower-door-subtraction.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

const ruleTable = {
  sourceId: "il-trm",
  locator: "table of subtraction correction factors, remembered",
} as const;
const derived = { sourceId: "derived", locator: "propagated by hand" } as const;
const correction = (ductToHousePressurePa: number, correctionFactor: number) => ({
  name: `correction at ${ductToHousePressurePa} Pa`,
  source: ruleTable,
  input: { wholeHouseCfm50: 4800, envelopeCfm50: 4500, ductToHousePressurePa },
  expected: { correctionFactor },
  relativeTolerance: 0.0045,
  toleranceReason: "table printed to 2 decimals",
});

export const blowerDoorSubtractionCard = defineMethod({
  id: "blower-door-subtraction",
  title: "Leakage to outside by blower-door subtraction",
  group: "measure",
  summary: "Leakage to outside as the difference of two blower-door tests, registers open and sealed.",
  equation:
    "L₅₀ = (W − E)·CF, CF = 50^n/(50^n − (50 − P)^n); CFM25 by the same exponent; told only above 2u, as the median of the normal distribution cut off there",
  validRange: "Duct to house 15 to 50 Pa with the registers sealed; refused under 15 Pa.",
  leftOut: "The doubt of the exponent. Small leaks drown in the doubt of two large flows: always read the uncertainty.",
  sources: [{ sourceId: "derived", locator: "power law of the house" }, ruleTable],
  input: z.strictObject({
    wholeHouseCfm50: numberField({ unit: "cfm", title: "House with registers open, at 50 Pa", above: 0, max: 30000 }),
    envelopeCfm50: numberField({ unit: "cfm", title: "House with registers sealed, at 50 Pa", above: 0, max: 30000 }),
    ductToHousePressurePa: numberField({
      unit: "Pa",
      title: "Duct to house, registers sealed",
      min: -50,
      max: 50,
    }),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
    flowRelativeUncertainty: numberField({
      unit: "ratio",
      title: "Standard uncertainty of one flow",
      min: 0,
      max: 0.5,
    }).optional(),
    flowCorrelation: numberField({
      unit: "ratio",
      title: "Correlation of the two flows' errors",
      min: -1,
      max: 1,
    }).optional(),
    pressureUncertaintyPa: numberField({
      unit: "Pa",
      title: "Standard uncertainty of the duct pressure",
      min: 0,
      max: 20,
    }).optional(),
  }),
  output: z.strictObject({
    correctionFactor: numberField({ unit: "ratio", title: "Correction factor" }),
    leakageToOutsideCfm50: numberField({ unit: "cfm", title: "Leakage to outside at 50 Pa" }),
    leakageToOutsideCfm25: numberField({ unit: "cfm", title: "Leakage to outside at 25 Pa" }),
    standardUncertaintyCfm50: numberField({ unit: "cfm", title: "Standard uncertainty at 50 Pa" }),
    leakageHighCfm50: numberField({ unit: "cfm", title: "At most at 50 Pa, with 95 % confidence" }),
    told: z
      .strictObject({
        leakageCfm50: numberField({ unit: "cfm", title: "Leakage at 50 Pa, freed from the bias of telling" }),
        leakageCfm25: numberField({ unit: "cfm", title: "Leakage at 25 Pa, freed from the bias of telling" }),
        standardUncertaintyCfm25: numberField({ unit: "cfm", title: "Its standard uncertainty at 25 Pa" }),
      })
      .optional()
      .meta({ title: "What is told; absent where the difference cannot be told from none" }),
    notes: notesField,
  }),
  defaults: {
    exponent: ENVELOPE_LEAK_EXPONENT,
    flowRelativeUncertainty: { ...BLOWER_DOOR_FLOW_UNCERTAINTY, reason: "A fan in good order; editable." },
    flowCorrelation: {
      value: 0,
      unit: "ratio",
      reason: "Independent errors: the careful side. One fan and restrictor share part of theirs.",
      source: { sourceId: "practice" },
    },
    pressureUncertaintyPa: {
      value: 1,
      unit: "Pa",
      reason: "Wind and gauge together on a calm day.",
      source: { sourceId: "practice" },
    },
  },
  compute: blowerDoorSubtraction,
  checks: [
    correction(50, 1),
    correction(45, 1.29),
    correction(43, 1.39),
    correction(40, 1.54),
    correction(35, 1.84),
    correction(30, 2.23),
    correction(25, 2.76),
    correction(20, 3.54),
    {
      name: "4800 and 4500 cfm at 45 Pa",
      source: ruleTable,
      input: { wholeHouseCfm50: 4800, envelopeCfm50: 4500, ductToHousePressurePa: 45 },
      expected: { leakageToOutsideCfm50: 387 },
      relativeTolerance: 0.002,
      toleranceReason: "the rule rounds its correction to 2 decimals",
    },
    {
      name: "4600 and 4500 cfm at 43 Pa",
      source: ruleTable,
      input: { wholeHouseCfm50: 4600, envelopeCfm50: 4500, ductToHousePressurePa: 43 },
      expected: { leakageToOutsideCfm50: 139 },
      relativeTolerance: 0.003,
      toleranceReason: "the rule rounds its correction to 2 decimals",
    },
    {
      name: "its standard uncertainty at 3 % and 1 Pa",
      source: derived,
      input: { wholeHouseCfm50: 4800, envelopeCfm50: 4500, ductToHousePressurePa: 45 },
      expected: { standardUncertaintyCfm50: 254.7 },
      relativeTolerance: 3e-4,
      toleranceReason: "stated to 4 figures",
    },
  ],
});
