import { z } from "zod";
import { seasonalEfficiency } from "#lib/distribution/seasonal-efficiency.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "by hand" } as const;
const exact = { relativeTolerance: 1e-12, toleranceReason: "exact arithmetic" } as const;

export const seasonalEfficiencyCard = defineMethod({
  id: "seasonal-efficiency",
  title: "Seasonal efficiency",
  group: "distribution",
  summary: "Efficiency over a season, in which each bin counts by what it consumes.",
  equation: "η = Σ load/Σ(load/η_bin)",
  validRange: "Loads of at least 0, not all 0; efficiencies above 0. Only ratios of the loads matter.",
  leftOut: "Heat pumps, whose energy is no fixed multiple of the output: see heat-pump-bin.",
  sources: [{ sourceId: "derived", locator: "energy is additive" }],
  input: z.strictObject({
    bins: z
      .array(
        z.strictObject({
          load: numberField({ unit: "any energy", title: "Load", min: 0, max: 1e15 }),
          efficiency: ratio("Efficiency", { above: 0, max: 10 }),
        }),
      )
      .min(1)
      .max(20000)
      .meta({ title: "Bins" }),
  }),
  output: z.strictObject({ efficiency: ratio("Seasonal efficiency") }),
  defaults: {},
  compute: seasonalEfficiency,
  checks: [
    {
      name: "two bins",
      source: derived,
      // 40/(10/0.5 + 30/0.75)
      input: {
        bins: [
          { load: 10, efficiency: 0.5 },
          { load: 30, efficiency: 0.75 },
        ],
      },
      expected: { efficiency: 2 / 3 },
      ...exact,
    },
    {
      name: "the design day alone",
      source: derived,
      input: { bins: [{ load: 1, efficiency: 0.7 }] },
      expected: { efficiency: 0.7 },
      ...exact,
    },
  ],
});
