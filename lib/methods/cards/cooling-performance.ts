import { z } from "zod";
import { COOLING_RATIOS, coolingPerformance } from "#lib/distribution/cooling-performance.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const curves = {
  sourceId: "nrel-56354",
  locator: "single-speed curves at a wet bulb of 67 °F, evaluated by hand",
} as const;

export const coolingPerformanceCard = defineMethod({
  id: "cooling-performance",
  title: "Air conditioner by outdoor temperature",
  group: "distribution",
  summary: "An air conditioner gives less and takes more the hotter it is outdoors; SEER is its efficiency at 82 °F.",
  equation: "H(t)/H₉₅ and P(t)/P₉₅ straight lines through 82 and 95 °F; efficiency ratio = [H(t)/P(t)]/[H₈₂/P₈₂]",
  validRange: "Outdoors 60 to 125 °F. Both ratios 1 give the same efficiency at any temperature.",
  leftOut:
    "The wet bulb of the air that enters, refrigerant charge, how stages change the lines; at 70 °F the curves give 5 % less efficiency than the line.",
  sources: [{ sourceId: "doe-appendix-m", locator: "straight lines between the tests, form of" }, curves],
  input: z.strictObject({
    outdoorTemperatureF: numberField({ unit: "°F", title: "Outdoor temperature", min: 50, max: 135 }),
    capacityAt82Ratio: ratio("Capacity at 82 °F over that at 95 °F", { min: 0.9, max: 1.3 }).optional(),
    efficiencyAt95Ratio: ratio("Efficiency at 95 °F over that at 82 °F", { min: 0.6, max: 1.05 }).optional(),
  }),
  output: z.strictObject({
    capacityRatio: ratio("Capacity over its rating"),
    efficiencyRatio: ratio("Efficiency over SEER"),
  }),
  defaults: {
    capacityAt82Ratio: { ...COOLING_RATIOS.capacityAt82Ratio, reason: "A common single-speed air conditioner." },
    efficiencyAt95Ratio: { ...COOLING_RATIOS.efficiencyAt95Ratio, reason: "A common single-speed air conditioner." },
  },
  compute: coolingPerformance,
  checks: [
    {
      name: "at 82 °F the efficiency is SEER's own",
      source: { sourceId: "doe-appendix-m", locator: "SEER is made of the test at 82 °F, form of" },
      input: { outdoorTemperatureF: 82 },
      expected: { capacityRatio: 1.0686, efficiencyRatio: 1 },
      relativeTolerance: 1e-4,
      toleranceReason: "ratios printed to four digits",
    },
    {
      // EIR 0.80415 at 82 °F and 1 at 95 °F
      name: "at 95 °F the curves' own ratio of the two tests",
      source: curves,
      input: { outdoorTemperatureF: 95 },
      expected: { capacityRatio: 1, efficiencyRatio: 0.80415 },
      relativeTolerance: 3e-4,
      toleranceReason: "its ratio is taken to three digits",
    },
    {
      // Capacity 1.401665 + 0.005887776·105 − 0.000012808·105² − 0.000132822·67·105; EIR the same way: 0.94326 and 1.19259
      name: "at 105 °F, beyond both tests, the curves themselves",
      source: curves,
      input: { outdoorTemperatureF: 105 },
      expected: { capacityRatio: 0.9443, efficiencyRatio: 0.6743 },
      relativeTolerance: 0.02,
      toleranceReason: "a straight line in place of a parabola",
    },
  ],
});
