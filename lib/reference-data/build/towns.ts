import { readFileSync } from "node:fs";
import { METERS_PER_FOOT } from "#lib/units/conversions.ts";
import { greatCircleMiles, type Point } from "../great-circle-miles.ts";

/** A town of the same name this near is the place itself; a town of another name must be nearer. Source: own-method. */
const SAME_NAME_MILES = 20;
const ANY_NAME_MILES = 8;

interface Town extends Point {
  name: string;
  state: string;
  elevationFt: number;
}

/** Finds the elevation of a place from the towns around it. */
export type FindElevation = (place: Point & { name: string; state: string }) => {
  elevationFt: number;
  distanceMiles: number;
} | null;

/**
 * Reads a GeoNames list of towns (`cities500.txt`, tab-separated): columns name 2, latitude 5, longitude 6, country 9,
 * state 11, elevation 16, elevation of the terrain model 17, both in meters.
 * A place takes the elevation of the town of its name, else of the nearest town; none where no town is near.
 */
export function readTowns(file: string): FindElevation {
  const cells = new Map<string, Town[]>();
  const cellOf = (latitude: number, longitude: number) => `${Math.floor(latitude * 2)} ${Math.floor(longitude * 2)}`;
  for (const line of readFileSync(file, "utf8").split("\n")) {
    const columns = line.split("\t");
    if (columns[8] !== "US") continue;
    const meters = [columns[16], columns[15]].map(Number).find((value) => Number.isFinite(value) && value > -430);
    if (meters === undefined) continue;
    const town: Town = {
      name: plain(columns[1]!),
      state: columns[10]!,
      latitudeDegrees: Number(columns[4]),
      longitudeDegrees: Number(columns[5]),
      elevationFt: meters / METERS_PER_FOOT,
    };
    const cell = cellOf(town.latitudeDegrees, town.longitudeDegrees);
    cells.set(cell, [...(cells.get(cell) ?? []), town]);
  }
  return (place) => {
    const around = [-0.5, 0, 0.5].flatMap((north) =>
      [-0.5, 0, 0.5].flatMap(
        (east) => cells.get(cellOf(place.latitudeDegrees + north, place.longitudeDegrees + east)) ?? [],
      ),
    );
    const ranked = around
      .map((town) => ({ town, distanceMiles: greatCircleMiles(place, town) }))
      .sort((a, b) => a.distanceMiles - b.distanceMiles);
    const found =
      ranked.find(
        ({ town, distanceMiles }) =>
          distanceMiles <= SAME_NAME_MILES && town.state === place.state && town.name === plain(place.name),
      ) ?? ranked.find(({ distanceMiles }) => distanceMiles <= ANY_NAME_MILES);
    return found ? { elevationFt: found.town.elevationFt, distanceMiles: found.distanceMiles } : null;
  };
}

/** Compares names without case, accents, spaces and the two spellings of Saint. */
const plain = (name: string): string =>
  name
    .normalize("NFD")
    .toLowerCase()
    .replace(/\bsaint\b/, "st")
    .replace(/\bmount\b/, "mt")
    .replace(/\bfort\b/, "ft")
    .replace(/[^a-z]/g, "");
