import { z } from "zod";
import { conformanceProbability } from "#lib/retest/conformance-probability.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const own = (title: string) => numberField({ unit: "of the value", title, min: -1e15, max: 1e15 });

export const conformanceProbabilityCard = defineMethod({
  id: "conformance-probability",
  title: "Probability of meeting a limit",
  group: "retest",
  summary: "How probable it is that a measured value truly lies within its limits.",
  equation: "p = Φ((U − y)/u) − Φ((L − y)/u)",
  validRange: "At least one limit; a standard uncertainty of 0 answers 1 or 0.",
  leftOut: "Knowledge from before the measurement; the doubt is taken as normal.",
  sources: [{ sourceId: "jcgm-106", locator: "§7" }],
  input: z.strictObject({
    value: own("Measured value"),
    standardUncertainty: numberField({ unit: "of the value", title: "Standard uncertainty", min: 0, max: 1e15 }),
    lowerLimit: own("Lower limit").optional(),
    upperLimit: own("Upper limit").optional(),
  }),
  output: z.strictObject({
    probability: numberField({ unit: "share", title: "Probability of meeting the limits", min: 0, max: 1 }),
  }),
  defaults: {},
  compute: conformanceProbability,
  checks: [
    {
      name: "breakdown voltage −5.47 V, u 0.05 V, upper limit −5.40 V: 0.92",
      source: { sourceId: "jcgm-106", locator: "§7, example of a diode" },
      input: { value: -5.47, standardUncertainty: 0.05, upperLimit: -5.4 },
      expected: { probability: 0.92 },
      relativeTolerance: 5e-3,
      toleranceReason: "printed to two figures",
    },
    {
      // Φ(1.5) − Φ(−0.6111) = 0.9332 − 0.2706
      name: "13.6 with u 1.8 between 12.5 and 16.3",
      source: {
        sourceId: "jcgm-106",
        locator: "§7.4, its numbers; the probability by tables of the normal distribution",
      },
      input: { value: 13.6, standardUncertainty: 1.8, lowerLimit: 12.5, upperLimit: 16.3 },
      expected: { probability: 0.6626 },
      relativeTolerance: 2e-4,
      toleranceReason: "tables of four figures",
    },
    {
      name: "both limits 1.96 standard uncertainties away: 0.95",
      source: { sourceId: "derived", locator: "tables of the normal distribution" },
      input: { value: 10, standardUncertainty: 2, lowerLimit: 6.08, upperLimit: 13.92 },
      expected: { probability: 0.95 },
      relativeTolerance: 1e-4,
      toleranceReason: "1.96 is rounded",
    },
  ],
});
