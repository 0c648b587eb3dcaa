/**
 * Conversions from exact definitions, each derived once. Inside lib one unit per dimension is used; these serve the
 * edge (parse, format) and the few formulas whose source is written in SI.
 */
export const METERS_PER_FOOT = 0.3048;
export const METERS_PER_INCH = 0.0254;
export const KELVIN_AT_0_C = 273.15;
export const KG_PER_LB = 0.45359237;
/** International Table Btu. */
export const JOULES_PER_BTU = 1055.05585262;
/** Conventional inch of mercury at 0 °C: 25.4 mm × 13,595.1 kg/m³ × 9.80665 m/s². */
export const PASCALS_PER_IN_HG = 0.0254 * 13595.1 * 9.80665;
/** Conventional inch of water at 4 °C: 25.4 mm × 1,000 kg/m³ × 9.80665 m/s². */
export const PASCALS_PER_IN_WATER = 0.0254 * 1000 * 9.80665;

export const M3_PER_FT3 = METERS_PER_FOOT ** 3;
export const M2_PER_FT2 = METERS_PER_FOOT ** 2;
export const LB_PER_FT3_PER_KG_PER_M3 = M3_PER_FT3 / KG_PER_LB;
export const BTU_PER_KWH = 3_600_000 / JOULES_PER_BTU;
export const BTU_PER_THERM = 100_000;
/** 1 W/m² in Btu/(h ft²). */
export const BTU_PER_H_FT2_PER_W_PER_M2 = (3600 / JOULES_PER_BTU) * M2_PER_FT2;

export const celsiusFromFahrenheit = (temperatureF: number): number => ((temperatureF - 32) * 5) / 9;
export const fahrenheitFromCelsius = (temperatureC: number): number => (temperatureC * 9) / 5 + 32;
/** A temperature difference: 1 K is 1.8 °F. */
export const FAHRENHEIT_DEGREES_PER_CELSIUS_DEGREE = 1.8;
export const METERS_PER_MILE = 5280 * METERS_PER_FOOT;
/** US gallon: 231 cubic inches. */
export const LITERS_PER_GALLON = 231 * METERS_PER_INCH ** 3 * 1000;

export const WATTS_PER_KILOWATT = 1000;
export const HOURS_PER_DAY = 24;
/** Of a typical year, which has no leap day. */
export const DAYS_PER_YEAR = 365;
