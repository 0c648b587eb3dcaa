import { z } from "zod";
import { CYCLING_LOSS, distributionEfficiency } from "#lib/distribution/distribution-efficiency.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const source = { sourceId: "practice", locator: "the usual starting point" } as const;
const derived = { sourceId: "derived", locator: "by hand" } as const;
const exact = { relativeTolerance: 1e-12, toleranceReason: "exact arithmetic" } as const;

export const distributionEfficiencyCard = defineMethod({
  id: "distribution-efficiency",
  title: "Distribution efficiency",
  group: "distribution",
  summary: "What the rooms get over what perfect ducts would need, from its factors.",
  equation: "DE × equipment × load × (1 − cycling loss·outside area share·(1 − regain))",
  validRange: "Shares and regain from 0 to 1. All ducts inside: 1.",
  leftOut: "Ducts that exchange air while idle.",
  sources: [{ sourceId: "ashrae-152", locator: "form of" }],
  input: z.strictObject({
    deliveryEffectiveness: ratio("Delivery effectiveness, with regain", { min: -1000, max: 10 }),
    equipmentFactor: ratio("Equipment factor, from its airflow", { min: 0.2, max: 1.5 }).optional(),
    loadFactor: ratio("Load factor", { min: -1000, max: 1000 }).optional(),
    cyclingLoss: ratio("Cycling loss", { min: 0, max: 0.3 }).optional(),
    outsideAreaShare: numberField({
      unit: "share",
      title: "Share of the duct surface outside the rooms",
      min: 0,
      max: 1,
    }).optional(),
    regain: ratio("Regain", { min: 0, max: 1 }).optional(),
  }),
  output: z.strictObject({ distributionEfficiency: ratio("Distribution efficiency") }),
  defaults: {
    equipmentFactor: { value: 1, unit: "ratio", reason: "The equipment runs at its rated airflow.", source },
    loadFactor: { value: 1, unit: "ratio", reason: "The blower draws in no more outdoor air.", source },
    cyclingLoss: {
      value: CYCLING_LOSS.sheetMetal.value,
      unit: "ratio",
      reason: "Sheet metal, which stores the most heat; flexible duct or board is 0.02.",
      source: CYCLING_LOSS.sheetMetal.source,
    },
    outsideAreaShare: { value: 1, unit: "share", reason: "All ducts lie outside the rooms.", source },
    regain: { value: 0, unit: "ratio", reason: "Nothing comes back.", source },
  },
  compute: distributionEfficiency,
  checks: [
    {
      // 0.75·0.98·0.97·(1 − 0.05·0.65·0.9)
      name: "all factors",
      source: derived,
      input: {
        deliveryEffectiveness: 0.75,
        equipmentFactor: 0.98,
        loadFactor: 0.97,
        cyclingLoss: 0.05,
        outsideAreaShare: 0.65,
        regain: 0.1,
      },
      expected: { distributionEfficiency: 0.6920962125 },
      ...exact,
    },
    {
      name: "the usual factors",
      source: derived,
      input: { deliveryEffectiveness: 0.8 },
      expected: { distributionEfficiency: 0.76 },
      ...exact,
    },
    {
      name: "all ducts inside",
      source: derived,
      input: { deliveryEffectiveness: 1, outsideAreaShare: 0, regain: 1 },
      expected: { distributionEfficiency: 1 },
      ...exact,
    },
  ],
});
