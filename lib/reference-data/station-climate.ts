import type { ClimateYear } from "#lib/climate/climate-year.ts";
import { shiftToNormals } from "#lib/climate/shift-to-normals.ts";
import type { ClimateNormals } from "#lib/estimate/reference-data.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { StationTable } from "./table-schemas.ts";
import { unpackClimate } from "./unpack-climate.ts";

/** A station's year as the estimate takes it, with the hash of all its columns. */
export interface StationClimate {
  climate: ClimateYear;
  normals: ClimateNormals | null;
  climateHash: string;
}

/** Made once for each table that is held: a batch of jobs shares few stations. */
const made = new WeakMap<StationTable, StationClimate>();

/**
 * The typical year of a station, moved to the level of 1991-2020 where normals were observed beside it.
 * Sources: nrel-tmy3, noaa-normals-1991-2020. @throws InputProblem when normals and year contradict each other.
 */
export function stationClimate(table: StationTable): StationClimate {
  const known = made.get(table);
  if (known) return known;
  const { climate, normals } = atPresentLevel(table);
  const whole = { climate, normals, climateHash: climateHash(climate) };
  made.set(table, whole);
  return whole;
}

function atPresentLevel(table: StationTable): { climate: ClimateYear; normals: ClimateNormals | null } {
  const typical = unpackClimate(table);
  if (table.normals === null) return { climate: typical, normals: null };
  const { morningHumidityPercent, afternoonHumidityPercent, ...rest } = table.normals;
  const { climate, monthlyShiftF } = shiftToNormals(typical, rest.meanTemperatureF);
  const shares = (percents: readonly number[] | null) => percents?.map((percent) => percent / 100) ?? null;
  return {
    climate,
    normals: {
      ...rest,
      morningHumidityShare: shares(morningHumidityPercent),
      afternoonHumidityShare: shares(afternoonHumidityPercent),
      monthlyShiftF,
    },
  };
}

/** SHA-256 over the canonical form of a year. Typed columns have no JSON form of their own, so they go in as lists. */
export function climateHash({ bins, months, ...facts }: ClimateYear): string {
  const lists = (columns: object) =>
    Object.fromEntries(
      Object.entries(columns as Record<string, ArrayLike<number>>).map(([name, column]) => [name, Array.from(column)]),
    );
  return contentHash({ ...facts, bins: lists(bins), months: lists(months) });
}
