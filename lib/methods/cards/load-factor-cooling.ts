import { z } from "zod";
import { loadFactorCooling } from "#lib/distribution/load-factor-cooling.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, enthalpyField, ratio, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

export const loadFactorCoolingCard = defineMethod({
  id: "load-factor-cooling",
  title: "Load factor, cooling",
  group: "distribution",
  summary: "How much less the delivered cooling is worth because the running blower draws in more outdoor air.",
  equation: "1 − 60·ρ·(Q_on − Q_off)·(h_out − h_in)/(DE·capacity)",
  validRange: "On-time of one or several systems; delivery effectiveness above 0.",
  leftOut: "Air that flows through the ducts while the blower rests.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }],
  input: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness, with regain", { above: 0, max: 10 }),
    capacityBtuPerH: ductFields.capacityBtuPerH,
    infiltrationOnCfm: numberField({ unit: "cfm", title: "Infiltration with the blower on", min: 0, max: 20000 }),
    infiltrationOffCfm: numberField({ unit: "cfm", title: "Infiltration with the blower off", min: 0, max: 20000 }),
    indoorEnthalpyBtuPerLb: enthalpyField("Indoor enthalpy"),
    outdoorEnthalpyBtuPerLb: enthalpyField("Outdoor enthalpy"),
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({ loadFactor: ratio("Load factor") }),
  defaults: { airDensityLbPerFt3: standardDensityDefault },
  compute: loadFactorCooling,
  checks: [
    {
      // 1 − 4.5·20·12/21,600
      name: "20 cfm more at 12 Btu/lb difference",
      source: { sourceId: "derived", locator: "by hand, 4.5 lb/h a cfm" },
      input: {
        deliveryEffectiveness: 0.6,
        capacityBtuPerH: 36000,
        infiltrationOnCfm: 80,
        infiltrationOffCfm: 60,
        indoorEnthalpyBtuPerLb: 28,
        outdoorEnthalpyBtuPerLb: 40,
      },
      expected: { loadFactor: 0.95 },
      relativeTolerance: 1e-9,
      toleranceReason: "exact arithmetic",
    },
  ],
});
