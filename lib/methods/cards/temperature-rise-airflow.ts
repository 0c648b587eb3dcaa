import { z } from "zod";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { temperatureRiseAirflow } from "#lib/air/temperature-rise-airflow.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

export const temperatureRiseAirflowCard = defineMethod({
  id: "temperature-rise-airflow",
  title: "Fan flow by temperature rise",
  group: "air",
  summary: "Fan flow from the heat put into the air and how much warmer the air gets.",
  equation: "Q = q/(60·ρ·cp·ΔT), cp 0.24 Btu/(lb·°F)",
  validRange: "Temperature rise 2 to 150 °F after steady operation; q is the output, not the input of the burner.",
  leftOut: "Heat of the blower motor (1 to 3 %) and radiation onto the thermometer.",
  sources: [{ sourceId: "derived", locator: "energy balance" }, { sourceId: "practice" }],
  input: z.strictObject({
    outputBtuPerH: numberField({ unit: "Btu/h", title: "Heating output", above: 0, max: 500000 }),
    temperatureRiseF: numberField({ unit: "Δ°F", title: "Temperature rise", min: 2, max: 150 }),
    airDensityLbPerFt3: numberField({ unit: "lb/ft³", title: "Air density", min: 0.03, max: 0.12 }).optional(),
  }),
  output: z.strictObject({ flowCfm: numberField({ unit: "cfm", title: "Fan flow" }) }),
  defaults: {
    airDensityLbPerFt3: { ...STANDARD_AIR_DENSITY, reason: "Standard air; enter the density at altitude." },
  },
  compute: temperatureRiseAirflow,
  checks: [
    {
      name: "80,000 Btu/h burner at 80 %, 40 °F rise",
      source: { sourceId: "practice", locator: "worked example of the trade" },
      input: { outputBtuPerH: 64000, temperatureRiseF: 40 },
      expected: { flowCfm: 1481 },
      relativeTolerance: 5e-4,
      toleranceReason: "published to 4 figures",
    },
  ],
});
