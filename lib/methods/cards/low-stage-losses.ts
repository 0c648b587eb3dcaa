import { z } from "zod";
import { lowStageLosses } from "#lib/distribution/low-stage.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, ratio, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "fan and orifice laws, worked by hand" } as const;
const input = { fanFlowCfm: 1000, leakageCfm: 100, conductanceBtuPerHF: 100, flowRatio: 0.7 };

export const lowStageLossesCard = defineMethod({
  id: "low-stage-losses",
  title: "Ducts at a low stage",
  group: "distribution",
  summary:
    "Equipment that runs at a low stage moves less air: it leaks a little less of it and loses more through the walls of the ducts.",
  equation:
    "leak share = (Q_leak/Q)·φ^(2n − 1); conduction factor = exp(−UA/(φ·60·ρ·cp·Q)); season 1/η = f/η_low + (1 − f)/η_high",
  validRange: "Low flow over high flow 0.2 to 1; 1 gives the high stage.",
  leftOut: "The time between stages, fewer starts, leaks whose exponent is not 0.6.",
  sources: [derived, { sourceId: "ashrae-152", locator: "form of" }, { sourceId: "lbl-duct-sensitivity" }],
  input: z.strictObject({
    fanFlowCfm: numberField({ unit: "cfm", title: "Fan flow at the high stage", above: 0, max: 10000 }),
    leakageCfm: numberField({ unit: "cfm", title: "Leakage of one side at the high stage", min: 0, max: 10000 }),
    conductanceBtuPerHF: numberField({ unit: "Btu/(h·°F)", title: "Area over R of that side", min: 0, max: 5000 }),
    flowRatio: ratio("Low flow over high flow", { min: 0.2, max: 1 }),
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({
    highLeakShare: numberField({ unit: "share", title: "Leak over the flow, high stage" }),
    lowLeakShare: numberField({ unit: "share", title: "Leak over the flow, low stage" }),
    highConductionFactor: ratio("Temperature difference left at the end, high stage"),
    lowConductionFactor: ratio("Temperature difference left at the end, low stage"),
  }),
  defaults: { airDensityLbPerFt3: standardDensityDefault },
  compute: lowStageLosses,
  checks: [
    {
      // 0.1·0.7^0.2; exp(−100/1080) and exp(−100/756)
      name: "seven tenths of the air",
      source: derived,
      input,
      expected: {
        highLeakShare: 0.1,
        lowLeakShare: 0.093115,
        highConductionFactor: 0.9115648,
        lowConductionFactor: 0.8760999,
      },
      relativeTolerance: 1e-6,
      toleranceReason: "stated to 7 figures",
    },
    {
      name: "all of the air: the high stage",
      source: derived,
      input: { ...input, flowRatio: 1 },
      expected: {
        highLeakShare: 0.1,
        lowLeakShare: 0.1,
        highConductionFactor: 0.9115648,
        lowConductionFactor: 0.9115648,
      },
      relativeTolerance: 1e-6,
      toleranceReason: "stated to 7 figures",
    },
  ],
});
