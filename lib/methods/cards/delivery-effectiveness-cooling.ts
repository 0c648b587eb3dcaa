import { z } from "zod";
import {
  deliveryEffectivenessCooling,
  TYPICAL_SENSIBLE_HEAT_RATIO,
} from "#lib/distribution/delivery-effectiveness-cooling.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, enthalpyField, ratio, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

const derived = { sourceId: "derived", locator: "marching energy balance with moisture" } as const;

export const deliveryEffectivenessCoolingCard = defineMethod({
  id: "delivery-effectiveness-cooling",
  title: "Delivery effectiveness, cooling",
  group: "distribution",
  summary: "The share of a cooling coil's total capacity, moisture included, that arrives through the registers.",
  equation:
    "DE = a_s·[cap − M·Δh_r − M·cp·(t_zs − t_sp)·(1 − B_s)]/cap; Δh_r = a_r·cp·(t_z − t_in)·(1 − B_r) + (1 − a_r)·(h_z − h_in), M = 60·Q·ρ, t_sp = coil entering − SHR·cap/(M·cp)",
  validRange: "Steady operation; leakage below the fan flow; R above 0; enthalpies not below that of dry air.",
  leftOut:
    "Regain and infiltration, which are methods of their own; the heat capacity of moisture (below 3 % of conduction); a sensible heat ratio that moves with the return air.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }, derived],
  input: z.strictObject({
    fanFlowCfm: ductFields.fanFlowCfm,
    supplyLeakageCfm: ductFields.supplyLeakageCfm,
    returnLeakageCfm: ductFields.returnLeakageCfm,
    supplyAreaFt2: ductFields.supplyAreaFt2,
    returnAreaFt2: ductFields.returnAreaFt2,
    supplyRValue: ductFields.supplyRValue,
    returnRValue: ductFields.returnRValue,
    indoorTemperatureF: ductFields.indoorTemperatureF,
    supplyZoneTemperatureF: ductFields.supplyZoneTemperatureF,
    returnZoneTemperatureF: ductFields.returnZoneTemperatureF,
    indoorEnthalpyBtuPerLb: enthalpyField("Indoor enthalpy"),
    returnZoneEnthalpyBtuPerLb: enthalpyField("Enthalpy of the air around the return"),
    capacityBtuPerH: numberField({
      unit: "Btu/h",
      title: "Total cooling capacity",
      description: "Sensible and latent together, positive.",
      above: 0,
      max: 1e6,
    }),
    sensibleHeatRatio: ratio("Sensible heat ratio", { min: 0.2, max: 1 }).optional(),
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness"),
    supplyPlenumTemperatureF: numberField({ unit: "°F", title: "Supply plenum temperature" }),
    returnGainFraction: ratio("Gain of the return over the capacity"),
    returnConductionFraction: ratio("Of that, conducted through the return's walls"),
    notes: notesField,
  }),
  defaults: {
    sensibleHeatRatio: {
      value: TYPICAL_SENSIBLE_HEAT_RATIO.value,
      unit: "ratio",
      reason: "A common value of residential coils near their rating point.",
      source: TYPICAL_SENSIBLE_HEAT_RATIO.source,
    },
    airDensityLbPerFt3: standardDensityDefault,
  },
  compute: deliveryEffectivenessCooling,
  checks: [
    {
      name: "ducts in a hot attic, 10 % supply and 5 % return leakage",
      source: derived,
      input: {
        fanFlowCfm: 1200,
        supplyLeakageCfm: 120,
        returnLeakageCfm: 60,
        supplyAreaFt2: 540,
        returnAreaFt2: 150,
        supplyRValue: 4.9,
        returnRValue: 4.9,
        indoorTemperatureF: 75,
        supplyZoneTemperatureF: 120,
        returnZoneTemperatureF: 120,
        indoorEnthalpyBtuPerLb: 28.18,
        returnZoneEnthalpyBtuPerLb: 44.35,
        capacityBtuPerH: 36000,
        sensibleHeatRatio: 0.75,
      },
      expected: { deliveryEffectiveness: 0.59322 },
      relativeTolerance: 1e-5,
      toleranceReason: "stated to 5 figures",
    },
  ],
});
