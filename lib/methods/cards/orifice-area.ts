import { z } from "zod";
import { orificeArea } from "#lib/air/orifice-area.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const hpxml = { sourceId: "hpxml-docs", locator: "leakage area" } as const;

export const orificeAreaCard = defineMethod({
  id: "orifice-area",
  title: "Area of one equal hole",
  group: "air",
  summary: "The sharp-edged hole that would pass the same flow: a picture of the size of a leak.",
  equation: "A = Q/(1.06·√P)",
  validRange: "1 to 250 Pa; a discharge coefficient of about 0.6.",
  leftOut: "The shape of real gaps. It is not the equivalent leakage area at 4 Pa.",
  sources: [hpxml],
  input: z.strictObject({
    leakageCfm: numberField({ unit: "cfm", title: "Leakage", min: 0, max: 50000 }),
    pressurePa: numberField({ unit: "Pa", title: "Pressure", min: 1, max: 250 }),
  }),
  output: z.strictObject({ areaIn2: numberField({ unit: "in²", title: "Area" }) }),
  defaults: {},
  compute: orificeArea,
  checks: [
    {
      name: "120 cfm at 25 Pa",
      source: hpxml,
      input: { leakageCfm: 120, pressurePa: 25 },
      expected: { areaIn2: 22.64 },
      relativeTolerance: 3e-4,
      toleranceReason: "published to 4 figures",
    },
  ],
});
