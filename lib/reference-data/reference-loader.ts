import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { gatherReferenceData, type ReadTable, type ReferenceRequest } from "./gather-reference-data.ts";

/** Houses of a batch share ZIP codes; whoever types at one house asks for the same place with every key. */
const MOST_GATHERED = 2000;

/** What a promise gave is kept by its key; what failed is tried again. */
function keep<T>(kept: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
  const known = kept.get(key);
  if (known) return known;
  const making = make();
  kept.set(key, making);
  making.catch(() => kept.delete(key));
  return making;
}

/**
 * Loads what one job needs of the tables and keeps it: tables once read (all of them are 7 MB), and what was put
 * together for a place. A job with a weather year of its own is put together each time.
 */
export function createReferenceLoader(readTable: ReadTable): (job: ReferenceRequest) => Promise<ReferenceData> {
  const tables = new Map<string, Promise<unknown>>();
  const gathered = new Map<string, Promise<ReferenceData>>();
  const readKept: ReadTable = (path, schema) =>
    keep(tables, path, () => readTable(path, schema)) as ReturnType<typeof readTable<typeof schema>>;
  return (job) => {
    if (job.house.weatherYear) return gatherReferenceData(readKept, job);
    const { zip, stationId, elevationFt } = job.house;
    const gathering = keep(gathered, JSON.stringify([zip, stationId, elevationFt]), () =>
      gatherReferenceData(readKept, job),
    );
    const [oldest] = gathered.keys();
    if (gathered.size > MOST_GATHERED && oldest !== undefined) gathered.delete(oldest);
    return gathering;
  };
}
