import { z } from "zod";
import { FROST, heatPumpPerformance } from "#lib/distribution/heat-pump-performance.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const procedure = { sourceId: "doe-appendix-m", locator: "form of, worked by hand" } as const;
const capacity = (title: string) => numberField({ unit: "Btu/h", title, above: 0, max: 500000 });
const ratings = { capacityAt47BtuPerH: 36000, capacityAt17BtuPerH: 21600, copAt47Ratio: 3.3, copAt17Ratio: 2.2 };
const byHand = { relativeTolerance: 1e-6, toleranceReason: "straight lines by hand to 7 figures" } as const;
const frost = "What the procedure takes for frost where it was not tested, from memory.";

export const heatPumpPerformanceCard = defineMethod({
  id: "heat-pump-performance",
  title: "Heat pump by outdoor temperature",
  group: "distribution",
  summary: "Output and COP of a heat pump between and beyond its two ratings, with what frost takes of both.",
  equation:
    "H and P straight lines through 17 and 47 °F; with frost through 35 °F at H·0.90, P·0.985; strips S in defrost: (H + S)/(P + S)",
  validRange: "−40 to 65 °F; output never below 0.2 of that at 47 °F, COP never below 1.",
  leftOut: "Lockouts, humidity, a compressor that changes its speed.",
  sources: [procedure],
  input: z.strictObject({
    outdoorTemperatureF: numberField({ unit: "°F", title: "Outdoor temperature", min: -60, max: 90 }),
    capacityAt47BtuPerH: capacity("Capacity at 47 °F"),
    capacityAt17BtuPerH: capacity("Capacity at 17 °F"),
    copAt47Ratio: ratio("COP at 47 °F", { above: 0, max: 10 }),
    copAt17Ratio: ratio("COP at 17 °F", { above: 0, max: 10 }),
    frostCapacityFactor: ratio("Capacity that frost leaves at 35 °F", { min: 0.5, max: 1 }).optional(),
    frostPowerFactor: ratio("Power that frost leaves at 35 °F", { min: 0.5, max: 1 }).optional(),
    defrostHeatRatio: ratio("Strip heat during defrost at 35 °F, over the capacity at 47 °F", {
      min: 0,
      max: 0.3,
    }).optional(),
  }),
  output: z.strictObject({
    capacityBtuPerH: numberField({ unit: "Btu/h", title: "Capacity" }),
    cop: z.number().meta({ unit: "ratio", title: "COP" }),
  }),
  defaults: {
    frostCapacityFactor: { ...FROST.capacityFactor, reason: frost },
    frostPowerFactor: { ...FROST.powerFactor, reason: frost },
    defrostHeatRatio: { value: 0, unit: "ratio", reason: "No strips run during defrost.", source: procedure },
  },
  compute: heatPumpPerformance,
  checks: [
    {
      name: "at its ratings it is as rated",
      source: procedure,
      input: { ...ratings, outdoorTemperatureF: 47 },
      expected: { capacityBtuPerH: 36000, cop: 3.3 },
      ...byHand,
    },
    {
      // 0.9·(21,600 + 14,400·18/30); power 0.985·(21,600/2.2 + (36,000/3.3 − 21,600/2.2)·18/30)
      name: "at 35 °F with frost",
      source: procedure,
      input: { ...ratings, outdoorTemperatureF: 35 },
      expected: { capacityBtuPerH: 27216, cop: 2.6383249 },
      ...byHand,
    },
    {
      // Both lines followed to 5 °F
      name: "at 5 °F, below both ratings",
      source: procedure,
      input: { ...ratings, outdoorTemperatureF: 5 },
      expected: { capacityBtuPerH: 15840, cop: 1.6883721 },
      ...byHand,
    },
  ],
});
