import type { ClimateNormals, ReferencePlace } from "#lib/estimate/reference-data.ts";
import type { Warning } from "#lib/job/result/evidence-result.ts";
import type { StationChoice } from "./pick-station.ts";

/** Beyond these the weather of the station is another one. Source: practice. */
const FAR_MILES = 60;
const HEIGHT_FT = 1500;

/** What makes the weather doubtful for this house, and at which level of climate it stands. */
export function warnOfReference({
  place,
  station,
  normals,
  isOwnWeather,
}: {
  place: ReferencePlace;
  station: StationChoice;
  normals: ClimateNormals | null;
  isOwnWeather: boolean;
}): Warning[] {
  if (isOwnWeather) return [];
  const warnings: Warning[] = [];
  const add = (warning: Omit<Warning, "path">) => warnings.push({ path: "#/house/stationId", ...warning });
  if (place.zip === null)
    add({
      code: "place-from-station",
      severity: "note",
      what: `Prices, climate zone and grid region are those around the weather station ${station.title}.`,
      why: "The job has no ZIP code.",
      nextMove: "Enter the ZIP code.",
    });
  if (station.doubt !== null)
    add({
      code: "station-doubtful",
      severity: "doubt",
      what: `${station.title}: ${station.doubt}`,
      why: "Hours that cannot be true distort the months and the design temperatures.",
      nextMove: "Name another weather station, or leave the choice to the ZIP code.",
    });
  if (station.distanceMiles > FAR_MILES)
    add({
      code: "station-far",
      severity: "doubt",
      what: `The weather station ${station.title} is ${Math.round(station.distanceMiles)} miles away.`,
      why: "Over such a distance the weather may differ.",
      nextMove: "See whether another station or a weather file of the place fits better.",
    });
  if (place.elevation === null)
    add({
      code: "elevation-unknown",
      severity: "note",
      what: "The weather station was chosen by distance alone.",
      why: "No town is near enough to tell the elevation of this ZIP code, and 1,000 ft cool the air by about 3.5 °F.",
      nextMove: "In hills, enter the elevation of the house.",
    });
  else if (Math.abs(place.elevation.value - station.elevationFt) > HEIGHT_FT)
    add({
      code: "station-height",
      severity: "doubt",
      what: `The weather station lies ${Math.abs(Math.round(station.elevationFt - place.elevation.value)).toLocaleString("en-US")} ft ${station.elevationFt > place.elevation.value ? "above" : "below"} the house.`,
      why: "1,000 ft cool the air by about 3.5 °F.",
      nextMove: "See whether another station or a weather file of the place fits better.",
    });
  add(
    normals
      ? {
          code: "climate-level-1991-2020",
          severity: "note",
          what: `Each month of the typical year was moved to the normals of 1991-2020 of ${normals.title}.`,
          why: "Typical years rest on weather of about 1976 to 2005, on average 1 °F cooler.",
          nextMove: "Nothing needs doing.",
        }
      : {
          code: "climate-level-older",
          severity: "note",
          what: "The typical year stands at the level of about 1976 to 2005.",
          why: "No normals of 1991-2020 were observed beside this station; on average they are 1 °F warmer, so heating is somewhat overstated and cooling understated.",
          nextMove: "Where it matters, use a recent weather file.",
        },
  );
  return warnings;
}
