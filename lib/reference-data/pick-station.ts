import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { chooseStation, reasonOf } from "./choose-station.ts";
import { greatCircleMiles } from "./great-circle-miles.ts";
import { findStation, type HouseLocation, type LocatedPlace, stationsOf } from "./locate-place.ts";
import type { StationIndex } from "./table-schemas.ts";

/** Which station the house takes its weather from, with what else could have stood in. */
export type StationChoice = ReferenceData["station"] & {
  distanceMiles: number;
  elevationFt: number;
  doubt: string | null;
};

/**
 * The station that the job names, else the first of `chooseStation`.
 * @throws InputProblem `reference-missing` when the job names a station that does not exist.
 */
export function pickStation({
  house,
  place,
  index,
}: {
  house: HouseLocation;
  place: LocatedPlace;
  index: StationIndex;
}): StationChoice {
  const elevationFt = place.elevation?.value;
  const candidates = chooseStation({ place, elevationFt, stations: stationsOf(index) });
  const station = findStation(house.stationId ?? candidates[0]!.id, index);
  const distanceMiles = greatCircleMiles(place, station);
  return {
    id: station.id,
    title: station.title,
    distanceMiles,
    elevationFt: station.elevationFt,
    doubt: station.doubt,
    reason: `${house.stationId === undefined ? "Best match" : "Named in the job"}: ${reasonOf({ station, distanceMiles, elevationFt })}`,
    isChosenByRule: house.stationId === undefined,
    alternatives: candidates.filter((candidate) => candidate.id !== station.id),
  };
}
