import { z } from "zod";
import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { deltaQModel } from "#lib/measure/delta-q-model.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "the equation, worked apart" } as const;
const leaks = { supplyLeakageCfm: 120, returnLeakageCfm: 80, supplyPressurePa: 40, returnPressurePa: 60 };

export const deltaQModelCard = defineMethod({
  id: "delta-q-model",
  title: "What a Delta-Q test would read",
  group: "measure",
  summary: "Change of the house's flow at each envelope pressure when the air handler starts.",
  equation:
    "ΔQ = Qs·[s(1 + ΔP/ΔPs) − s(ΔP/ΔPs)] − Qr·[s(1 − ΔP/ΔPr) + s(ΔP/ΔPr)], s(z) = sign(z)·|z|^n; ΔP house minus outside, Q into the house, on minus off",
  validRange: "One pressure for each side's leaks; envelope pressures within 200 Pa.",
  leftOut: "Leaks of one side at different pressures, and wind.",
  sources: [{ sourceId: "astm-e1554", locator: "method A, form of" }, derived],
  input: z.strictObject({
    envelopePressuresPa: z
      .array(numberField({ unit: "Pa", title: "Envelope pressure", min: -200, max: 200 }))
      .min(1)
      .max(200)
      .meta({ title: "Envelope pressures" }),
    supplyLeakageCfm: numberField({ unit: "cfm", title: "Supply leakage to outside", min: 0, max: 20000 }),
    returnLeakageCfm: numberField({ unit: "cfm", title: "Return leakage to outside", min: 0, max: 20000 }),
    supplyPressurePa: numberField({ unit: "Pa", title: "Pressure of the supply leaks", above: 0, max: 1000 }),
    returnPressurePa: numberField({ unit: "Pa", title: "Pressure of the return leaks, its size", above: 0, max: 1000 }),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
  }),
  output: z.strictObject({
    deltaFlowsCfm: z.array(numberField({ unit: "cfm", title: "Change of flow" })).meta({ title: "Changes of flow" }),
  }),
  defaults: { exponent: DUCT_LEAK_EXPONENT },
  compute: deltaQModel,
  checks: [
    {
      name: "120 and 80 cfm at 40 and 60 Pa",
      source: derived,
      input: { envelopePressuresPa: [-50, -25, 0, 25, 50], ...leaks },
      expected: {
        "deltaFlowsCfm.0": 41.579,
        "deltaFlowsCfm.1": 105.849,
        "deltaFlowsCfm.2": 40,
        "deltaFlowsCfm.3": -35.138,
        "deltaFlowsCfm.4": -40.999,
      },
      relativeTolerance: 2e-5,
      toleranceReason: "stated to 5 figures",
    },
    {
      name: "the same near the crossing, at 5 Pa",
      source: derived,
      input: { envelopePressuresPa: [5], ...leaks },
      expected: { "deltaFlowsCfm.0": 0.383 },
      relativeTolerance: 0.0015,
      toleranceReason: "stated to 3 figures",
    },
  ],
});
