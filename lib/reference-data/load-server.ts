import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { z } from "zod";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { gatherReferenceData, parseTable, type ReadTable, type ReferenceRequest } from "./gather-reference-data.ts";

const TABLES = "public/reference";
/** Tables read once are kept: a batch of jobs asks for the same few again and again; all of them are 7 MB. */
const kept = new Map<string, Promise<unknown>>();
/** What was put together for a place is kept too: houses of a batch share ZIP codes. The year itself is in `kept`. */
const gathered = new Map<string, Promise<ReferenceData>>();
const MOST_GATHERED = 2000;

/**
 * What one job needs of the tables, read from the project's own folder.
 * @throws InputProblem `reference-missing` when the ZIP code or the station is not known.
 */
export function loadReferenceData(job: ReferenceRequest): Promise<ReferenceData> {
  if (job.house.weatherYear) return gatherReferenceData(readKept, job);
  const { zip, stationId, elevationFt } = job.house;
  const key = JSON.stringify([zip, stationId, elevationFt]);
  const known = gathered.get(key);
  if (known) return known;
  const gathering = gatherReferenceData(readKept, job);
  gathered.set(key, gathering);
  gathering.catch(() => gathered.delete(key));
  const [oldest] = gathered.keys();
  if (gathered.size > MOST_GATHERED && oldest !== undefined) gathered.delete(oldest);
  return gathering;
}

const readKept: ReadTable = (path, schema) => {
  const known = kept.get(path);
  if (known) return known as ReturnType<typeof readTable<typeof schema>>;
  const reading = readTable(path, schema).catch((thrown: unknown) => {
    kept.delete(path);
    throw thrown;
  });
  kept.set(path, reading);
  return reading;
};

async function readTable<Schema extends z.ZodType>(path: string, schema: Schema): Promise<z.output<Schema> | null> {
  const file = join(/* turbopackIgnore: true */ findTables(), path);
  const text = await readFile(/* turbopackIgnore: true */ file, "utf8").catch((thrown: NodeJS.ErrnoException) => {
    if (thrown.code === "ENOENT") return null;
    throw thrown;
  });
  return text === null ? null : parseTable(path, schema, JSON.parse(text));
}

/** The tables stand in the project: above the working folder, or above this file once bundled. */
function findTables(): string {
  const starts = [
    process.cwd(),
    ...(import.meta.url.startsWith("file:") ? [dirname(fileURLToPath(import.meta.url))] : []),
  ];
  for (const start of starts) {
    for (let folder = start; ; folder = dirname(folder)) {
      const tables = join(folder, TABLES);
      if (existsSync(/* turbopackIgnore: true */ join(tables, "manifest.json"))) return tables;
      if (dirname(folder) === folder) break;
    }
  }
  throw new Error(`The folder ${TABLES} is missing from the project`);
}
