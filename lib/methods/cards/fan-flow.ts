import { z } from "zod";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { fanFlow } from "#lib/measure/fan-flow.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const density = (title: string) => numberField({ unit: "lb/ft³", title, min: 0.03, max: 0.12 });
const standardAir = { ...STANDARD_AIR_DENSITY, reason: "Standard air on both sides: no correction." };
const derived = { sourceId: "derived", locator: "the equation, worked by hand" } as const;

export const fanFlowCard = defineMethod({
  id: "fan-flow",
  title: "Flow of a test fan",
  group: "measure",
  summary: "Flow that a calibrated test fan moves, from the pressure its flow tap shows.",
  equation: "Q = C·P^n·√(ρ_cal/ρ)",
  validRange: "Inside the span of the calibration of the flow restrictor and direction; exponent 0.4 to 0.7.",
  leftOut: "Humidity of the air, 1 % at most.",
  sources: [{ sourceId: "astm-e779", locator: "form of" }],
  input: z.strictObject({
    coefficient: z
      .number()
      .gt(0)
      .max(5000)
      .meta({ unit: "cfm/Pa^n", title: "Coefficient", description: "C, from the user's own calibration papers." }),
    exponent: numberField({ unit: "ratio", title: "Exponent of the calibration", min: 0.4, max: 0.7 }),
    fanPressurePa: numberField({ unit: "Pa", title: "Fan pressure", above: 0, max: 1000 }),
    fanAirDensityLbPerFt3: density("Density of the air in the fan").optional(),
    calibrationDensityLbPerFt3: density("Density at the calibration").optional(),
  }),
  output: z.strictObject({ flowCfm: numberField({ unit: "cfm", title: "Fan flow" }) }),
  defaults: { fanAirDensityLbPerFt3: standardAir, calibrationDensityLbPerFt3: standardAir },
  compute: fanFlow,
  checks: [
    {
      name: "invented fan, 25·100^0.5",
      source: derived,
      input: { coefficient: 25, exponent: 0.5, fanPressurePa: 100 },
      expected: { flowCfm: 250 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact arithmetic",
    },
    {
      name: "the same in air of 0.048 lb/ft³, so 25 % more flow",
      source: derived,
      input: { coefficient: 25, exponent: 0.5, fanPressurePa: 100, fanAirDensityLbPerFt3: 0.048 },
      expected: { flowCfm: 312.5 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact: √(0.075/0.048) = 1.25",
    },
  ],
});
