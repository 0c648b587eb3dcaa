import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { standardPressure } from "#lib/air/air-density.ts";
import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { textHash } from "#lib/hash/sha256.ts";
import { unpackClimate } from "#lib/reference-data/unpack-climate.ts";
import { TMY3_YEARS } from "#tests/climate/tmy3-years.ts";
import {
  energy,
  manifest,
  readText,
  stationIndex,
  stationTables,
  TABLES_FOLDER,
  zipRows,
  zipTables,
} from "./read-table.ts";

const stationOf = (id: string) => stationTables.find((table) => table.stationId === id)!;
const zipOf = (zip: string) => zipRows.find((row) => row[0] === zip)!;

describe("the manifest of the tables", () => {
  it("names every file with the SHA-256 of its content, and no other", () => {
    const onDisk = (readdirSync(TABLES_FOLDER, { recursive: true }) as string[])
      .filter((path) => path.endsWith(".json") && path !== "manifest.json")
      .sort();
    expect(onDisk.length).toBeGreaterThan(1900);
    expect(Object.keys(manifest.files)).toEqual(onDisk);
    const changed = onDisk.filter((path) => textHash(readText(path)) !== manifest.files[path]);
    expect(changed).toEqual([]);
  });

  it("holds one digest over all, made from the lines that sha256sum prints", () => {
    const lines = Object.entries(manifest.files).map(([path, digest]) => `${digest}  ${path}\n`);
    expect(textHash(lines.join(""))).toBe(manifest.tablesHash);
    expect(textHash(`${lines.join("")}\n`)).not.toBe(manifest.tablesHash);
  });

  it("stays small: a job needs four files, none over 90 kB", () => {
    const largest = Math.max(...Object.keys(manifest.files).map((path) => Buffer.byteLength(readText(path))));
    expect(largest).toBeLessThan(90_000);
  });
});

describe("typical years", () => {
  it("nrel-tmy3: 1,011 sites, each in the index", () => {
    expect(stationTables).toHaveLength(1011);
    expect(stationIndex.rows.map(([id]) => id).sort()).toEqual(stationTables.map((table) => table.stationId).sort());
    expect(new Set(stationIndex.rows.map((row) => row[2])).size).toBe(50);
  });

  it("every month of every site has its days times 24 hours, each shift a third of them", () => {
    const wrong = stationTables.filter((table) => {
      const { bins } = unpackClimate(table);
      const hours = new Map<string, number>();
      bins.hours.forEach((each, bin) => {
        const key = `${bins.month[bin]} ${bins.shift[bin]}`;
        hours.set(key, (hours.get(key) ?? 0) + each);
      });
      return !DAYS_IN_MONTH.every((days, month) =>
        [1, 2, 3].every((shift) => hours.get(`${month + 1} ${shift}`) === days * 8),
      );
    });
    expect(wrong.map((table) => table.title)).toEqual([]);
  });

  it("a month's mean from the bins is within 1 °F of the tabulated one, at every site", () => {
    const misses = stationTables.flatMap((table) =>
      meanOfHours(unpackClimate(table).bins).map((meanF, month) => Math.abs(meanF - table.meanTemperatureF[month]!)),
    );
    expect(misses).toHaveLength(1011 * 12);
    expect(Math.max(...misses)).toBeLessThan(1);
    expect(Math.max(...misses)).toBeGreaterThan(0.05);
  });

  it.each(TMY3_YEARS.map((year) => [year.stationName, year] as const))(
    "nrel-tmy3 %s: unpacked, it is the year that a separate program made from the hours",
    (_, year) => {
      const unpacked = unpackClimate(stationOf(year.stationId));
      expect({ ...unpacked.bins }).toEqual({ ...year.bins });
      expect({ ...unpacked.months }).toEqual({ ...year.months });
      expect(unpacked.design).toEqual(year.design);
      expect(unpacked.stationPressurePa).toBeCloseTo(year.stationPressurePa, 6);
      expect(Math.abs(unpacked.elevationFt - year.elevationFt)).toBeLessThanOrEqual(0.5);
    },
  );

  it("iso-2533: the mean pressure of every site fits its elevation within 2 %", () => {
    const shares = stationTables.map((table) => table.stationPressurePa / standardPressure(table.elevationFt));
    expect(Math.min(...shares)).toBeGreaterThan(0.98);
    expect(Math.max(...shares)).toBeLessThan(1.02);
  });

  it("noaa-normals-1991-2020 O'Hare: January 25.2 and July 75.4 °F, as NOAA published", () => {
    const { normals } = stationOf("725300");
    expect(normals?.meanTemperatureF[0]).toBe(25.2);
    expect(normals?.meanTemperatureF[6]).toBe(75.4);
    expect(normals?.distanceMiles).toBeLessThan(5);
  });

  it("noaa-normals-1991-2020: the middle of maximum and minimum is the mean within its rounding", () => {
    const withNormals = stationTables.flatMap((table) => table.normals ?? []);
    expect(withNormals.length).toBeGreaterThan(200);
    const misses = withNormals.flatMap((normals) =>
      normals.meanTemperatureF.map((meanF, month) =>
        Math.abs((normals.meanDailyMaximumF[month]! + normals.meanDailyMinimumF[month]!) / 2 - meanF),
      ),
    );
    expect(Math.max(...misses)).toBeLessThan(0.151);
  });

  it("years beside normals are on average about 1 °F cooler than 1991-2020, as climate warmed", () => {
    const gaps = stationTables.flatMap((table) =>
      (table.normals?.meanTemperatureF ?? []).map(
        (meanF, month) => meanF - (table.meanDailyMaximumF[month]! + table.meanDailyMinimumF[month]!) / 2,
      ),
    );
    const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
    expect(mean).toBeGreaterThan(0.7);
    expect(mean).toBeLessThan(1.4);
  });

  it("passes over years with impossible hours and headers, and only a few", () => {
    const doubted = Object.keys(stationIndex.doubts);
    // 431 hours above 120 °F in southeast Alaska; 71 in the Yukon delta; 120 °F in an Iowa November.
    expect(doubted).toEqual(expect.arrayContaining(["703884", "703407", "725484"]));
    expect(doubted.length).toBeLessThan(20);
    const hottestF = (id: string) => Math.max(...unpackClimate(stationOf(id)).bins.temperatureF);
    expect(hottestF("703884")).toBeGreaterThan(134);
    // 134 °F at Death Valley in 1913 is the highest ever accepted.
    const trusted = stationTables.filter((table) => !doubted.includes(table.stationId));
    expect(Math.max(...trusted.map((table) => hottestF(table.stationId)))).toBeLessThan(134);
  });
});

describe("places", () => {
  it("geonames: 40,977 ZIP codes in 50 states and the District of Columbia, each in the file of its first three digits", () => {
    expect(zipRows).toHaveLength(40977);
    expect(new Set(zipRows.map((row) => row[0])).size).toBe(40977);
    expect(new Set(zipRows.map((row) => row[2])).size).toBe(51);
    for (const [area, table] of zipTables) expect(table.rows.every(([zip]) => zip.startsWith(area))).toBe(true);
  });

  it.each([
    ["60601", "Cook, IL", "5A"],
    ["85001", "Maricopa, AZ", "2B"],
    ["97201", "Multnomah, OR", "4C"],
    ["78701", "Travis, TX", "2A"],
    ["33101", "Miami-Dade, FL", "1A"],
  ])("doe-zones: ZIP %s (%s) lies in zone %s", (zip, _, zone) => {
    expect(zipOf(zip)[5]).toBe(zone);
  });

  it("every grid subregion and state of a ZIP or station has its figures", () => {
    const places = [...zipRows.map((row) => [row[2], row[6]]), ...stationIndex.rows.map((row) => [row[2], row[7]])];
    expect(places.filter(([state, subregion]) => !energy.prices[state!] || !energy.egrid[subregion!])).toEqual([]);
  });

  it.each([
    ["80461", "Leadville", 10_152],
    ["80202", "Denver", 5280],
    ["96161", "Truckee", 5817],
    ["86001", "Flagstaff", 6910],
    ["70112", "New Orleans", 3],
  ])("ZIP %s: %s lies at about %i ft, as commonly published", (zip, _, publishedFt) => {
    expect(Math.abs(zipOf(zip)[7]! - publishedFt)).toBeLessThan(120);
  });

  it("most ZIP codes have an elevation, and every one lies between Death Valley and the highest town", () => {
    const elevationsFt = zipRows.flatMap((row) => row[7] ?? []);
    expect(elevationsFt.length / zipRows.length).toBeGreaterThan(0.85);
    expect(Math.min(...elevationsFt)).toBeGreaterThan(-290);
    expect(Math.max(...elevationsFt)).toBeLessThan(10_800);
  });
});

describe("energy", () => {
  it("eia-prices: 2023 electricity of California 29.51 and Hawaii 42.39 cents, as published", () => {
    expect(energy.prices.CA![0]).toBe(0.2951);
    expect(energy.prices.HI![0]).toBe(0.4239);
    expect(Object.keys(energy.prices)).toHaveLength(51);
  });

  it("egrid-2023 rev 2: CAMX 429.983 and RFCE 599.17 lb/MWh, as a second copy has them; non-baseload is the dirtier", () => {
    expect(energy.egrid.CAMX![1]).toBe(429.983);
    expect(energy.egrid.RFCE![1]).toBe(599.17);
    expect(Object.keys(energy.egrid)).toHaveLength(27);
    for (const [, average, nonBaseload] of Object.values(energy.egrid)) expect(nonBaseload).toBeGreaterThan(average);
  });

  it("eia-co2: gas 11.7 lb/therm, propane 12.7 and heating oil 22.4 lb/gal", () => {
    expect(energy.fuels).toEqual({ naturalGasLbPerTherm: 11.7, propaneLbPerGallon: 12.7, fuelOilLbPerGallon: 22.4 });
  });
});
