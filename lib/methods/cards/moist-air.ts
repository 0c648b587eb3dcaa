import { z } from "zod";
import { moistAir } from "#lib/air/moist-air.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const psychrolib = {
  sourceId: "psychrolib",
  locator: "MoistAirEnthalpy, HumRatioFromRelHum, MoistAirDensity",
} as const;
const agreement = {
  relativeTolerance: 1e-4,
  toleranceReason: "the library's constants are rounded in another system of units",
} as const;

export const moistAirCard = defineMethod({
  id: "moist-air",
  title: "Moist air",
  group: "air",
  summary: "Enthalpy, humidity and density of air from its temperature and one measure of its humidity.",
  equation: "h = 0.24·t + W·(1061 + 0.444·t); W = 0.621945·p_w/(p − p_w); ρ = (1 + W)·p/(R·T·(1 + 1.6079·W))",
  validRange: "−40 to 140 °F, 50 to 110 kPa, up to saturation; exactly one of the two humidities.",
  leftOut: "The enhancement factor of a real gas, about 0.5 % of the humidity ratio.",
  sources: [{ sourceId: "ashrae-fundamentals-psychrometrics", locator: "ch. 1, form of" }, { sourceId: "psychrolib" }],
  input: z.strictObject({
    dryBulbF: numberField({ unit: "°F", title: "Air temperature", min: -40, max: 140 }),
    humidityRatio: numberField({
      unit: "ratio",
      title: "Humidity ratio",
      description: "Pounds of water per pound of dry air.",
      min: 0,
      max: 0.3,
    }).optional(),
    relativeHumidity: numberField({ unit: "share", title: "Relative humidity", min: 0, max: 1 }).optional(),
    pressurePa: numberField({ unit: "Pa", title: "Air pressure", min: 50000, max: 110000 }).optional(),
  }),
  output: z.strictObject({
    enthalpyBtuPerLb: numberField({ unit: "Btu/lb", title: "Enthalpy per pound of dry air" }),
    humidityRatio: numberField({ unit: "ratio", title: "Humidity ratio" }),
    relativeHumidity: numberField({ unit: "share", title: "Relative humidity" }),
    densityLbPerFt3: numberField({ unit: "lb/ft³", title: "Density of the moist air" }),
  }),
  defaults: {
    pressurePa: {
      value: 101325,
      unit: "Pa",
      reason: "Sea level when no pressure is given.",
      source: { sourceId: "iso-2533" },
    },
  },
  compute: moistAir,
  checks: [
    {
      name: "75 °F at 50 %",
      source: psychrolib,
      input: { dryBulbF: 75, relativeHumidity: 0.5 },
      expected: { humidityRatio: 0.0092357, enthalpyBtuPerLb: 28.1066, densityLbPerFt3: 0.0737787 },
      ...agreement,
    },
    {
      name: "95 °F at 40 %",
      source: psychrolib,
      input: { dryBulbF: 95, relativeHumidity: 0.4 },
      expected: { humidityRatio: 0.0141316, enthalpyBtuPerLb: 38.3898, densityLbPerFt3: 0.0709133 },
      ...agreement,
    },
    {
      name: "20 °F at 80 %",
      source: psychrolib,
      input: { dryBulbF: 20, relativeHumidity: 0.8 },
      expected: { humidityRatio: 0.00171409, enthalpyBtuPerLb: 6.63387, densityLbPerFt3: 0.0826098 },
      ...agreement,
    },
  ],
});
