import { z } from "zod";
import { airflowAfterSealing, FAN_SLOPES } from "#lib/distribution/airflow-after-sealing.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";
import { notesField } from "../notes-field.ts";

const cfm = (title: string) => numberField({ unit: "cfm", title });
const pascals = (title: string) => numberField({ unit: "Pa", title });
const leak = (title: string, description: string) =>
  numberField({ unit: "cfm", title, description, min: 0, max: 8000 });
const fixedSpeed = FAN_SLOPES["fixed-speed"];

const input = {
  fanFlowCfm: 1200,
  supplyStaticPa: 60,
  returnStaticPa: 70,
  supplyLeakageBeforeCfm: 120,
  supplyLeakageAfterCfm: 30,
  returnLeakageBeforeCfm: 120,
  returnLeakageAfterCfm: 30,
};
const derived = { sourceId: "derived", locator: "duct and fan curves solved together" } as const;

export const airflowAfterSealingCard = defineMethod({
  id: "airflow-after-sealing",
  title: "Airflow after sealing",
  group: "distribution",
  summary: "Fan flow, static pressure and delivered air once the leaks are sealed.",
  equation: "each side Q = C·√P + L·(P/P₀)^0.6; fan Q = Q₀ − slope·(TESP − TESP₀)",
  validRange: "Leaks, as flow at the pressures before sealing, below the fan flow.",
  leftOut: "The coil's and filter's own pressure, which ride along with the return side.",
  sources: [derived, fixedSpeed.source],
  input: z.strictObject({
    fanFlowCfm: numberField({ unit: "cfm", title: "Fan flow", above: 0, max: 8000 }),
    supplyStaticPa: numberField({ unit: "Pa", title: "Supply static pressure", above: 0, max: 500 }),
    returnStaticPa: numberField({
      unit: "Pa",
      title: "Return static pressure",
      description: "Size only, without the minus sign.",
      above: 0,
      max: 500,
    }),
    supplyLeakageBeforeCfm: leak("Supply leakage before", "While running."),
    supplyLeakageAfterCfm: leak("Supply leakage after", "While running, at the pressure before sealing."),
    returnLeakageBeforeCfm: leak("Return leakage before", "While running."),
    returnLeakageAfterCfm: leak("Return leakage after", "While running, at the pressure before sealing."),
    fanSlopeCfmPerPa: numberField({
      unit: "cfm/Pa",
      title: "Slope of the fan",
      description: "0 for a motor that holds its flow.",
      min: 0,
      max: 50,
    }).optional(),
    nameplateStaticPa: numberField({
      unit: "Pa",
      title: "Nameplate external static pressure",
      above: 0,
      max: 500,
    }).optional(),
  }),
  output: z.strictObject({
    fanFlowCfm: cfm("Fan flow after"),
    externalStaticPa: pascals("External static pressure after"),
    supplyStaticPa: pascals("Supply static pressure after"),
    returnStaticPa: pascals("Return static pressure after"),
    supplyLeakageCfm: cfm("Supply leakage after, at the new pressure"),
    returnLeakageCfm: cfm("Return leakage after, at the new pressure"),
    deliveredBeforeCfm: cfm("Delivered to the rooms before"),
    deliveredAfterCfm: cfm("Delivered to the rooms after"),
    notes: notesField,
  }),
  defaults: {
    fanSlopeCfmPerPa: {
      value: fixedSpeed.value,
      unit: fixedSpeed.unit,
      reason: "A fixed-speed blower; enter 0 for a motor that holds its flow.",
      source: fixedSpeed.source,
    },
  },
  compute: airflowAfterSealing,
  checks: [
    {
      name: "fixed-speed blower, three quarters of the leaks sealed",
      source: derived,
      input,
      expected: { fanFlowCfm: 1171, externalStaticPa: 144.6, deliveredBeforeCfm: 1080, deliveredAfterCfm: 1139 },
      relativeTolerance: 5e-4,
      toleranceReason: "stated to 4 figures",
    },
    {
      name: "motor that holds its flow",
      source: derived,
      input: { ...input, fanSlopeCfmPerPa: 0 },
      expected: { fanFlowCfm: 1200, externalStaticPa: 151.8 },
      relativeTolerance: 5e-4,
      toleranceReason: "stated to 4 figures",
    },
  ],
});
