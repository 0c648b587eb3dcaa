import { z } from "zod";
import { guardBand } from "#lib/retest/guard-band.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const own = (title: string) => numberField({ unit: "of the limit", title, min: -1e15, max: 1e15 });
const derived = { sourceId: "derived", locator: "z = 1.645 at 95 %, one-sided" } as const;

export const guardBandCard = defineMethod({
  id: "guard-band",
  title: "Guard band",
  group: "retest",
  summary: "The reading that meets a limit with confidence, the doubt of a reading taken at that very reading.",
  equation: "upper: U − z·u, or U/(1 + z·r); lower: L + z·u, or L/(1 − z·r); z = Φ⁻¹(confidence)",
  validRange: "One limit, one kind of uncertainty, confidence 0.5 to 0.9999.",
  leftOut: "Risk over many houses: each reading is judged alone.",
  sources: [{ sourceId: "jcgm-106", locator: "§8.3" }],
  input: z.strictObject({
    upperLimit: own("Upper limit").optional(),
    lowerLimit: own("Lower limit").optional(),
    standardUncertainty: numberField({
      unit: "of the limit",
      title: "Standard uncertainty",
      min: 0,
      max: 1e15,
    }).optional(),
    relativeStandardUncertainty: numberField({
      unit: "ratio",
      title: "Relative standard uncertainty",
      min: 0,
      max: 1,
    }).optional(),
    confidence: numberField({ unit: "share", title: "Confidence", min: 0.5, max: 0.9999 }).optional(),
  }),
  output: z.strictObject({ acceptanceLimit: numberField({ unit: "of the limit", title: "Acceptance limit" }) }),
  defaults: {
    confidence: {
      value: 0.95,
      unit: "share",
      reason: "A wrong pass no more often than once in twenty.",
      source: { sourceId: "jcgm-106" },
    },
  },
  compute: guardBand,
  checks: [
    {
      name: "upper limit 80, u 6: 70.13",
      source: derived,
      input: { upperLimit: 80, standardUncertainty: 6 },
      expected: { acceptanceLimit: 70.13 },
      relativeTolerance: 1e-4,
      toleranceReason: "given to four figures",
    },
    {
      name: "upper limit 80, 7.5 % of the reading: 71.21",
      source: derived,
      input: { upperLimit: 80, relativeStandardUncertainty: 0.075 },
      expected: { acceptanceLimit: 71.21 },
      relativeTolerance: 1e-4,
      toleranceReason: "given to four figures",
    },
    {
      // 60 + 1.6449·6; 60/(1 − 1.6449·0.075)
      name: "lower limit 60, u 6",
      source: derived,
      input: { lowerLimit: 60, standardUncertainty: 6 },
      expected: { acceptanceLimit: 69.869 },
      relativeTolerance: 1e-4,
      toleranceReason: "by hand to five figures",
    },
    {
      name: "lower limit 60, 7.5 % of the reading",
      source: derived,
      input: { lowerLimit: 60, relativeStandardUncertainty: 0.075 },
      expected: { acceptanceLimit: 68.443 },
      relativeTolerance: 1e-4,
      toleranceReason: "by hand to five figures",
    },
  ],
});
