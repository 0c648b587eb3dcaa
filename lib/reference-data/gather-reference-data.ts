import type { z } from "zod";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { assembleReferenceData } from "./assemble-reference-data.ts";
import { type HouseLocation, locatePlace } from "./locate-place.ts";
import { pickStation } from "./pick-station.ts";
import { energyTableSchema, stationIndexSchema, stationTableSchema, zipTableSchema } from "./table-schemas.ts";
import { unpackWeatherYear } from "./unpack-weather-year.ts";

/** Reads one table by its path under public/reference and holds it to its form; null when there is no such file. */
export type ReadTable = <Schema extends z.ZodType>(path: string, schema: Schema) => Promise<z.output<Schema> | null>;

/** What a loader is given: the job, of which its house is enough. */
export interface ReferenceRequest {
  house: HouseLocation;
}

/**
 * Reads the few tables that one job needs and assembles them.
 * @throws InputProblem `reference-missing` when the ZIP code or the station is not known.
 */
export async function gatherReferenceData(read: ReadTable, { house }: ReferenceRequest): Promise<ReferenceData> {
  const [index, energy, zipTable] = await Promise.all([
    required(read, "stations.json", stationIndexSchema),
    required(read, "energy.json", energyTableSchema),
    house.zip === undefined ? null : read(`zip/${house.zip.slice(0, 3)}.json`, zipTableSchema),
  ]);
  const place = locatePlace({ house, zipTable, index });
  const station = pickStation({ house, place, index });
  const weather = house.weatherYear
    ? { ownYear: unpackWeatherYear(house.weatherYear) }
    : { table: await required(read, `station/${station.id}.json`, stationTableSchema) };
  return assembleReferenceData({ place, station, weather, energy });
}

async function required<Schema extends z.ZodType>(
  read: ReadTable,
  path: string,
  schema: Schema,
): Promise<z.output<Schema>> {
  const table = await read(path, schema);
  if (table === null) throw new Error(`The table ${path} is missing`);
  return table;
}

/** Holds the parsed JSON of a table to its form. */
export function parseTable<Schema extends z.ZodType>(path: string, schema: Schema, content: unknown): z.output<Schema> {
  const parsed = schema.safeParse(content);
  if (!parsed.success) throw new Error(`The table ${path} does not have the form of this version`);
  return parsed.data;
}
