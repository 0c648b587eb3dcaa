import { z } from "zod";
import { DEGRADATION_COEFFICIENT, heatPumpBin } from "#lib/distribution/heat-pump-bin.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "by hand" } as const;
const cold = { loadBtuPerH: 30000, capacityBtuPerH: 24000, cop: 2.4 };
/** 24,000/2.4 Btu/h of compressor and the rest of 30,000/η by resistance, 3,412.14 Btu a kWh. */
const byHand = (requiredBtuPerH: number) => (10000 + requiredBtuPerH - 24000) / 3412.142;
const figures = { relativeTolerance: 1e-6, toleranceReason: "Btu a kWh to 7 figures" } as const;

export const heatPumpBinCard = defineMethod({
  id: "heat-pump-bin",
  title: "Heat pump at one outdoor temperature",
  group: "distribution",
  summary: "Electric power of a heat pump and its resistance heat for a load behind leaky ducts.",
  equation: "R = L/η; S = max(0, R − H); PLF = 1 − c·(1 − R/H) below capacity; kW = min(R, H)/(3412·COP·PLF) + S/3412",
  validRange: "A steady load; efficiency, capacity and COP above 0.",
  leftOut: "Lockouts and recovery from set-back, which run the resistance heat more.",
  sources: [{ sourceId: "doe-appendix-m", locator: "form of" }],
  input: z.strictObject({
    loadBtuPerH: numberField({ unit: "Btu/h", title: "Load of the rooms", min: 0, max: 1e6 }),
    distributionEfficiency: ratio("Distribution efficiency", { above: 0, max: 2 }),
    capacityBtuPerH: numberField({ unit: "Btu/h", title: "Capacity at this temperature", above: 0, max: 1e6 }),
    cop: ratio("COP at this temperature", { above: 0, max: 12 }),
    degradationCoefficient: ratio("Degradation coefficient", { min: 0, max: 0.9 }).optional(),
  }),
  output: z.strictObject({
    requiredBtuPerH: numberField({ unit: "Btu/h", title: "Output that the load takes" }),
    supplementaryBtuPerH: numberField({ unit: "Btu/h", title: "Of that, by resistance heat" }),
    electricKW: numberField({ unit: "kW", title: "Electric power" }),
  }),
  defaults: {
    degradationCoefficient: {
      value: DEGRADATION_COEFFICIENT.value,
      unit: "ratio",
      reason: "The rating procedure's default for one stage.",
      source: DEGRADATION_COEFFICIENT.source,
    },
  },
  compute: heatPumpBin,
  checks: [
    {
      name: "cold hour, ducts at 70 %",
      source: derived,
      input: { ...cold, distributionEfficiency: 0.7 },
      expected: {
        requiredBtuPerH: 30000 / 0.7,
        supplementaryBtuPerH: 30000 / 0.7 - 24000,
        electricKW: byHand(30000 / 0.7),
      },
      ...figures,
    },
    {
      name: "the same hour, ducts at 80 %: 18.6 % less",
      source: derived,
      input: { ...cold, distributionEfficiency: 0.8 },
      expected: { supplementaryBtuPerH: 13500, electricKW: 0.8143 * byHand(30000 / 0.7) },
      relativeTolerance: 5e-4,
      toleranceReason: "the saving is stated to 3 figures",
    },
    {
      // R = 12,000, half of capacity: PLF = 0.875.
      name: "mild hour at half load",
      source: derived,
      input: { ...cold, loadBtuPerH: 9600, distributionEfficiency: 0.8 },
      expected: { requiredBtuPerH: 12000, electricKW: 12000 / 2.4 / 0.875 / 3412.142 },
      ...figures,
    },
  ],
});
