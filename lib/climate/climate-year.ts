import type { Fahrenheit, Feet, Pascals, Ratio } from "#lib/units/quantity.ts";

/**
 * The hours of a year sorted by month, 8-hour shift and dry-bulb bin: column arrays of equal length, one entry a bin.
 * Shift 1 is hours 1 to 8, 2 is 9 to 16, 3 is 17 to 24 of local standard time. Bins with no hours are left out.
 */
export interface ClimateBins {
  /** 1 to 12. */
  readonly month: Uint8Array;
  /** 1 to 3. */
  readonly shift: Uint8Array;
  /** Middle of the dry-bulb bin. */
  readonly temperatureF: Float64Array;
  readonly hours: Float64Array;
  /** Mean humidity ratio of the hours in the bin, lb water per lb dry air. */
  readonly humidityRatio: Float64Array;
  /** Mean global horizontal irradiance of the hours in the bin. */
  readonly globalIrradianceWPerM2: Float64Array;
}

/** Twelve values each, January first. */
export interface ClimateMonths {
  readonly meanTemperatureF: Float64Array;
  readonly meanDailyMaximumF: Float64Array;
  readonly meanDailyMinimumF: Float64Array;
  /** Degree days at 65 °F from daily (maximum + minimum)/2, as tabulated for the unshifted year. */
  readonly heatingDegreeDaysAt65: Float64Array;
  readonly coolingDegreeDaysAt65: Float64Array;
}

/** Percentiles of one typical year's hours. Always labeled as estimates; never a code value. */
export interface EstimatedDesignTemperatures {
  readonly label: "estimated from TMY3" | "estimated from the weather file";
  /** Colder in 1 % of the hours. */
  readonly heating99F: Fahrenheit;
  readonly heating996F: Fahrenheit;
  /** Hotter in 1 % of the hours. */
  readonly cooling1F: Fahrenheit;
  readonly cooling04F: Fahrenheit;
  /** Mean humidity ratio at the 1 % cooling temperature. */
  readonly coolingHumidityRatio: Ratio;
}

/** How the year was made. */
export type ClimateBasis = "tmy3" | "tmy3-at-1991-2020-normals" | "weather-file";

/** A typical year at one station, as every later stage reads it. */
export interface ClimateYear {
  readonly stationId: string;
  readonly stationName: string;
  readonly elevationFt: Feet;
  /** Mean pressure at the station itself. */
  readonly stationPressurePa: Pascals;
  readonly basis: ClimateBasis;
  readonly bins: ClimateBins;
  readonly months: ClimateMonths;
  readonly design: EstimatedDesignTemperatures;
}

export const MONTHS_PER_YEAR = 12;
/** A typical year has 365 days. */
export const DAYS_IN_MONTH: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
