import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import { type ClimateYear, MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { packRuns, type SeasonRuns } from "#lib/distribution/season-runs.ts";
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
  /** Month (0 to 11), or month × 3 + shift (0 to 2) where prices follow the shifts. */
  readonly slotIndex: Uint8Array;
  readonly slotsPerMonth: 1 | 3;
  readonly temperatureF: Float64Array;
  readonly hours: Float64Array;
  readonly loadShare: Float64Array;
  readonly sunBtuPerHFt2: Float64Array;
  /** 1 where the sky may be clear and the sun is down. */
  readonly isNight: Float64Array;
  readonly humidityRatio: Float64Array;
  readonly enthalpyBtuPerLb: Float64Array;
  readonly groundF: Float64Array;
  /** The same bins packed for the inner loop. */
  readonly runs: SeasonRuns;
  /** Degree days of the season at the balance temperature. */
  readonly degreeDays: number;
}

/** The ground under and around a house lags the air and swings less. Source: practice. */
const GROUND_SWING_SHARE = 0.35;
const GROUND_LAG_MONTHS = 1;
const NIGHT_SUN_LIMIT_W_PER_M2 = 5;

/** Ground temperature near a house, month by month: the yearly mean with a damped, late swing. Source: practice. */
function groundTemperatures(climate: ClimateYear): Float64Array {
  const means = meanOfHours(climate.bins);
  const yearly = means.reduce((sum, mean) => sum + mean, 0) / MONTHS_PER_YEAR;
  return Float64Array.from(
    means,
    (_, month) =>
      yearly + GROUND_SWING_SHARE * (means[(month + MONTHS_PER_YEAR - GROUND_LAG_MONTHS) % MONTHS_PER_YEAR]! - yearly),
  );
}

/** What a year's bins carry whatever the house is, in step with them. */
interface YearColumns {
  sunBtuPerHFt2: Float64Array;
  isNight: Float64Array;
  enthalpyBtuPerLb: Float64Array;
  groundF: Float64Array;
}

/** Made once for each year that is held: a batch of houses shares few of them, and a year never changes. */
const columnsMade = new WeakMap<ClimateYear, YearColumns>();

function yearColumns(climate: ClimateYear): YearColumns {
  const known = columnsMade.get(climate);
  if (known) return known;
  const { bins } = climate;
  const ground = groundTemperatures(climate);
  const columns: YearColumns = {
    sunBtuPerHFt2: bins.globalIrradianceWPerM2.map((watts) => watts * BTU_PER_H_FT2_PER_W_PER_M2),
    isNight: bins.globalIrradianceWPerM2.map((watts) => (watts < NIGHT_SUN_LIMIT_W_PER_M2 ? 1 : 0)),
    enthalpyBtuPerLb: bins.temperatureF.map((eachF, bin) => moistAirEnthalpy(eachF, bins.humidityRatio[bin]!)),
    groundF: Float64Array.from(bins.month, (month) => ground[month - 1]!),
  };
  columnsMade.set(climate, columns);
  return columns;
}

function pick(column: Float64Array, kept: readonly number[]): Float64Array {
  const picked = new Float64Array(kept.length);
  for (let k = 0; k < kept.length; k++) picked[k] = column[kept[k]!]!;
  return picked;
}

/** The part of the year that each kept bin belongs to: its month, or its month and shift. */
function slotsOf({ month, shift }: ClimateYear["bins"], kept: readonly number[], slotsPerMonth: 1 | 3): Uint8Array {
  const slots = new Uint8Array(kept.length);
  for (let k = 0; k < kept.length; k++) {
    const bin = kept[k]!;
    slots[k] = slotsPerMonth === 1 ? month[bin]! - 1 : 3 * (month[bin]! - 1) + shift[bin]! - 1;
  }
  return slots;
}

/** The bins of one mode's season. A mode that never needs anything has no bins. */
export function seasonBins({
  climate,
  mode,
  balanceF,
  slotsPerMonth = 1,
}: {
  climate: ClimateYear;
  mode: Mode;
  balanceF: Fahrenheit;
  /** 3 keeps the 8-hour shifts apart in the account of the year. */
  slotsPerMonth?: 1 | 3;
}): SeasonBins {
  const { bins } = climate;
  const monthly = degreeDaysByMonth({ climate, baseTemperatureF: balanceF }).monthly;
  const degreeDays = monthly.map((month) => (mode === "heating" ? month.heatingDegreeDays : month.coolingDegreeDays));
  const yearly = degreeDays.reduce((sum, each) => sum + each, 0);
  const excess = new Float64Array(bins.hours.length);
  const degreeHours = new Float64Array(MONTHS_PER_YEAR);
  const kept: number[] = [];
  for (let bin = 0; bin < excess.length; bin++) {
    const month = bins.month[bin]! - 1;
    const temperatureF = bins.temperatureF[bin]!;
    excess[bin] = Math.max(0, mode === "heating" ? balanceF - temperatureF : temperatureF - balanceF);
    degreeHours[month]! += excess[bin]! * bins.hours[bin]!;
    if (excess[bin]! > 0 && degreeDays[month]! > 0) kept.push(bin);
  }
  const columns = yearColumns(climate);
  const share = new Float64Array(kept.length);
  let total = 0;
  for (let k = 0; k < kept.length; k++) {
    const bin = kept[k]!;
    const month = bins.month[bin]! - 1;
    share[k] = ((degreeDays[month]! / yearly) * excess[bin]! * bins.hours[bin]!) / degreeHours[month]!;
    total += share[k]!;
  }
  const season = {
    count: kept.length,
    slotIndex: slotsOf(bins, kept, slotsPerMonth),
    temperatureF: pick(bins.temperatureF, kept),
    hours: pick(bins.hours, kept),
    loadShare: share.map((each) => each / total),
    sunBtuPerHFt2: pick(columns.sunBtuPerHFt2, kept),
    isNight: pick(columns.isNight, kept),
    humidityRatio: pick(bins.humidityRatio, kept),
    enthalpyBtuPerLb: pick(columns.enthalpyBtuPerLb, kept),
    groundF: pick(columns.groundF, kept),
  };
  return { mode, ...season, runs: packRuns(season), slotsPerMonth, degreeDays: yearly };
}

const designBinsMade = new WeakMap<ClimateYear, Map<Mode, SeasonBins>>();

/** The design day as a season of one bin: estimated design temperature; the sun of hours that hot, none in winter. */
export function designBin({ climate, mode }: { climate: ClimateYear; mode: Mode }): SeasonBins {
  const made = designBinsMade.get(climate) ?? new Map<Mode, SeasonBins>();
  designBinsMade.set(climate, made);
  const bin = made.get(mode) ?? makeDesignBin(climate, mode);
  made.set(mode, bin);
  return bin;
}

function makeDesignBin(climate: ClimateYear, mode: Mode): SeasonBins {
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
  const day = {
    count: 1,
    slotIndex: Uint8Array.of(mode === "heating" ? 0 : 6),
    temperatureF: one(temperatureF),
    hours: one(1),
    loadShare: one(1),
    sunBtuPerHFt2: one(mode === "cooling" && hours > 0 ? (sun / hours) * BTU_PER_H_FT2_PER_W_PER_M2 : 0),
    isNight: one(mode === "heating" ? 1 : 0),
    humidityRatio: one(humidityRatio),
    enthalpyBtuPerLb: one(moistAirEnthalpy(temperatureF, humidityRatio)),
    groundF: one(ground[mode === "heating" ? 0 : 6]!),
  };
  return { mode, ...day, runs: packRuns(day), slotsPerMonth: 1, degreeDays: 0 };
}
