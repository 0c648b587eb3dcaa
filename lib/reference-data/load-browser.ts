import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseTable, type ReadTable } from "./gather-reference-data.ts";
import { createReferenceLoader } from "./reference-loader.ts";

const NOT_FOUND = 404;

const fetchTable: ReadTable = async (path, schema) => {
  const response = await fetch(`/reference/${path}`).catch(() => null);
  if (response?.status === NOT_FOUND) return null;
  if (!response?.ok)
    throw new InputProblem("reference-missing", [
      {
        pointer: "#/house/zip",
        code: "reference-offline",
        detail: "The weather and prices of this place are not on this device yet",
        fix: "Connect once and open the job again; nothing that you entered is lost.",
      },
    ]);
  return parseTable(path, schema, await response.json());
};

/**
 * What one job needs of the tables, fetched from the app itself: four small files, which a service worker may keep and
 * which are asked for once.
 * @throws InputProblem `reference-missing` when the ZIP code or the station is not known, or when a table is neither on
 * this device nor to be had for want of a connection.
 */
export const fetchReferenceData = createReferenceLoader(fetchTable);
