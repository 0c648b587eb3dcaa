import { z } from "zod";
import { thermalRegain } from "#lib/distribution/thermal-regain.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

/** The two cases of delivery-effectiveness-heating, with 60·1200·0.075·0.24 = 1296 Btu/(h·°F) of air. */
const AIR_BTU_PER_H_F = 1296;
const share = { min: 0, max: 1 };
const firstCase = {
  deliveryEffectiveness: 0.74043,
  returnLeakFactor: 0.95,
  returnConductionFactor: Math.exp(-150 / 4.9 / AIR_BTU_PER_H_F),
  supplyRegain: 0.1,
  returnRegain: 0.1,
  returnTemperatureDifferenceF: 30,
  equipmentTemperatureRiseF: 60000 / AIR_BTU_PER_H_F,
};
const derived = { sourceId: "derived", locator: "energy balance, heating cases with regain 0.10" } as const;
const figures = { relativeTolerance: 1e-5, toleranceReason: "stated to 5 figures" } as const;

export const thermalRegainCard = defineMethod({
  id: "thermal-regain",
  title: "Thermal regain, heating",
  group: "distribution",
  summary: "Delivery effectiveness with the part of the losses that finds its way back into the rooms.",
  equation: "DE + F_s·(1 − DE) − [F_s − F_r − B_r·(a_r·F_s − F_r)]·Δt_r/Δt_e",
  validRange: "Regains and factors from 0 to 1; a temperature rise above 0.",
  leftOut: "What a return leak takes from its place never counts as regained.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }],
  input: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness without regain", { min: -1000, max: 10 }),
    returnLeakFactor: ratio("Share of the flow that comes from the rooms", share),
    returnConductionFactor: ratio("Temperature difference left at the end of the return", share),
    supplyRegain: ratio("Regain around the supply", share),
    returnRegain: ratio("Regain around the return", share),
    returnTemperatureDifferenceF: numberField({
      unit: "Δ°F",
      title: "Indoor less return zone temperature",
      min: -200,
      max: 200,
    }),
    equipmentTemperatureRiseF: numberField({
      unit: "Δ°F",
      title: "Temperature rise of the equipment",
      above: 0,
      max: 1000,
    }),
  }),
  output: z.strictObject({ deliveryEffectiveness: ratio("Delivery effectiveness with regain") }),
  defaults: {},
  compute: thermalRegain,
  checks: [
    {
      name: "10 % supply and 5 % return leakage",
      source: derived,
      input: firstCase,
      expected: { deliveryEffectiveness: 0.76322 },
      ...figures,
    },
    {
      name: "3 % supply and 2 % return leakage",
      source: derived,
      input: { ...firstCase, deliveryEffectiveness: 0.81493, returnLeakFactor: 0.98 },
      expected: { deliveryEffectiveness: 0.83217 },
      ...figures,
    },
  ],
});
