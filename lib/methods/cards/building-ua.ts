import { z } from "zod";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { buildingUa } from "#lib/loads/building-ua.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, standardDensityDefault } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "sum of surfaces and air, worked by hand" } as const;
const byHand = { relativeTolerance: 1e-3, toleranceReason: "by hand to four figures" } as const;
const ua = (title: string) => numberField({ unit: "Btu/(h·°F)", title });
const house = { conditionedFloorAreaFt2: 2000, storeysCount: 1, builtYear: 1965 };

export const buildingUaCard = defineMethod({
  id: "building-ua",
  title: "Heat loss coefficient of a house",
  group: "loads",
  summary: "What a house loses for each degree between inside and outside, part by part or by its age.",
  equation: "UA = Σ A·U + 60·ρ·cp·Q_nat",
  validRange: "150 to 30,000 ft², 1 to 4 stories. By age it is off by up to 40 %.",
  leftOut: "Shape, orientation, shading, heat to the ground: a measured or billed value goes before.",
  sources: [derived, { sourceId: "practice", locator: "U-values and tightness by age, from memory" }],
  input: z.strictObject({
    conditionedFloorAreaFt2: numberField({ unit: "ft²", title: "Conditioned floor area", min: 150, max: 30000 }),
    storeysCount: numberField({ unit: "count", title: "Stories", min: 1, max: 4 }),
    builtYear: numberField({ unit: "yr", title: "Year built", min: 1700, max: 2100 }),
    envelopeLeakageCfm50: numberField({
      unit: "cfm",
      title: "House air leakage at 50 Pa",
      min: 0,
      max: 30000,
    }).optional(),
    volumeFt3: numberField({ unit: "ft³", title: "Volume", above: 0, max: 1e6 }).optional(),
    naturalInfiltrationCfm: numberField({ unit: "cfm", title: "Mean infiltration", min: 0, max: 5000 }).optional(),
    parts: z
      .array(
        z.strictObject({
          areaFt2: numberField({ unit: "ft²", title: "Area", above: 0, max: 20000 }),
          partUValue: numberField({ unit: "Btu/(h·ft²·°F)", title: "U-value", above: 0, max: 2 }),
        }),
      )
      .max(20)
      .optional()
      .meta({ title: "Parts of the envelope" }),
    airDensityLbPerFt3: ductFields.airDensityLbPerFt3,
  }),
  output: z.strictObject({
    uaBtuPerHF: ua("Heat loss coefficient"),
    transmissionBtuPerHF: ua("Of it, through surfaces"),
    infiltrationBtuPerHF: ua("Of it, by air"),
    infiltrationCfm: numberField({ unit: "cfm", title: "Mean infiltration" }),
    envelopeLeakageCfm50: numberField({ unit: "cfm", title: "House air leakage at 50 Pa" }),
  }),
  defaults: { airDensityLbPerFt3: standardDensityDefault },
  compute: ({ airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value, ...input }) => {
    const { tightness: _, source: __, ...found } = buildingUa({ ...input, airDensityLbPerFt3 });
    return found;
  },
  checks: [
    {
      // 1251.9·0.10 + 2000·0.05 + 2000·0.09 + 300·0.70; 166.67 cfm at 1.08
      name: "a plain house of 1965",
      source: derived,
      input: house,
      expected: {
        uaBtuPerHF: 795.19,
        transmissionBtuPerHF: 615.19,
        infiltrationBtuPerHF: 180,
        infiltrationCfm: 166.67,
      },
      ...byHand,
    },
    {
      // 1200·0.08 + 2000·0.03 + 2000·0.05 + 250·0.4 + 1.08·100
      name: "its parts told, and 100 cfm",
      source: derived,
      input: {
        ...house,
        naturalInfiltrationCfm: 100,
        parts: [
          { areaFt2: 1200, partUValue: 0.08 },
          { areaFt2: 2000, partUValue: 0.03 },
          { areaFt2: 2000, partUValue: 0.05 },
          { areaFt2: 250, partUValue: 0.4 },
        ],
      },
      expected: { uaBtuPerHF: 464, transmissionBtuPerHF: 356, infiltrationBtuPerHF: 108 },
      ...byHand,
    },
  ],
});
