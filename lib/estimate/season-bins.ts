import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import type { ClimateYear } from "#lib/climate/climate-year.ts";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { BTU_PER_H_FT2_PER_W_PER_M2 } from "#lib/units/conversions.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";

export type Mode = "heating" | "cooling";

/**
 * The hours of one mode's season, as columns of equal length: one entry a month, shift and temperature bin in which the
 * house needs heat (or cold). `loadShare` adds up to 1 over the year: each month's part follows its daily degree days,
 * and within the month the bins share it by degree hours, since bins alone over-count mild weather.
 */
export interface SeasonBins {
  readonly mode: Mode;
  readonly count: number;
  /** 0 to 11. */
  readonly monthIndex: Uint8Array;
  readonly temperatureF: Float64Array;
  readonly hours: Float64Array;
  readonly loadShare: Float64Array;
  readonly sunBtuPerHFt2: Float64Array;
  /** 1 where the sky may be clear and the sun is down. */
  readonly isNight: Float64Array;
  readonly humidityRatio: Float64Array;
  readonly enthalpyBtuPerLb: Float64Array;
  readonly groundF: Float64Array;
  /** Degree days of the season at the balance temperature. */
  readonly degreeDays: number;
}

/** The ground under and around a house lags the air and swings less. Source: practice. */
const GROUND_SWING_SHARE = 0.35;
const GROUND_LAG_MONTHS = 1;
const NIGHT_SUN_LIMIT_W_PER_M2 = 5;
const MONTHS = 12;

/** Ground temperature near a house, month by month: the yearly mean with a damped, late swing. Source: practice. */
function groundTemperatures(climate: ClimateYear): Float64Array {
  const means = meanOfHours(climate.bins);
  const yearly = means.reduce((sum, mean) => sum + mean, 0) / MONTHS;
  return Float64Array.from(
    means,
    (_, month) => yearly + GROUND_SWING_SHARE * (means[(month + MONTHS - GROUND_LAG_MONTHS) % MONTHS]! - yearly),
  );
}

/** The bins of one mode's season. A mode that never needs anything has no bins. */
export function seasonBins({
  climate,
  mode,
  balanceF,
}: {
  climate: ClimateYear;
  mode: Mode;
  balanceF: Fahrenheit;
}): SeasonBins {
  const { bins } = climate;
  const monthly = degreeDaysByMonth({ climate, baseTemperatureF: balanceF }).monthly;
  const degreeDays = monthly.map((month) => (mode === "heating" ? month.heatingDegreeDays : month.coolingDegreeDays));
  const yearly = degreeDays.reduce((sum, each) => sum + each, 0);
  const excess = bins.temperatureF.map((temperatureF) =>
    Math.max(0, mode === "heating" ? balanceF - temperatureF : temperatureF - balanceF),
  );
  const degreeHours = new Float64Array(MONTHS);
  excess.forEach((each, bin) => {
    degreeHours[bins.month[bin]! - 1]! += each * bins.hours[bin]!;
  });
  const ground = groundTemperatures(climate);
  const kept = Array.from(bins.hours.keys()).filter((bin) => excess[bin]! > 0 && degreeDays[bins.month[bin]! - 1]! > 0);
  const pick = (read: (bin: number) => number) => Float64Array.from(kept, read);
  const monthOf = (bin: number) => bins.month[bin]! - 1;
  const share = pick(
    (bin) => ((degreeDays[monthOf(bin)]! / yearly) * excess[bin]! * bins.hours[bin]!) / degreeHours[monthOf(bin)]!,
  );
  const total = share.reduce((sum, each) => sum + each, 0);
  return {
    mode,
    count: kept.length,
    monthIndex: Uint8Array.from(kept, monthOf),
    temperatureF: pick((bin) => bins.temperatureF[bin]!),
    hours: pick((bin) => bins.hours[bin]!),
    loadShare: share.map((each) => each / total),
    sunBtuPerHFt2: pick((bin) => bins.globalIrradianceWPerM2[bin]! * BTU_PER_H_FT2_PER_W_PER_M2),
    isNight: pick((bin) => (bins.globalIrradianceWPerM2[bin]! < NIGHT_SUN_LIMIT_W_PER_M2 ? 1 : 0)),
    humidityRatio: pick((bin) => bins.humidityRatio[bin]!),
    enthalpyBtuPerLb: pick((bin) => moistAirEnthalpy(bins.temperatureF[bin]!, bins.humidityRatio[bin]!)),
    groundF: pick((bin) => ground[monthOf(bin)]!),
    degreeDays: yearly,
  };
}

/** The design day as a season of one bin: estimated design temperature; the sun of hours that hot, none in winter. */
export function designBin({ climate, mode }: { climate: ClimateYear; mode: Mode }): SeasonBins {
  const { design, bins } = climate;
  const temperatureF = mode === "heating" ? design.heating99F : design.cooling1F;
  const ground = groundTemperatures(climate);
  let hours = 0;
  let sun = 0;
  let humidity = 0;
  bins.temperatureF.forEach((each, bin) => {
    const isThere = mode === "heating" ? each <= temperatureF + 2.5 : each >= temperatureF - 2.5;
    if (!isThere) return;
    hours += bins.hours[bin]!;
    sun += bins.hours[bin]! * bins.globalIrradianceWPerM2[bin]!;
    humidity += bins.hours[bin]! * bins.humidityRatio[bin]!;
  });
  const humidityRatio = mode === "cooling" ? design.coolingHumidityRatio : hours > 0 ? humidity / hours : 0.001;
  const one = (value: number) => Float64Array.of(value);
  return {
    mode,
    count: 1,
    monthIndex: Uint8Array.of(mode === "heating" ? 0 : 6),
    temperatureF: one(temperatureF),
    hours: one(1),
    loadShare: one(1),
    sunBtuPerHFt2: one(mode === "cooling" && hours > 0 ? (sun / hours) * BTU_PER_H_FT2_PER_W_PER_M2 : 0),
    isNight: one(mode === "heating" ? 1 : 0),
    humidityRatio: one(humidityRatio),
    enthalpyBtuPerLb: one(moistAirEnthalpy(temperatureF, humidityRatio)),
    groundF: one(ground[mode === "heating" ? 0 : 6]!),
    degreeDays: 0,
  };
}
