import { z } from "zod";
import { matchedPressureAirflow } from "#lib/air/matched-pressure-airflow.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "square root of the pressures, worked by hand" } as const;

export const matchedPressureAirflowCard = defineMethod({
  id: "matched-pressure-airflow",
  title: "Fan flow by matched pressure",
  group: "air",
  summary: "Fan flow in normal operation from the flow through a calibrated fan or flow device in its place.",
  equation: "Q = Q_device·√(P_normal/P_device)",
  validRange: "The two plenum pressures within a factor of 4 of each other.",
  leftOut: "Leaks between the device and the blower.",
  sources: [{ sourceId: "practice", locator: "flow device at the filter or a calibrated fan at the return" }, derived],
  input: z.strictObject({
    deviceFlowCfm: numberField({ unit: "cfm", title: "Flow through the device", above: 0, max: 8000 }),
    normalPressurePa: numberField({ unit: "Pa", title: "Normal plenum pressure", above: 0, max: 500 }),
    devicePressurePa: numberField({ unit: "Pa", title: "Plenum pressure with the device", above: 0, max: 500 }),
  }),
  output: z.strictObject({ flowCfm: numberField({ unit: "cfm", title: "Fan flow" }) }),
  defaults: {},
  compute: matchedPressureAirflow,
  checks: [
    {
      name: "49 Pa in operation, 36 Pa with the device",
      source: derived,
      input: { deviceFlowCfm: 900, normalPressurePa: 49, devicePressurePa: 36 },
      expected: { flowCfm: 1050 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact: 900 · 7/6",
    },
  ],
});
