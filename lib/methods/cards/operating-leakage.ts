import { z } from "zod";
import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { OPERATING_PRESSURE_FRACTIONS, operatingLeakage } from "#lib/distribution/operating-leakage.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const { unknown, cabinet, boot } = OPERATING_PRESSURE_FRACTIONS;
const derived = { sourceId: "derived", locator: "power law, worked by hand" } as const;

export const operatingLeakageCard = defineMethod({
  id: "operating-leakage",
  title: "Leakage while running",
  group: "distribution",
  summary: "What a leak passes while the system runs, from its size at 25 Pa.",
  equation: "Q = CFM25·(P/25)^n, P = |plenum static pressure|·fraction",
  validRange: "Plenum static pressure up to 500 Pa; fraction 1 cabinet and plenum, 0.7 trunk, 0.5 take-off, 0.1 boot.",
  leftOut: "Dampers that move, and the change of static pressure with the leak itself.",
  sources: [derived, unknown.source],
  input: z.strictObject({
    leakageCfm25: numberField({ unit: "cfm", title: "Leakage at 25 Pa", min: 0, max: 20000 }),
    plenumStaticPa: numberField({ unit: "Pa", title: "Plenum static pressure", min: -500, max: 500 }),
    pressureFraction: numberField({
      unit: "ratio",
      title: "Pressure at the leak over the plenum's",
      min: 0,
      max: 1.5,
    }).optional(),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
  }),
  output: z.strictObject({ leakageCfm: numberField({ unit: "cfm", title: "Leakage while running" }) }),
  defaults: {
    pressureFraction: {
      value: unknown.value,
      unit: unknown.unit,
      reason: "Half the plenum static pressure when nothing is known of the place.",
      source: unknown.source,
    },
    exponent: DUCT_LEAK_EXPONENT,
  },
  compute: operatingLeakage,
  checks: [
    {
      name: "60 CFM25 in a cabinet at 120 Pa",
      source: derived,
      input: { leakageCfm25: 60, plenumStaticPa: 120, pressureFraction: cabinet.value },
      expected: { leakageCfm: 154 },
      relativeTolerance: 0.002,
      toleranceReason: "stated to 3 figures",
    },
    {
      name: "the same leak at a boot at 8 Pa",
      source: derived,
      input: { leakageCfm25: 60, plenumStaticPa: 80, pressureFraction: boot.value, exponent: DUCT_LEAK_EXPONENT.value },
      expected: { leakageCfm: 30 },
      relativeTolerance: 0.015,
      toleranceReason: "stated to 2 figures",
    },
  ],
});
