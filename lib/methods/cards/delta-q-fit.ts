import { z } from "zod";
import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { deltaQFit } from "#lib/measure/delta-q-fit.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

const cfm = (title: string) => numberField({ unit: "cfm", title });
const pascals = (title: string) => numberField({ unit: "Pa", title });
const leaks = {
  supplyLeakageCfm: cfm("Supply leakage to outside, while running"),
  returnLeakageCfm: cfm("Return leakage to outside, while running"),
  supplyPressurePa: pascals("Pressure of the supply leaks"),
  returnPressurePa: pascals("Pressure of the return leaks, its size"),
};
const derived = { sourceId: "derived", locator: "readings made from known leaks" } as const;
const reading = (envelopePressurePa: number, deltaFlowCfm: number) => ({ envelopePressurePa, deltaFlowCfm });

export const deltaQFitCard = defineMethod({
  id: "delta-q-fit",
  title: "Leakage to outside from a Delta-Q test",
  group: "measure",
  summary:
    "Supply and return leakage to outside at operating pressures, from flows of the house with the air handler on and off.",
  equation:
    "least squares of the Delta-Q model; standard errors from the profile of the sum of squares, S ≤ S_min·(1 + t²/ν), and 1.3 % of fan flow for the model",
  validRange: "5 pressures or more, with the house above and below the outside; pressures of the leaks 2 to 600 Pa.",
  leftOut:
    "Gusts longer than a reading. The fitted pressures are loose by tens of pascals: never convert to 25 Pa with them.",
  sources: [
    { sourceId: "astm-e1554", locator: "method A, form of" },
    { sourceId: "lbnl-delta-q", locator: "repeatability 1 %, accuracy 1.3 to 2.5 % of fan flow" },
  ],
  input: z.strictObject({
    points: z
      .array(
        z.strictObject({
          envelopePressurePa: numberField({ unit: "Pa", title: "House minus outside", min: -200, max: 200 }),
          deltaFlowCfm: numberField({
            unit: "cfm",
            title: "Flow with the air handler on minus off",
            description: "Positive into the house.",
            min: -5000,
            max: 5000,
          }),
        }),
      )
      .min(5)
      .max(200)
      .meta({ title: "Readings" }),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
    airHandlerFlowCfm: numberField({
      unit: "cfm",
      title: "Flow of the air handler",
      description: "For the doubt of the model, 1.3 % of it.",
      min: 50,
      max: 10000,
    }).optional(),
  }),
  output: z.strictObject({
    ...leaks,
    standardErrors: z.strictObject(leaks).meta({ title: "Standard errors" }),
    supplyLeakageLowCfm: cfm("Supply leakage, low end of 95 %"),
    supplyLeakageHighCfm: cfm("Supply leakage, high end of 95 %"),
    returnLeakageLowCfm: cfm("Return leakage, low end of 95 %"),
    returnLeakageHighCfm: cfm("Return leakage, high end of 95 %"),
    residualStandardDeviationCfm: cfm("Scatter about the curve"),
    notes: notesField,
  }),
  defaults: { exponent: DUCT_LEAK_EXPONENT },
  compute: deltaQFit,
  checks: [
    {
      name: "known leaks come back",
      source: derived,
      input: {
        points: [
          reading(-50, 41.579),
          reading(-25, 105.849),
          reading(0, 40),
          reading(5, 0.383),
          reading(25, -35.138),
          reading(50, -40.999),
        ],
      },
      expected: { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 },
      relativeTolerance: 0.001,
      toleranceReason: "readings stated to a thousandth of a cfm; the pressures are loose",
    },
  ],
});
