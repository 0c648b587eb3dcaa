import { z } from "zod";
import { zoneTemperature } from "#lib/climate/zone-temperature.ts";
import { numberField } from "#lib/units/field.ts";
import { ductFields, ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "by hand" } as const;
const exact = { relativeTolerance: 1e-12, toleranceReason: "exact arithmetic" } as const;
const winter = { indoorTemperatureF: 70, outdoorTemperatureF: 20, unconditionedFactor: 0.5 };

export const zoneTemperatureCard = defineMethod({
  id: "zone-temperature",
  title: "Temperature of an unconditioned place",
  group: "climate",
  summary: "How warm the air around the ducts is, between the rooms and what surrounds the place.",
  equation: "t = t_in − b·(t_in − t_x), t_x = (1 − g)·t_out + g·t_ground",
  validRange: "b from 0 (as the house) to 1.2; a share of ground needs the ground's temperature.",
  leftOut: "Sun (see attic-temperature); heat stored from hour to hour.",
  sources: [{ sourceId: "iso-13789", locator: "form of the unconditioned-space factor" }],
  input: z.strictObject({
    indoorTemperatureF: ductFields.indoorTemperatureF,
    outdoorTemperatureF: ductFields.outdoorTemperatureF,
    unconditionedFactor: ratio("Unconditioned-space factor", { min: 0, max: 1.2 }),
    groundTemperatureF: numberField({
      unit: "°F",
      title: "Ground temperature",
      description: "Of the month: the yearly mean with a smaller, later swing.",
      min: -80,
      max: 200,
    }).optional(),
    groundShare: numberField({ unit: "share", title: "Share of ground around the place", min: 0, max: 1 }).optional(),
  }),
  output: z.strictObject({ zoneTemperatureF: numberField({ unit: "°F", title: "Temperature of the place" }) }),
  defaults: {
    groundShare: { value: 0, unit: "share", reason: "The place touches no ground.", source: { sourceId: "practice" } },
  },
  compute: zoneTemperature,
  checks: [
    { name: "halfway outdoors", source: derived, input: winter, expected: { zoneTemperatureF: 45 }, ...exact },
    {
      // t_x = 0.4·20 + 0.6·50 = 38
      name: "on the ground",
      source: derived,
      input: { ...winter, groundTemperatureF: 50, groundShare: 0.6 },
      expected: { zoneTemperatureF: 54 },
      ...exact,
    },
  ],
});
