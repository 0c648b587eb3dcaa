import { z } from "zod";
import { naturalInfiltration } from "#lib/loads/natural-infiltration.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const practice = { sourceId: "practice", locator: "divisor of the leakage at 50 Pa, from memory" } as const;
const byHand = { relativeTolerance: 1e-9, toleranceReason: "exact by hand" } as const;

export const naturalInfiltrationCard = defineMethod({
  id: "natural-infiltration",
  title: "Mean infiltration of a house",
  group: "loads",
  summary: "The outdoor air that comes in by itself over a season, from the leakage that a blower door finds.",
  equation: "Q = Q50/(17 (1 − 0.1 (stories − 1)))",
  validRange: "1 to 4 stories. A single house may be off by 30 %.",
  leftOut: "Wind, shelter and the weather of the month.",
  sources: [practice],
  input: z.strictObject({
    envelopeLeakageCfm50: numberField({ unit: "cfm", title: "House air leakage at 50 Pa", above: 0, max: 30000 }),
    storeysCount: numberField({ unit: "count", title: "Stories", min: 1, max: 4 }),
  }),
  output: z.strictObject({ infiltrationCfm: numberField({ unit: "cfm", title: "Mean infiltration" }) }),
  defaults: {},
  compute: naturalInfiltration,
  checks: [
    {
      name: "one story: a seventeenth",
      source: practice,
      input: { envelopeLeakageCfm50: 1700, storeysCount: 1 },
      expected: { infiltrationCfm: 100 },
      ...byHand,
    },
    {
      // 3060/(17·0.9)
      name: "two stories draw a ninth more",
      source: practice,
      input: { envelopeLeakageCfm50: 3060, storeysCount: 2 },
      expected: { infiltrationCfm: 200 },
      ...byHand,
    },
  ],
});
