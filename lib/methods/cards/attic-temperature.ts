import { z } from "zod";
import { ATTIC_DEFAULTS, atticTemperature } from "#lib/climate/attic-temperature.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const { roofAbsorptance, ceilingRValue, roofUValue, ventilationCfmPerFt2 } = ATTIC_DEFAULTS;
const practice = { sourceId: "practice" } as const;

export const atticTemperatureCard = defineMethod({
  id: "attic-temperature",
  title: "Attic temperature",
  group: "climate",
  summary: "How hot or cold a vented attic gets, from the house below, the roof in sun or night sky, and its vents.",
  equation: "t_sa = t_out + α·I/3.0 − sky; t = (t_in/R + U·t_sa + 1.08·v·t_out)/(1/R + U + 1.08·v)",
  validRange: "Hours or longer; a ceiling with some resistance.",
  leftOut: "Heat stored in the roof, wind, and what the ducts leak into the attic.",
  sources: [
    { sourceId: "derived", locator: "steady balance over 1 ft² of attic" },
    { sourceId: "practice", locator: "defaults" },
  ],
  input: z.strictObject({
    outdoorTemperatureF: numberField({ unit: "°F", title: "Outdoor temperature", min: -80, max: 150 }),
    indoorTemperatureF: numberField({ unit: "°F", title: "Indoor temperature", min: -80, max: 150 }),
    solarBtuPerHFt2: numberField({
      unit: "Btu/(h·ft²)",
      title: "Sun on the roof",
      description: "1 W/m² is 0.317 Btu/(h·ft²).",
      min: 0,
      max: 450,
    }).optional(),
    roofAbsorptance: numberField({
      unit: "share",
      title: "Roof absorptance",
      description: "Dark roof 0.85, light roof 0.55.",
      min: 0,
      max: 1,
    }).optional(),
    ceilingRValue: numberField({ unit: "h·ft²·°F/Btu", title: "Ceiling insulation", above: 0, max: 1000 }).optional(),
    roofUValue: numberField({ unit: "Btu/(h·ft²·°F)", title: "Roof transmittance", min: 0.001, max: 5 }).optional(),
    ventilationCfmPerFt2: numberField({ unit: "cfm/ft²", title: "Attic ventilation", min: 0, max: 10 }).optional(),
    skyCoolingF: numberField({
      unit: "Δ°F",
      title: "Cooling by the night sky",
      description: "About 7 °F on a clear night, 0 by day and under cloud.",
      min: 0,
      max: 30,
    }).optional(),
  }),
  output: z.strictObject({ atticTemperatureF: numberField({ unit: "°F", title: "Attic temperature" }) }),
  defaults: {
    solarBtuPerHFt2: { value: 0, unit: "Btu/(h·ft²)", reason: "No sun was given.", source: practice },
    roofAbsorptance: { ...roofAbsorptance, reason: "Most roofs are dark." },
    ceilingRValue: { ...ceilingRValue, reason: "Common where nobody measured it." },
    roofUValue: { ...roofUValue, reason: "Shingles on boards without insulation." },
    ventilationCfmPerFt2: { ...ventilationCfmPerFt2, reason: "Ordinary soffit and ridge vents." },
    skyCoolingF: { value: 0, unit: "Δ°F", reason: "Day, or a cloudy night.", source: practice },
  },
  compute: atticTemperature,
  checks: [
    {
      name: "hot sunny afternoon",
      source: { sourceId: "derived", locator: "balance by hand" },
      input: { outdoorTemperatureF: 95, indoorTemperatureF: 75, solarBtuPerHFt2: 250 },
      expected: { atticTemperatureF: 143.09 },
      relativeTolerance: 5e-5,
      toleranceReason: "stated to 5 figures",
    },
  ],
});
