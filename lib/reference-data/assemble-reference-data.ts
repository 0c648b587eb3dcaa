import type { ClimateYear } from "#lib/climate/climate-year.ts";
import { REFERENCE_DATA_SCHEMA_VERSION, type ReferenceData } from "#lib/estimate/reference-data.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { CREDITS } from "./credits.ts";
import { carbonOf, pricesOf } from "./energy-figures.ts";
import type { LocatedPlace } from "./locate-place.ts";
import type { StationChoice } from "./pick-station.ts";
import { warnOfReference } from "./reference-warnings.ts";
import { climateHash as hashOfYear, type StationClimate, stationClimate } from "./station-climate.ts";
import type { EnergyTable, StationTable } from "./table-schemas.ts";

/** Where the weather comes from: a station's table, or a year read from the job's own weather file. */
export type Weather = { table: StationTable } | { ownYear: ClimateYear };

/**
 * Puts together what one estimate takes from the tables. Pure: the same tables and job give the same hash on the server
 * and in the browser. The typical year comes at the level of 1991-2020 where normals stand beside the station.
 * The hash covers all but the list of other stations and the credits, which no number depends on; the year enters it by
 * its own hash.
 */
export function assembleReferenceData({
  place,
  station,
  weather,
  energy,
}: {
  place: LocatedPlace;
  station: StationChoice;
  weather: Weather;
  energy: EnergyTable;
}): ReferenceData {
  const isOwnWeather = "ownYear" in weather;
  const { climate, normals, climateHash } = isOwnWeather ? ofOwnYear(weather.ownYear) : stationClimate(weather.table);
  const used = {
    schemaVersion: REFERENCE_DATA_SCHEMA_VERSION,
    place,
    station: isOwnWeather
      ? {
          id: climate.stationId,
          title: climate.stationName,
          distanceMiles: null,
          reason: "The job's own weather file",
          isChosenByRule: false,
        }
      : {
          id: station.id,
          title: station.title,
          distanceMiles: station.distanceMiles,
          reason: station.reason,
          isChosenByRule: station.isChosenByRule,
        },
    climate,
    normals,
    prices: pricesOf(energy, place.state),
    carbon: carbonOf(energy, place.egridSubregion),
    warnings: warnOfReference({ place, station, normals, isOwnWeather }),
  } as const;
  return {
    ...used,
    hash: contentHash({ ...used, climate: climateHash }),
    station: { ...used.station, alternatives: station.alternatives },
    credits: CREDITS,
  };
}

const ofOwnYear = (climate: ClimateYear): StationClimate => ({
  climate,
  normals: null,
  climateHash: hashOfYear(climate),
});
