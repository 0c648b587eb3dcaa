import { greatCircleMiles } from "../great-circle-miles.ts";
import {
  STATION_INDEX_SCHEMA_VERSION,
  type StationIndex,
  type StationTable,
  ZIP_SCHEMA_VERSION,
  type ZipTable,
} from "../table-schemas.ts";
import { decimals, groupBy, numberIn, type Row, textIn } from "./source-rows.ts";
import type { StationSite } from "./station-sites.ts";
import type { FindElevation } from "./towns.ts";

/** The ZIP table of each area, by its first three digits. */
export function packZips(rows: readonly Row[], findElevation: FindElevation): Map<string, ZipTable> {
  const areas = groupBy(rows, (row) => textIn(row, "zip").slice(0, 3));
  return new Map(
    [...areas].map(([area, zips]) => [
      area,
      { schemaVersion: ZIP_SCHEMA_VERSION, rows: zips.map((row) => packZip(row, findElevation)) },
    ]),
  );
}

/** Places shown by their county instead of their town. Source: from memory. */
const NAMED_BY_COUNTY: Readonly<Record<string, string>> = { "97019": "Multnomah County" };

function packZip(row: Row, findElevation: FindElevation): ZipTable["rows"][number] {
  const place = {
    name: textIn(row, "place"),
    state: textIn(row, "state"),
    latitudeDegrees: numberIn(row, "lat"),
    longitudeDegrees: numberIn(row, "lon"),
  };
  const elevation = findElevation(place);
  const zip = textIn(row, "zip");
  return [
    zip,
    NAMED_BY_COUNTY[zip] ?? place.name,
    place.state,
    place.latitudeDegrees,
    place.longitudeDegrees,
    textIn(row, "iecc2021_zone"),
    textIn(row, "egrid_subregion"),
    elevation && Math.round(elevation.elevationFt),
    elevation && decimals(elevation.distanceMiles, 1),
  ];
}

/** Every station with the climate zone and grid subregion of the nearest ZIP, for jobs that name a station alone. */
export function packStationIndex({
  sites,
  stations,
  zips,
  doubts,
}: {
  sites: readonly StationSite[];
  stations: ReadonlyMap<string, StationTable>;
  zips: readonly Row[];
  doubts: ReadonlyMap<string, string>;
}): StationIndex {
  const points = zips.map((row) => ({
    latitudeDegrees: numberIn(row, "lat"),
    longitudeDegrees: numberIn(row, "lon"),
    climateZone: textIn(row, "iecc2021_zone"),
    egridSubregion: textIn(row, "egrid_subregion"),
  }));
  return {
    schemaVersion: STATION_INDEX_SCHEMA_VERSION,
    rows: sites.map((site) => {
      const nearby = points.filter((point) => Math.abs(point.latitudeDegrees - site.latitudeDegrees) < 5);
      const nearest = (nearby.length > 0 ? nearby : points).reduce((best, point) =>
        greatCircleMiles(site, point) < greatCircleMiles(site, best) ? point : best,
      );
      return [
        site.id,
        site.title,
        site.state,
        site.latitudeDegrees,
        site.longitudeDegrees,
        site.elevationFt,
        nearest.climateZone,
        nearest.egridSubregion,
        stations.get(site.id)!.normals ? 1 : 0,
      ];
    }),
    doubts: Object.fromEntries([...doubts].sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}
