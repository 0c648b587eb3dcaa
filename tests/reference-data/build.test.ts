import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { findDoubtfulStations } from "#lib/reference-data/build/doubtful-stations.ts";
import type { Row } from "#lib/reference-data/build/source-rows.ts";
import { readSite } from "#lib/reference-data/build/station-sites.ts";
import { stationTitle } from "#lib/reference-data/build/station-title.ts";
import { readTowns } from "#lib/reference-data/build/towns.ts";

describe("names of stations", () => {
  it.each([
    ["CHICAGO OHARE INTL AP", "Chicago Ohare International Airport"],
    ["MADISON DANE CO REGIONAL ARPT [ISIS]", "Madison Dane Co Regional Airport"],
    ["KANSAS CITY INT'L ARPT", "Kansas City International Airport"],
    ["SAINT MARY`S (AWOS)", "Saint Mary's"],
    ["EDWARDS AFB", "Edwards AFB"],
  ])("%s is shown as %s", (name, title) => expect(stationTitle(name)).toBe(title));
});

const siteRow = (id: string, north: number, over: Record<string, string> = {}): Row => ({
  tmy3_id: id,
  name: "INVENTED AP",
  state: "IA",
  lat: String(42 + north),
  lon: "-94",
  elev_m: "300",
  pressure_mbar_mean: "977.7",
  ...over,
});

describe("stations to pass over", () => {
  const sites = Array.from({ length: 10 }, (_, at) => readSite(siteRow(`10000${at}`, at / 10)));
  const bin = (id: string, lowF: number, hours: number): Row => ({
    tmy3_id: id,
    month: "11",
    bin_low_F: String(lowF),
    hours: String(hours),
  });
  const sound = sites.map(({ id }) => bin(id, 70, 40));
  const doubtsWith = (...faults: Row[]) =>
    [...findDoubtfulStations(sites, [...sound, ...faults]).keys()].filter((id) => id.startsWith("1000"));

  it("finds a run of hours far above the stations around, though two neighbors have it too", () => {
    expect(doubtsWith()).toEqual([]);
    expect(doubtsWith(bin("100004", 115, 9))).toEqual(["100004"]);
    expect(doubtsWith(bin("100003", 115, 9), bin("100004", 115, 9), bin("100005", 115, 9))).toEqual([
      "100003",
      "100004",
      "100005",
    ]);
  });

  it("lets a hot spell and a few stray hours pass", () => {
    expect(doubtsWith(bin("100004", 95, 9))).toEqual([]);
    expect(doubtsWith(bin("100004", 115, 5))).toEqual([]);
  });
});

describe("the elevation of a station", () => {
  it("iso-2533: an elevation that the mean pressure contradicts is replaced by the one that fits", () => {
    expect(readSite(siteRow("100000", 0)).elevationFt).toBe(984);
    // 794.95 hPa stands at 2,000 m in the standard atmosphere.
    const corrected = readSite(siteRow("100000", 0, { elev_m: "1000", pressure_mbar_mean: "794.95" }));
    expect(Math.abs(corrected.elevationFt - 2000 / 0.3048)).toBeLessThan(3);
  });
});

describe("the elevation of a place", () => {
  it("is that of the town of its name, else of the nearest, else none", () => {
    const folder = mkdtempSync(join(tmpdir(), "towns-"));
    try {
      const town = (name: string, latitude: number, meters: string) =>
        ["1", name, name, "", latitude, "-100", "P", "PPL", "US", "", "NE", "", "", "", "9", "", meters, "", ""].join(
          "\t",
        );
      const file = join(folder, "towns.txt");
      writeFileSync(file, [town("Saint Inventus", 40, "300"), town("Hightown", 40.1, "600")].join("\n"));
      const find = readTowns(file);
      const at = (name: string, latitudeDegrees: number) =>
        find({ name, state: "NE", latitudeDegrees, longitudeDegrees: -100 });
      expect(at("St. Inventus", 40.09)?.elevationFt).toBeCloseTo(300 / 0.3048, 6);
      expect(at("Elsewhere", 40.09)?.elevationFt).toBeCloseTo(600 / 0.3048, 6);
      expect(at("Elsewhere", 40.09)?.distanceMiles).toBeLessThan(1);
      expect(at("Elsewhere", 41)).toBeNull();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
