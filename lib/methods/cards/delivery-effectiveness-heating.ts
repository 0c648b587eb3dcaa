import { z } from "zod";
import { deliveryEffectivenessHeating } from "#lib/distribution/delivery-effectiveness-heating.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, ratio, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

/** 1,200 cfm, 60,000 Btu/h, all ducts in a place at 40 °F. */
const leaky = {
  fanFlowCfm: 1200,
  supplyLeakageCfm: 120,
  returnLeakageCfm: 60,
  supplyAreaFt2: 540,
  returnAreaFt2: 150,
  supplyRValue: 4.9,
  returnRValue: 4.9,
  indoorTemperatureF: 70,
  supplyZoneTemperatureF: 40,
  returnZoneTemperatureF: 40,
  capacityBtuPerH: 60000,
};
const derived = { sourceId: "derived", locator: "marching energy balance" } as const;
const figures = { relativeTolerance: 1e-5, toleranceReason: "stated to 5 figures" } as const;

export const deliveryEffectivenessHeatingCard = defineMethod({
  id: "delivery-effectiveness-heating",
  title: "Delivery effectiveness, heating",
  group: "distribution",
  summary: "The share of the heat put into the air that arrives through the registers.",
  equation:
    "DE = a_s·B_s − a_s·B_s·(1 − a_r·B_r)·Δt_r/Δt_e − a_s·(1 − B_s)·Δt_s/Δt_e; a = 1 − leakage/flow, B = exp(−A/(R·m)), m = 60·Q·ρ·cp, Δt_e = capacity/m",
  validRange: "Steady operation; leakage below the fan flow; R above 0.",
  leftOut:
    "Regain, cycling and infiltration, which are methods of their own. Leaks are taken at the end of a side: spread along it they cost up to 2 % of the capacity more.",
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
    capacityBtuPerH: ductFields.capacityBtuPerH,
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness"),
    supplyLeakFactor: ratio("Share of the flow that reaches the rooms"),
    returnLeakFactor: ratio("Share of the flow that comes from the rooms"),
    supplyConductionFactor: ratio("Temperature difference left at the registers"),
    returnConductionFactor: ratio("Temperature difference left at the end of the return"),
    equipmentTemperatureRiseF: numberField({ unit: "Δ°F", title: "Temperature rise of the equipment" }),
    returnTemperatureDifferenceF: numberField({ unit: "Δ°F", title: "Indoor less return zone temperature" }),
    supplyPlenumTemperatureF: numberField({ unit: "°F", title: "Supply plenum temperature" }),
    registerTemperatureF: numberField({ unit: "°F", title: "Register temperature" }),
    notes: notesField,
  }),
  defaults: { airDensityLbPerFt3: standardDensityDefault },
  compute: deliveryEffectivenessHeating,
  checks: [
    {
      name: "10 % supply and 5 % return leakage",
      source: derived,
      input: leaky,
      expected: { deliveryEffectiveness: 0.74043 },
      ...figures,
    },
    {
      name: "3 % supply and 2 % return leakage",
      source: derived,
      input: { ...leaky, supplyLeakageCfm: 36, returnLeakageCfm: 24 },
      expected: { deliveryEffectiveness: 0.81493 },
      ...figures,
    },
    {
      name: "no leaks",
      source: derived,
      input: { ...leaky, supplyLeakageCfm: 0, returnLeakageCfm: 0 },
      expected: { deliveryEffectiveness: 0.85176, supplyLeakFactor: 1, returnLeakFactor: 1 },
      ...figures,
    },
  ],
});
