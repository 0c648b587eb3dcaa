import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import { celsiusFromFahrenheit, KELVIN_AT_0_C, LB_PER_FT3_PER_KG_PER_M3 } from "#lib/units/conversions.ts";
import type { BtuPerPound, Fahrenheit, Pascals, PoundsPerCubicFoot, Ratio, Share } from "#lib/units/quantity.ts";
import { AIR_SPECIFIC_HEAT } from "./standard-air.ts";

/** Mass of water per mass of dry air over the ratio of their partial pressures. ASHRAE Fundamentals, ch. 1. */
const WATER_TO_DRY_AIR_MASS_RATIO = 0.621945;
/** Gas constant of dry air, J/(kg K). ASHRAE Fundamentals, ch. 1. */
const DRY_AIR_J_PER_KG_K = 287.042;
const vaporSource = {
  sourceId: "ashrae-fundamentals-psychrometrics",
  locator: "ch. 1, enthalpy of moist air",
} as const;
/** Enthalpy of water vapor at 0 °F. */
export const VAPOR_ENTHALPY = { value: 1061, unit: "Btu/lb", source: vaporSource } as const satisfies SourcedValue;
export const VAPOR_SPECIFIC_HEAT = {
  value: 0.444,
  unit: "Btu/(lb·°F)",
  source: vaporSource,
} as const satisfies SourcedValue;
const TRIPLE_POINT_K = 273.16;

/**
 * Pressure of water vapor over ice or water, in Pa. Unguarded.
 * ln p = C₁/T + C₂ + C₃T + C₄T² + C₅T³ (+ C₆T⁴) + C₇ ln T, T in K; ice below the triple point.
 * Valid −148 to 392 °F. Source: ashrae-fundamentals-psychrometrics, ch. 1 eq. 5 and 6 (Hyland and Wexler).
 */
export function saturationPressure(temperatureF: Fahrenheit): Pascals {
  const t = celsiusFromFahrenheit(temperatureF) + KELVIN_AT_0_C;
  const logPressure =
    t < TRIPLE_POINT_K
      ? -5.6745359e3 / t +
        6.3925247 +
        t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13))) +
        4.1635019 * Math.log(t)
      : -5.8002206e3 / t +
        1.3914993 +
        t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
        6.5459673 * Math.log(t);
  return Math.exp(logPressure);
}

/** Enthalpy of moist air per pound of dry air, from 0 °F: h = 0.24 t + W(1061 + 0.444 t). Unguarded. */
export function moistAirEnthalpy(dryBulbF: Fahrenheit, humidityRatio: Ratio): BtuPerPound {
  return (
    AIR_SPECIFIC_HEAT.value * dryBulbF + humidityRatio * (VAPOR_ENTHALPY.value + VAPOR_SPECIFIC_HEAT.value * dryBulbF)
  );
}

/** Water per dry air at a relative humidity: W = 0.621945 φ p_ws/(p − φ p_ws). Unguarded. */
export function humidityRatioAt(dryBulbF: Fahrenheit, relativeHumidity: Share, pressurePa: Pascals): Ratio {
  const vaporPa = relativeHumidity * saturationPressure(dryBulbF);
  return (WATER_TO_DRY_AIR_MASS_RATIO * vaporPa) / (pressurePa - vaporPa);
}

/**
 * Enthalpy, humidity and density of moist air, from its temperature and one measure of its humidity.
 * h = 0.24 t + W(1061 + 0.444 t); W = 0.621945 p_w/(p − p_w); ρ = (1 + W) p/(R T (1 + 1.6079 W)), ρ of the mixture.
 * Valid −40 to 140 °F, 50 to 110 kPa. Source: ashrae-fundamentals-psychrometrics, ch. 1 (form of); agrees with
 * psychrolib to 1e-4. Left out: the enhancement factor of real gas (0.5 % of W).
 * @throws InputProblem when not exactly one humidity is given, or it is above saturation.
 */
export function moistAir({
  dryBulbF,
  humidityRatio,
  relativeHumidity,
  pressurePa = 101325,
}: {
  dryBulbF: Fahrenheit;
  humidityRatio?: Ratio;
  relativeHumidity?: Share;
  pressurePa?: Pascals;
}): {
  enthalpyBtuPerLb: BtuPerPound;
  humidityRatio: Ratio;
  relativeHumidity: Share;
  densityLbPerFt3: PoundsPerCubicFoot;
} {
  requireBetween({ field: "dryBulbF", label: "Air temperature", value: dryBulbF, unit: "°F", low: -40, high: 140 });
  requireBetween({
    field: "pressurePa",
    label: "Air pressure",
    value: pressurePa,
    unit: "Pa",
    low: 50000,
    high: 110000,
  });
  if ((humidityRatio === undefined) === (relativeHumidity === undefined)) {
    refuse({
      field: "relativeHumidity",
      detail: "Exactly one of humidity ratio and relative humidity is needed",
      fix: "Give relativeHumidity (0 to 1) or humidityRatio (lb of water per lb of dry air), not both.",
    });
  }
  const saturationPa = saturationPressure(dryBulbF);
  const ratio = humidityRatio ?? humidityRatioAt(dryBulbF, relativeHumidity as number, pressurePa);
  const share = relativeHumidity ?? (pressurePa * ratio) / (WATER_TO_DRY_AIR_MASS_RATIO + ratio) / saturationPa;
  requireBetween({
    field: humidityRatio === undefined ? "relativeHumidity" : "humidityRatio",
    label: "Relative humidity",
    value: share,
    low: 0,
    high: 1,
    fix: "Check temperature and humidity: air cannot hold more water than at saturation.",
  });
  const kelvin = celsiusFromFahrenheit(dryBulbF) + KELVIN_AT_0_C;
  const kgPerM3 =
    ((1 + ratio) * pressurePa) / (DRY_AIR_J_PER_KG_K * kelvin * (1 + ratio / WATER_TO_DRY_AIR_MASS_RATIO));
  return {
    enthalpyBtuPerLb: moistAirEnthalpy(dryBulbF, ratio),
    humidityRatio: ratio,
    relativeHumidity: share,
    densityLbPerFt3: kgPerM3 * LB_PER_FT3_PER_KG_PER_M3,
  };
}
