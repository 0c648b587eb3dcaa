import { z } from "zod";
import { thermalRegainCooling } from "#lib/distribution/thermal-regain-cooling.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const share = { min: 0, max: 1 };
/** The case of delivery-effectiveness-cooling: 60·1200·0.075 = 5,400 lb/h of air, 36,000 Btu/h, attic at 120 °F. */
const conduction = (5400 * 0.24 * 0.95 * 45 * (1 - Math.exp(-150 / 4.9 / 1296))) / 36000;
const leak = (5400 * 0.05 * (44.35 - 28.18)) / 36000;

export const thermalRegainCoolingCard = defineMethod({
  id: "thermal-regain-cooling",
  title: "Thermal regain, cooling",
  group: "distribution",
  summary: "Delivery effectiveness in cooling with the part of the losses that finds its way back into the rooms.",
  equation: "DE + F_s·(1 − DE − L_r) + F_r·c_r",
  validRange: "Regains from 0 to 1.",
  leftOut: "What a return leak brings in never counts as regained, its moisture least of all.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }, { sourceId: "derived" }],
  input: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness without regain", { min: -1000, max: 10 }),
    returnGainFraction: ratio("Gain of the return over the capacity", { min: -1000, max: 1000 }),
    returnConductionFraction: ratio("Of that, conducted through the return's walls", { min: -1000, max: 1000 }),
    supplyRegain: ratio("Regain around the supply", share),
    returnRegain: ratio("Regain around the return", share),
  }),
  output: z.strictObject({ deliveryEffectiveness: ratio("Delivery effectiveness with regain") }),
  defaults: {},
  compute: thermalRegainCooling,
  checks: [
    {
      name: "ducts in a hot attic, regain 0.10",
      source: { sourceId: "derived", locator: "energy balance, cooling case" },
      input: {
        deliveryEffectiveness: 0.59322,
        returnGainFraction: conduction + leak,
        returnConductionFraction: conduction,
        supplyRegain: 0.1,
        returnRegain: 0.1,
      },
      expected: { deliveryEffectiveness: 0.62177 },
      relativeTolerance: 1e-5,
      toleranceReason: "stated to 5 figures",
    },
  ],
});
