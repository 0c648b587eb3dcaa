import { z } from "zod";
import { loadFactor } from "#lib/distribution/load-factor.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, ratio, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const exact = { relativeTolerance: 1e-9, toleranceReason: "exact arithmetic" } as const;
const derived = { sourceId: "derived", locator: "by hand, 1.08 Btu/(h·°F) a cfm" } as const;
const input = {
  deliveryEffectiveness: 0.75,
  capacityBtuPerH: 60000,
  infiltrationOnCfm: 80,
  infiltrationOffCfm: 60,
  indoorTemperatureF: 70,
  outdoorTemperatureF: 10,
};

export const loadFactorCard = defineMethod({
  id: "load-factor",
  title: "Load factor, heating",
  group: "distribution",
  summary: "How much less the delivered heat is worth because the running blower draws in more outdoor air.",
  equation: "1 − 60·ρ·cp·(Q_on − Q_off)·(t_in − t_out)/(DE·capacity)",
  validRange: "On-time of one or several systems; delivery effectiveness above 0.",
  leftOut: "Air that flows through the ducts while the blower rests.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }],
  input: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness, with regain", { above: 0, max: 10 }),
    capacityBtuPerH: ductFields.capacityBtuPerH,
    infiltrationOnCfm: numberField({ unit: "cfm", title: "Infiltration with the blower on", min: 0, max: 20000 }),
    infiltrationOffCfm: numberField({ unit: "cfm", title: "Infiltration with the blower off", min: 0, max: 20000 }),
    indoorTemperatureF: ductFields.indoorTemperatureF,
    outdoorTemperatureF: ductFields.outdoorTemperatureF,
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({ loadFactor: ratio("Load factor") }),
  defaults: { airDensityLbPerFt3: standardDensityDefault },
  compute: loadFactor,
  checks: [
    // 1 − 1.08·20·60/45,000
    { name: "20 cfm more at 60 °F difference", source: derived, input, expected: { loadFactor: 0.9712 }, ...exact },
    {
      name: "20 cfm less at 60 °F difference",
      source: derived,
      input: { ...input, infiltrationOnCfm: 60, infiltrationOffCfm: 80 },
      expected: { loadFactor: 1.0288 },
      ...exact,
    },
  ],
});
