import { refuse } from "#lib/errors/input-problem.ts";
import {
  celsiusFromFahrenheit,
  KELVIN_AT_0_C,
  LB_PER_FT3_PER_KG_PER_M3,
  METERS_PER_FOOT,
  PASCALS_PER_IN_HG,
} from "#lib/units/conversions.ts";
import type { Fahrenheit, Feet, Pascals, PoundsPerCubicFoot } from "#lib/units/quantity.ts";

/** Specific gas constant of dry air, J/(kg K). Source: ISO 2533. */
const DRY_AIR_J_PER_KG_K = 287.055;

/** Weather moves the pressure at a place by no more than this share; a larger gap means a reduced reading. */
const WEATHER_PRESSURE_SHARE = 0.06;

/**
 * Pressure of the standard atmosphere at an elevation.
 * p = 101325 (1 − 2.25577e-5 z)^5.25588, z in m. Valid −1,500 to 20,000 ft. Source: iso-2533.
 * @throws InputProblem when the elevation is outside the range.
 */
export function standardPressure(elevationFt: Feet): Pascals {
  if (!(elevationFt >= -1500 && elevationFt <= 20000)) {
    refuse({
      field: "elevationFt",
      detail: `Elevation must be between −1,500 and 20,000 ft, not ${elevationFt}`,
      fix: "Enter the height of the house above sea level in feet.",
    });
  }
  return 101325 * (1 - 2.25577e-5 * elevationFt * METERS_PER_FOOT) ** 5.25588;
}

/**
 * Density of dry air at a temperature and place.
 * ρ = p/(R T). A station pressure is the pressure at the place itself, not reduced to sea level.
 * Valid −80 to 1,000 °F. Source: iso-2533 (dry air, ideal gas). Left out: moisture (about 1 % at 80 °F and humid).
 * @throws InputProblem when the station pressure cannot be explained by the elevation.
 */
export function airDensity({
  temperatureF,
  elevationFt = 0,
  stationPressureInHg,
}: {
  temperatureF: Fahrenheit;
  elevationFt?: Feet;
  stationPressureInHg?: number;
}): { densityLbPerFt3: PoundsPerCubicFoot; pressurePa: Pascals } {
  if (!(temperatureF >= -80 && temperatureF <= 1000)) {
    refuse({
      field: "temperatureF",
      detail: `Temperature must be between −80 and 1,000 °F, not ${temperatureF}`,
      fix: "Enter the air temperature in °F.",
    });
  }
  const standardPa = standardPressure(elevationFt);
  const pressurePa = stationPressureInHg === undefined ? standardPa : stationPressureInHg * PASCALS_PER_IN_HG;
  if (!(Math.abs(pressurePa / standardPa - 1) <= WEATHER_PRESSURE_SHARE)) {
    refuse({
      field: "stationPressureInHg",
      detail: `${stationPressureInHg} inHg does not fit an elevation of ${elevationFt} ft (expected near ${(standardPa / PASCALS_PER_IN_HG).toFixed(2)} inHg)`,
      fix: "Enter the pressure at the place itself, not the one reduced to sea level, or leave it out.",
    });
  }
  const kelvin = celsiusFromFahrenheit(temperatureF) + KELVIN_AT_0_C;
  return { densityLbPerFt3: (pressurePa / (DRY_AIR_J_PER_KG_K * kelvin)) * LB_PER_FT3_PER_KG_PER_M3, pressurePa };
}
