import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { WeatherYear } from "#lib/job/weather-year.ts";
import { unpackBins, unpackMonths } from "./unpack-climate.ts";

/** The year of the job's own weather file as every later stage reads it. It is not moved to another level of climate. */
export function unpackWeatherYear(year: WeatherYear): ClimateYear {
  return {
    stationId: year.stationId,
    stationName: year.title,
    elevationFt: year.elevationFt,
    stationPressurePa: year.stationPressurePa,
    basis: "weather-file",
    bins: unpackBins(year),
    months: unpackMonths(year),
    design: { label: "estimated from the weather file", ...year.design },
  };
}
