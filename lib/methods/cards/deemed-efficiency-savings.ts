import { z } from "zod";
import { deemedEfficiencySavings } from "#lib/savings/deemed-efficiency-savings.ts";
import { DEEMED_CONSTANTS } from "#lib/savings/deemed-leakage-savings.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const rule = {
  sourceId: "il-trm",
  locator: "residential duct insulation and sealing, by distribution efficiency",
} as const;
const efficiency = (title: string) => numberField({ unit: "ratio", title, above: 0, max: 1 });
const regain = (title: string) => numberField({ unit: "ratio", title, min: 0, max: 1 }).optional();
const capacity = (title: string) => numberField({ unit: "Btu/h", title, above: 0, max: 1e6 }).optional();
const hours = (title: string) => numberField({ unit: "h", title, min: 0, max: 8760 }).optional();
const noRegain = { value: 1, unit: "ratio", reason: "Nothing of the loss is regained.", source: rule };

export const deemedEfficiencySavingsCard = defineMethod({
  id: "deemed-efficiency-savings",
  title: "Deemed savings by distribution efficiency",
  group: "savings",
  summary: "What a program credits for a rise of distribution efficiency.",
  equation:
    "kWh = ((η₂ − η₁)/η₂)·FLH·cap·TRF/(1,000·SEER); therms = ((η₂ − η₁)/η₂)·FLH_h·cap_h·TRF/(100,000·η); blower kWh = therms·F_e·29.3",
  validRange: "Efficiencies above 0 up to 1; cooling or heating is 0 where all of its inputs are left out.",
  leftOut: "Climate beyond the full-load hours: a rule, not physics.",
  sources: [rule],
  input: z.strictObject({
    efficiencyBefore: efficiency("Distribution efficiency before"),
    efficiencyAfter: efficiency("Distribution efficiency after"),
    coolingCapacityBtuPerH: capacity("Cooling capacity"),
    coolingFullLoadHours: hours("Full-load hours of cooling"),
    seer: z.number().gt(0).max(40).meta({ unit: "Btu/Wh", title: "Seasonal cooling efficiency (SEER)" }).optional(),
    heatingCapacityBtuPerH: capacity("Heating capacity"),
    heatingFullLoadHours: hours("Full-load hours of heating"),
    heatingEfficiency: numberField({ unit: "ratio", title: "Heating efficiency", above: 0, max: 6 }).optional(),
    coolingRegainFactor: regain("Cooling thermal regain factor"),
    heatingRegainFactor: regain("Heating thermal regain factor"),
    blowerFraction: numberField({ unit: "ratio", title: "Blower electricity over fuel", min: 0, max: 1 }).optional(),
  }),
  output: z.strictObject({
    coolingKWh: numberField({ unit: "kWh", title: "Cooling saved a year" }),
    heatingTherms: numberField({ unit: "therm", title: "Heating saved a year" }),
    blowerKWh: numberField({ unit: "kWh", title: "Blower saved a year" }),
  }),
  defaults: {
    coolingRegainFactor: noRegain,
    heatingRegainFactor: noRegain,
    blowerFraction: {
      value: DEEMED_CONSTANTS.defaultBlowerFraction,
      unit: "ratio",
      reason: "Blower electricity over furnace fuel in the rule.",
      source: rule,
    },
  },
  compute: deemedEfficiencySavings,
  checks: [
    {
      name: "70 to 80 % in a house that heats and cools",
      source: { sourceId: "derived", locator: "the rule's equations by hand" },
      input: {
        efficiencyBefore: 0.7,
        efficiencyAfter: 0.8,
        coolingCapacityBtuPerH: 36000,
        coolingFullLoadHours: 730,
        seer: 11,
        heatingCapacityBtuPerH: 105000,
        heatingFullLoadHours: 1754,
        heatingEfficiency: 0.8,
      },
      // An eighth of 730·36,000/11,000 kWh and of 1754·105,000/80,000 therms.
      expected: { coolingKWh: 298.636, heatingTherms: 287.766, blowerKWh: 264.75 },
      relativeTolerance: 1e-5,
      toleranceReason: "by hand to six figures",
    },
    {
      name: "heating alone, half regained",
      source: { sourceId: "derived", locator: "the rule's equations by hand" },
      input: {
        efficiencyBefore: 0.6,
        efficiencyAfter: 0.8,
        heatingCapacityBtuPerH: 80000,
        heatingFullLoadHours: 1000,
        heatingEfficiency: 0.8,
        heatingRegainFactor: 0.5,
      },
      // A quarter of 1,000 therms, halved.
      expected: { heatingTherms: 125 },
      relativeTolerance: 1e-9,
      toleranceReason: "exact arithmetic",
    },
  ],
});
