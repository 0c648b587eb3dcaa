import { InputProblem } from "#lib/errors/input-problem.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import type { ReferenceFigure, ReferencePlace } from "#lib/estimate/reference-data.ts";
import type { House } from "#lib/job/house.ts";
import type { StationSite } from "./choose-station.ts";
import type { StationIndex, ZipTable } from "./table-schemas.ts";

/** The part of a job that says where the house stands. */
export type HouseLocation = Pick<House, "zip" | "stationId" | "elevationFt" | "weatherYear">;

/** A place whose state, zone and grid region are known, as every place found in the tables is. */
export type LocatedPlace = ReferencePlace & { state: string; climateZone: string; egridSubregion: string };

/** The stations of the index as records. */
export function stationsOf({
  rows,
  doubts,
}: StationIndex): (StationSite & Pick<LocatedPlace, "state" | "climateZone" | "egridSubregion">)[] {
  return rows.map(
    ([id, title, state, latitudeDegrees, longitudeDegrees, elevationFt, climateZone, egridSubregion, normals]) => ({
      id,
      title,
      state,
      latitudeDegrees,
      longitudeDegrees,
      elevationFt,
      climateZone,
      egridSubregion,
      hasNormals: normals === 1,
      doubt: doubts[id] ?? null,
    }),
  );
}

/**
 * Where the house stands: by its ZIP code, else at the weather station that the job names.
 * @throws InputProblem `reference-missing` when neither is known to the tables.
 */
export function locatePlace({
  house,
  zipTable,
  index,
}: {
  house: HouseLocation;
  zipTable: ZipTable | null;
  index: StationIndex;
}): LocatedPlace {
  if (house.zip !== undefined) {
    const row = zipTable?.rows.find(([zip]) => zip === house.zip);
    if (!row) throw unknownZip(house.zip, zipTable);
    const [zip, town, state, latitudeDegrees, longitudeDegrees, climateZone, egridSubregion, townFt, townMiles] = row;
    const ofTown =
      townFt === null
        ? null
        : figure(
            townFt,
            `Elevation of the town ${townMiles} miles from the middle of ZIP ${zip}; a house may lie higher or lower.`,
            "geonames",
          );
    return {
      title: `${town}, ${state} ${zip}`,
      zip,
      state,
      latitudeDegrees,
      longitudeDegrees,
      elevation: house.elevationFt === undefined ? ofTown : told(house.elevationFt),
      climateZone,
      egridSubregion,
    };
  }
  const station = findStation(house.stationId ?? "", index);
  return {
    title: station.title,
    zip: null,
    state: station.state,
    latitudeDegrees: station.latitudeDegrees,
    longitudeDegrees: station.longitudeDegrees,
    elevation:
      house.elevationFt === undefined
        ? figure(station.elevationFt, "Elevation of the weather station, as no ZIP code was given.", "nrel-tmy3")
        : told(house.elevationFt),
    climateZone: station.climateZone,
    egridSubregion: station.egridSubregion,
  };
}

/** The station that a job names. @throws InputProblem `reference-missing` when there is none of this id. */
export function findStation(id: string, index: StationIndex) {
  const stations = stationsOf(index);
  const station = stations.find((each) => each.id === id);
  if (station) return station;
  const meant = nearestName(
    id,
    stations.map((each) => each.id),
  );
  throw new InputProblem("reference-missing", [
    {
      pointer: "#/house/stationId",
      code: "reference-missing",
      detail: `No weather station has the id “${id}”`,
      fix: `Use the six digits of a TMY3 station${meant ? `, such as ${meant}` : ""}, or remove it and enter the ZIP code.`,
    },
  ]);
}

function unknownZip(zip: string, zipTable: ZipTable | null): InputProblem {
  const meant = nearestName(zip, zipTable?.rows.map((row) => row[0]) ?? []);
  return new InputProblem("reference-missing", [
    {
      pointer: "#/house/zip",
      code: "reference-missing",
      detail: `ZIP code ${zip} is not in the tables of the 50 states and the District of Columbia`,
      fix: `Check the digits${meant ? ` (a ZIP code nearby is ${meant})` : ""}, or remove it and name a weather station instead.`,
    },
  ]);
}

const figure = (value: number, note: string, sourceId: ReferenceFigure["source"]["sourceId"]): ReferenceFigure => ({
  value,
  unit: "ft",
  note,
  source: { sourceId },
});
const told = (elevationFt: number) => figure(elevationFt, "As the job says.", "practice");
