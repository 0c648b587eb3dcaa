import { z } from "zod";
import { DEEMED_CONSTANTS, deemedLeakageSavings } from "#lib/savings/deemed-leakage-savings.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const rule = { sourceId: "il-trm", locator: "residential duct insulation and sealing, method 1" } as const;
const share = (title: string) => numberField({ unit: "share", title, min: 0, max: 1 }).optional();
const regain = (title: string) => numberField({ unit: "ratio", title, min: 0, max: 1 }).optional();
const capacity = (title: string) => numberField({ unit: "Btu/h", title, above: 0, max: 1e6 }).optional();
const hours = (title: string) => numberField({ unit: "h", title, min: 0, max: 8760 }).optional();
const half = (side: string) => ({
  value: 0.5,
  unit: "share",
  reason: `Half of the leakage is on the ${side} side.`,
  source: rule,
});
const noRegain = { value: 1, unit: "ratio", reason: "Nothing of the loss is regained.", source: rule };

const example = {
  leakageReductionCfm25: 158.72,
  coolingCapacityBtuPerH: 36000,
  coolingFullLoadHours: 730,
  seer: 11,
  heatingCapacityBtuPerH: 105000,
  heatingFullLoadHours: 1754,
  heatingEfficiency: 0.8,
};
const printed = { relativeTolerance: 2.5e-3, toleranceReason: "the rule prints whole numbers" } as const;

export const deemedLeakageSavingsCard = defineMethod({
  id: "deemed-leakage-savings",
  title: "Deemed savings by leakage",
  group: "savings",
  summary: "What a program credits for a measured reduction of leakage.",
  equation:
    "x = ΔL·(supply share + return share/2); kWh = x/(400·cap/12,000)·FLH·cap·TRF/(1,000·SEER); therms = x/(cap_h·k)·FLH_h·cap_h·TRF/(100,000·η); blower kWh = therms·F_e·29.3",
  validRange:
    "A credited reduction no larger than the airflow that the rule gives the equipment; a season is left out with all three of its inputs.",
  leftOut: "Climate beyond the full-load hours, duct location, insulation: a rule, not physics.",
  sources: [rule],
  input: z.strictObject({
    leakageReductionCfm25: numberField({ unit: "cfm", title: "Leakage reduction at 25 Pa", min: 0, max: 10000 }),
    supplyShare: share("Share of the leakage on the supply side"),
    returnShare: share("Share of the leakage on the return side"),
    coolingCapacityBtuPerH: capacity("Cooling capacity"),
    coolingFullLoadHours: hours("Full-load hours of cooling"),
    seer: z.number().gt(0).max(40).meta({ unit: "Btu/Wh", title: "Seasonal cooling efficiency (SEER)" }).optional(),
    heatingCapacityBtuPerH: capacity("Heating capacity"),
    heatingFullLoadHours: hours("Full-load hours of heating"),
    heatingEfficiency: numberField({ unit: "ratio", title: "Heating efficiency", above: 0, max: 6 }).optional(),
    coolingRegainFactor: regain("Cooling thermal regain factor"),
    heatingRegainFactor: regain("Heating thermal regain factor"),
    airflowPerBtuPerH: z
      .number()
      .gt(0)
      .max(0.1)
      .meta({ unit: "cfm/(Btu/h)", title: "Airflow per heating capacity" })
      .optional(),
    blowerFraction: numberField({ unit: "ratio", title: "Blower electricity over fuel", min: 0, max: 1 }).optional(),
  }),
  output: z.strictObject({
    coolingKWh: numberField({ unit: "kWh", title: "Cooling saved a year" }),
    heatingTherms: numberField({ unit: "therm", title: "Heating saved a year" }),
    blowerKWh: numberField({ unit: "kWh", title: "Blower saved a year" }),
  }),
  defaults: {
    supplyShare: half("supply"),
    returnShare: half("return"),
    coolingRegainFactor: noRegain,
    heatingRegainFactor: noRegain,
    airflowPerBtuPerH: {
      value: DEEMED_CONSTANTS.defaultAirflowPerBtuPerH,
      unit: "cfm/(Btu/h)",
      reason: "First editions of the rule; later ones 0.0136.",
      source: rule,
    },
    blowerFraction: {
      value: DEEMED_CONSTANTS.defaultBlowerFraction,
      unit: "ratio",
      reason: "Blower electricity over furnace fuel in the rule.",
      source: rule,
    },
  },
  compute: deemedLeakageSavings,
  checks: [
    {
      // (387 − 139) cfm50 × 0.64
      name: "the rule's own example: 158.72 cfm removed",
      source: rule,
      input: example,
      expected: { coolingKWh: 237, heatingTherms: 212, blowerKWh: 195 },
      ...printed,
    },
    {
      name: "the same with 0.0136 cfm per Btu/h",
      source: rule,
      input: { ...example, airflowPerBtuPerH: 0.0136 },
      expected: { heatingTherms: 191.8 },
      ...printed,
    },
  ],
});
