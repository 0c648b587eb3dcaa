import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { z } from "zod";
import { parseTable } from "./gather-reference-data.ts";
import { createReferenceLoader } from "./reference-loader.ts";

const TABLES = "public/reference";
/**
 * What one job needs of the tables, read from the project's own folder.
 * @throws InputProblem `reference-missing` when the ZIP code or the station is not known.
 */
export const loadReferenceData = createReferenceLoader(readTable);

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
