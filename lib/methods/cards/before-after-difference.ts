import { z } from "zod";
import { beforeAfterDifference } from "#lib/retest/before-after-difference.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const relative = (title: string) => numberField({ unit: "ratio", title, min: 0, max: 1 });
const derived = { sourceId: "derived", locator: "propagation of uncertainty by hand" } as const;
const toFourFigures = { relativeTolerance: 5e-4, toleranceReason: "given to four figures" } as const;

export const beforeAfterDifferenceCard = defineMethod({
  id: "before-after-difference",
  title: "Difference of two readings",
  group: "retest",
  summary: "What changed between two readings, as a difference and as a share, each with its doubt.",
  equation:
    "u² = (r_b·b)² + (r_a·a)² + g²(b − a)² with one fan and restrictor, else + g²(b² + a²); reduction 1 − a/b, u = (a/b)·√(r_b² + r_a² [+ 2g² if not shared])",
  validRange: "Before above 0, after 0 or more, relative uncertainties 0 to 1.",
  leftOut: "What else changed in the house between the readings.",
  sources: [{ sourceId: "jcgm-100", locator: "§5.2" }],
  input: z.strictObject({
    before: numberField({ unit: "any, the same for both", title: "Reading before", above: 0, max: 1e15 }),
    after: numberField({ unit: "any, the same for both", title: "Reading after", min: 0, max: 1e15 }),
    randomRelativeBefore: relative("Random relative uncertainty before"),
    randomRelativeAfter: relative("Random relative uncertainty after"),
    sharedRelative: relative("Relative uncertainty of the instrument").optional(),
    sameInstrumentAndRestrictor: z.boolean().optional().meta({ title: "Same fan and flow restrictor both times" }),
  }),
  output: z.strictObject({
    difference: numberField({ unit: "of the readings", title: "Difference" }),
    standardUncertainty: numberField({ unit: "of the readings", title: "Standard uncertainty of the difference" }),
    reductionShare: numberField({ unit: "share", title: "Share removed" }),
    reductionStandardUncertainty: numberField({ unit: "share", title: "Standard uncertainty of the share" }),
    isDifferenceClear: z.boolean().meta({ title: "The readings can be told apart at 95 %" }),
  }),
  defaults: {
    sharedRelative: {
      value: 0,
      unit: "ratio",
      reason: "No common doubt of the instrument was given.",
      source: { sourceId: "jcgm-100" },
    },
    sameInstrumentAndRestrictor: {
      value: false,
      unit: "choice",
      reason: "The safe case: nothing cancels.",
      source: { sourceId: "jcgm-100" },
    },
  },
  compute: beforeAfterDifference,
  checks: [
    {
      name: "320 to 110, each 5 % random",
      source: derived,
      input: { before: 320, after: 110, randomRelativeBefore: 0.05, randomRelativeAfter: 0.05 },
      expected: {
        difference: 210,
        standardUncertainty: 16.92,
        reductionShare: 0.65625,
        reductionStandardUncertainty: 0.0243,
      },
      ...toFourFigures,
    },
    {
      // 2 % random, 5 % of the fan's calibration: it cancels in the share and counts on the difference alone.
      // u² = 6.4² + 2.2² + (0.05·210)²; u of the share 0.34375·0.02·√2.
      name: "the same fan and restrictor both times",
      source: derived,
      input: {
        before: 320,
        after: 110,
        randomRelativeBefore: 0.02,
        randomRelativeAfter: 0.02,
        sharedRelative: 0.05,
        sameInstrumentAndRestrictor: true,
      },
      expected: { standardUncertainty: 12.492, reductionStandardUncertainty: 0.0097227 },
      ...toFourFigures,
    },
    {
      // u² = 6.4² + 2.2² + 0.05²·(320² + 110²); u of the share 0.34375·√(2·0.02² + 2·0.05²).
      name: "another fan the second time",
      source: derived,
      input: {
        before: 320,
        after: 110,
        randomRelativeBefore: 0.02,
        randomRelativeAfter: 0.02,
        sharedRelative: 0.05,
      },
      expected: { standardUncertainty: 18.222, reductionStandardUncertainty: 0.026179 },
      ...toFourFigures,
    },
  ],
});
