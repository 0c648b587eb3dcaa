import { METERS_PER_FOOT } from "#lib/units/conversions.ts";
import { greatCircleMiles } from "../great-circle-miles.ts";
import { STATION_SCHEMA_VERSION, type StationTable } from "../table-schemas.ts";
import { decimals, numberIn, type Row, textIn } from "./source-rows.ts";
import type { StationSite } from "./station-sites.ts";
import { stationTitle } from "./station-title.ts";

const BIN_WIDTH_F = 5;
/**
 * Normals stand in for a typical year's level only where both were observed at nearly the same spot: at 0 to 2 miles
 * the yearly gap spreads by 0.9 °F over the stations, at 2 to 5 by 1.6 °F. Source: derived from the tables themselves.
 */
const NORMALS_WITHIN_MILES = 5;
const NORMALS_WITHIN_FT = 300;

/** One station's typical year, packed. `months`, `bins`: its rows; `normals`: the rows of all normals stations, by id. */
export function packStation({
  site,
  months,
  bins,
  normals,
}: {
  site: StationSite;
  months: readonly Row[];
  bins: readonly Row[];
  normals: ReadonlyMap<string, readonly Row[]>;
}): StationTable {
  const byMonth = [...months].sort((a, b) => numberIn(a, "month") - numberIn(b, "month"));
  const column = (name: string) => byMonth.map((row) => numberIn(row, name));
  return {
    schemaVersion: STATION_SCHEMA_VERSION,
    stationId: site.id,
    title: site.title,
    elevationFt: site.elevationFt,
    stationPressurePa: site.stationPressurePa,
    design: {
      heating99F: numberIn(site.row, "heat99_F"),
      heating996F: numberIn(site.row, "heat996_F"),
      cooling1F: numberIn(site.row, "cool1_F"),
      cooling04F: numberIn(site.row, "cool04_F"),
      coolingHumidityRatio: numberIn(site.row, "cool1_coinc_hum_ratio_lb_per_lb"),
    },
    meanTemperatureF: column("tavg_F"),
    meanDailyMaximumF: column("tmax_F"),
    meanDailyMinimumF: column("tmin_F"),
    heatingDegreeDaysAt65: column("hdd65_Fday"),
    coolingDegreeDaysAt65: column("cdd65_Fday"),
    ...packBins(bins),
    normals: findNormals(site, normals),
  };
}

function packBins(
  rows: readonly Row[],
): Pick<StationTable, "coldestBinLowF" | "binsCount" | "hours" | "humidityRatioPer100000" | "globalIrradianceWPerM2"> {
  const packed = {
    coldestBinLowF: [] as number[],
    binsCount: [] as number[],
    hours: [] as number[],
    humidityRatioPer100000: [] as number[],
    globalIrradianceWPerM2: [] as number[],
  };
  for (let month = 1; month <= 12; month += 1) {
    for (let shift = 1; shift <= 3; shift += 1) {
      const own = new Map(
        rows
          .filter((row) => numberIn(row, "month") === month && numberIn(row, "shift") === shift)
          .map((row) => [numberIn(row, "bin_low_F"), row]),
      );
      const coldest = Math.min(...own.keys());
      const count = (Math.max(...own.keys()) - coldest) / BIN_WIDTH_F + 1;
      packed.coldestBinLowF.push(coldest);
      packed.binsCount.push(count);
      for (let bin = 0; bin < count; bin += 1) {
        const row = own.get(coldest + bin * BIN_WIDTH_F);
        packed.hours.push(row ? numberIn(row, "hours") : 0);
        packed.humidityRatioPer100000.push(row ? numberIn(row, "mean_hum_ratio_1e5_lb_per_lb") : 0);
        packed.globalIrradianceWPerM2.push(row ? numberIn(row, "mean_ghi_W_per_m2") : 0);
      }
    }
  }
  return packed;
}

function findNormals(site: StationSite, normals: ReadonlyMap<string, readonly Row[]>): StationTable["normals"] {
  const near = [...normals.values()]
    .map((rows) => ({ rows, distanceMiles: greatCircleMiles(site, positionOf(rows[0]!)) }))
    .filter(
      ({ rows, distanceMiles }) =>
        distanceMiles <= NORMALS_WITHIN_MILES &&
        Math.abs(numberIn(rows[0]!, "elev_m") / METERS_PER_FOOT - site.elevationFt) <= NORMALS_WITHIN_FT,
    )
    .sort((a, b) => a.distanceMiles - b.distanceMiles)[0];
  if (!near) return null;
  const rows = [...near.rows].sort((a, b) => numberIn(a, "month") - numberIn(b, "month"));
  const column = (name: string) => rows.map((row) => numberIn(row, name));
  const observed = (name: string) => (rows.every((row) => row[name] !== "") ? column(name) : null);
  return {
    id: textIn(rows[0]!, "ghcn_id"),
    title: `${stationTitle(textIn(rows[0]!, "city"))}, ${textIn(rows[0]!, "state")}`,
    distanceMiles: decimals(near.distanceMiles, 1),
    meanTemperatureF: column("tavg_F"),
    meanDailyMaximumF: column("tmax_F"),
    meanDailyMinimumF: column("tmin_F"),
    morningHumidityPercent: observed("rh_morning_pct"),
    afternoonHumidityPercent: observed("rh_afternoon_pct"),
  };
}

const positionOf = (row: Row) => ({ latitudeDegrees: numberIn(row, "lat"), longitudeDegrees: numberIn(row, "lon") });
