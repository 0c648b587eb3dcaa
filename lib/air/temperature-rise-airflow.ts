import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Cfm, FahrenheitDifference, PoundsPerCubicFoot } from "#lib/units/quantity.ts";
import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "./standard-air.ts";

/**
 * Fan flow from the heat put into the air and how much warmer the air gets.
 * Q = q/(60 ρ cp ΔT), cp 0.24 Btu/(lb °F). Valid for ΔT of 2 to 150 °F, steady operation. Source: derived (energy
 * balance); worked example in the trade: practice. Left out: heat from the blower motor (1 to 3 % of a furnace's
 * output) and radiation onto the thermometer, which makes the flow look too small.
 * @throws InputProblem when output, temperature rise or density are not possible.
 */
export function temperatureRiseAirflow({
  outputBtuPerH,
  temperatureRiseF,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
}: {
  outputBtuPerH: BtuPerHour;
  temperatureRiseF: FahrenheitDifference;
  airDensityLbPerFt3?: PoundsPerCubicFoot;
}): { flowCfm: Cfm } {
  requireAbove({ field: "outputBtuPerH", label: "Heating output", value: outputBtuPerH, unit: "Btu/h" });
  requireBetween({
    field: "temperatureRiseF",
    label: "Temperature rise",
    value: temperatureRiseF,
    unit: "°F",
    low: 2,
    high: 150,
    fix: "Enter supply minus return air temperature after ten minutes of steady operation.",
  });
  requireAbove({ field: "airDensityLbPerFt3", label: "Air density", value: airDensityLbPerFt3, unit: "lb/ft³" });
  return {
    flowCfm: outputBtuPerH / (MINUTES_PER_HOUR * airDensityLbPerFt3 * AIR_SPECIFIC_HEAT.value * temperatureRiseF),
  };
}
