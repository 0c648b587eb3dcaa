import { z } from "zod";
import { airDensity } from "#lib/air/air-density.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

export const airDensityCard = defineMethod({
  id: "air-density",
  title: "Air density",
  group: "air",
  summary: "Density of dry air at a temperature and an elevation or a station pressure.",
  equation: "ρ = p / (R·T), p = 101325·(1 − 2.25577·10⁻⁵·z)^5.25588",
  validRange: "−80 to 1,000 °F, −1,500 to 20,000 ft; a station pressure that the elevation cannot explain is refused.",
  leftOut: "Moisture: about 1 % at 80 °F and humid.",
  sources: [{ sourceId: "iso-2533" }],
  input: z.strictObject({
    temperatureF: numberField({ unit: "°F", title: "Air temperature", min: -80, max: 1000 }),
    elevationFt: numberField({ unit: "ft", title: "Elevation", min: -1500, max: 20000 }).optional(),
    stationPressureInHg: numberField({
      unit: "inHg",
      title: "Station pressure",
      description: "At the place, not reduced to sea level.",
      min: 10,
      max: 34,
    }).optional(),
  }),
  output: z.strictObject({
    densityLbPerFt3: numberField({ unit: "lb/ft³", title: "Air density" }),
    pressurePa: numberField({ unit: "Pa", title: "Air pressure" }),
  }),
  defaults: {
    elevationFt: {
      value: 0,
      unit: "ft",
      reason: "Sea level when no elevation is given.",
      source: { sourceId: "iso-2533" },
    },
  },
  compute: airDensity,
  checks: [
    {
      name: "68 °F at sea level",
      source: { sourceId: "iso-2533", locator: "ideal gas at 101,325 Pa" },
      input: { temperatureF: 68 },
      expected: { densityLbPerFt3: 0.07517 },
      relativeTolerance: 1e-4,
      toleranceReason: "published to 4 figures",
    },
    {
      name: "32 °F at sea level",
      source: { sourceId: "iso-2533" },
      input: { temperatureF: 32 },
      expected: { densityLbPerFt3: 0.08067 },
      relativeTolerance: 1e-4,
      toleranceReason: "published to 4 figures",
    },
    {
      name: "95 °F at sea level",
      source: { sourceId: "iso-2533" },
      input: { temperatureF: 95 },
      expected: { densityLbPerFt3: 0.07151 },
      relativeTolerance: 1e-4,
      toleranceReason: "published to 4 figures",
    },
  ],
});
