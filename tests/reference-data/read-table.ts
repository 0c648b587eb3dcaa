import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { z } from "zod";
import { parseTable } from "#lib/reference-data/gather-reference-data.ts";
import {
  energyTableSchema,
  manifestSchema,
  stationIndexSchema,
  stationTableSchema,
  zipTableSchema,
} from "#lib/reference-data/table-schemas.ts";

export const TABLES_FOLDER = join(import.meta.dirname, "../../public/reference");

export const readText = (path: string): string => readFileSync(join(TABLES_FOLDER, path), "utf8");

function read<Schema extends z.ZodType>(path: string, schema: Schema): z.output<Schema> {
  return parseTable(path, schema, JSON.parse(readText(path)));
}

const namesIn = (folder: string) => readdirSync(join(TABLES_FOLDER, folder)).map((file) => file.replace(".json", ""));

export const manifest = read("manifest.json", manifestSchema);
export const stationIndex = read("stations.json", stationIndexSchema);
export const energy = read("energy.json", energyTableSchema);
export const stationTables = namesIn("station").map((id) => read(`station/${id}.json`, stationTableSchema));
export const zipTables = new Map(namesIn("zip").map((area) => [area, read(`zip/${area}.json`, zipTableSchema)]));
export const zipRows = [...zipTables.values()].flatMap((table) => table.rows);
