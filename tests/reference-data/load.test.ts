import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { packWeatherYear } from "#lib/exchange/weather/pack-weather-year.ts";
import { CREDITS } from "#lib/reference-data/credits.ts";
import { fetchReferenceData } from "#lib/reference-data/load-browser.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";
import { zipRows, zipTables } from "./read-table.ts";

const at = (zip: string) => loadReferenceData({ house: { zip } });

async function problemOf(promise: Promise<unknown>): Promise<InputProblem> {
  const thrown = await promise.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(thrown).toBeInstanceOf(InputProblem);
  return thrown as InputProblem;
}

describe("reference data of a ZIP code", () => {
  it("Chicago: O'Hare or Midway weather at the level of 1991-2020, prices and carbon of Illinois", async () => {
    const data = await at("60601");
    expect(data.place).toMatchObject({ zip: "60601", state: "IL", climateZone: "5A", egridSubregion: "RFCW" });
    expect(data.station.title).toContain("Chicago");
    expect(data.station.isChosenByRule).toBe(true);
    expect(data.climate.basis).toBe("tmy3-at-1991-2020-normals");
    expect(data.prices.electricityUsdPerKWh.value).toBe(0.1571);
    expect(data.prices.naturalGasUsdPerTherm.value).toBe(1.085);
    expect(data.carbon.electricityAverageLbPerKWh.value).toBeCloseTo(0.916054, 9);
    expect(data.carbon.electricityNonBaseloadLbPerKWh.value).toBeCloseTo(1.7679, 9);
    expect(data.carbon.naturalGasLbPerTherm.value).toBe(11.7);
  });

  it("noaa-normals-1991-2020: at O'Hare the year comes moved to the published means, within the bins' width", async () => {
    const { climate, normals } = await loadReferenceData({ house: { stationId: "725300" } });
    const months = meanOfHours(climate.bins);
    // The hours' mean and the middle of the extremes differ a little; the means are published as the latter.
    expect(Math.abs(months[0]! - 25.2)).toBeLessThan(1.5);
    expect(Math.abs(months[6]! - 75.4)).toBeLessThan(1.5);
    expect(normals?.monthlyShiftF).toHaveLength(12);
  });

  it("a mountain ZIP takes a station of like height, and the job's own elevation comes first", async () => {
    const leadville = await at("80461");
    expect(leadville.climate.elevationFt).toBeGreaterThan(9000);
    const low = await loadReferenceData({ house: { zip: "80461", elevationFt: 5200 } });
    expect(low.place.elevation).toMatchObject({ value: 5200, source: { sourceId: "practice" } });
    expect(low.climate.elevationFt).toBeLessThan(7000);
  });

  it("a station that the job names goes before the rule's choice, which stays among the others", async () => {
    const chosen = await at("60601");
    const named = await loadReferenceData({ house: { zip: "60601", stationId: "722020" } });
    expect(named.station).toMatchObject({ id: "722020", isChosenByRule: false });
    expect(named.station.title).toContain("Miami");
    expect(named.station.alternatives.map((each) => each.id)).toContain(chosen.station.id);
    expect(named.warnings.map((each) => each.code)).toContain("station-far");
  });

  it("a station alone is a place too, and says whose prices these are", async () => {
    const data = await loadReferenceData({ house: { stationId: "722780" } });
    expect(data.place).toMatchObject({ zip: null, state: "AZ", climateZone: "2B", egridSubregion: "AZNM" });
    expect(data.station.distanceMiles).toBe(0);
    expect(data.warnings.map((each) => each.code)).toContain("place-from-station");
  });

  it("warns of a named station with faulty hours, of height, and of an unknown elevation", async () => {
    const codes = async (house: Parameters<typeof loadReferenceData>[0]["house"]) =>
      (await loadReferenceData({ house })).warnings.map((each) => each.code);
    expect(await codes({ stationId: "703884" })).toContain("station-doubtful");
    expect(await codes({ zip: "80461", stationId: "725650" })).toContain("station-height");
    const withoutTown = zipRows.find((row) => row[7] === null)!;
    expect(await codes({ zip: withoutTown[0] })).toContain("elevation-unknown");
    expect(await codes({ zip: withoutTown[0], elevationFt: 900 })).not.toContain("elevation-unknown");
  });

  it("a year from the job's own weather file stands in for the station", async () => {
    const weatherYear = { ...packWeatherYear(OHARE), stationId: "own", title: "Own file" };
    const data = await loadReferenceData({ house: { zip: "53711", weatherYear } });
    expect(data.climate.basis).toBe("weather-file");
    expect(data.climate.bins.hours).toEqual(OHARE.bins.hours);
    expect(data.station).toMatchObject({ id: "own", distanceMiles: null });
    expect(data.normals).toBeNull();
    expect(data.prices.electricityUsdPerKWh.value).toBe(0.1688);
    expect(data.hash).not.toBe((await at("53711")).hash);
  });

  it("one ZIP code of every area resolves, with a station", async () => {
    const firsts = [...zipTables.values()].map((table) => table.rows[0]![0]);
    expect(firsts.length).toBeGreaterThan(900);
    for (const zip of firsts) {
      const data = await at(zip);
      expect(data.climate.bins.hours.reduce((sum, hours) => sum + hours, 0)).toBe(8760);
      expect(Number.isFinite(data.station.distanceMiles)).toBe(true);
    }
  });
});

describe("its hash", () => {
  it("is the same for the same job, and another where anything used is another", async () => {
    const [first, again, otherZip, otherHeight, otherStation] = await Promise.all([
      at("53711"),
      at("53711"),
      at("53703"),
      loadReferenceData({ house: { zip: "53711", elevationFt: 1000 } }),
      loadReferenceData({ house: { zip: "53711", stationId: "726400" } }),
    ]);
    expect(first.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(again.hash).toBe(first.hash);
    expect(new Set([first, otherZip, otherHeight, otherStation].map((data) => data.hash)).size).toBe(4);
  });
});

describe("the browser", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("gets the same data and hash as the server, from four small files", async () => {
    const asked: string[] = [];
    vi.stubGlobal("fetch", async (path: string) => {
      asked.push(path);
      return new Response(await readFile(join(import.meta.dirname, "../../public", path)));
    });
    const fetched = await fetchReferenceData({ house: { zip: "77008" } });
    expect(fetched).toEqual(await at("77008"));
    expect(asked.sort()).toEqual([
      "/reference/energy.json",
      `/reference/station/${fetched.station.id}.json`,
      "/reference/stations.json",
      "/reference/zip/770.json",
    ]);
  });

  it("says what to do without a connection, and does not take a missing area for one", async () => {
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("offline")));
    // A place that was not asked for before: what was fetched once needs no connection.
    const offline = await problemOf(fetchReferenceData({ house: { zip: "60601" } }));
    await fetchReferenceData({ house: { zip: "77008" } });
    expect(offline.errors[0]).toMatchObject({
      code: "reference-offline",
      fix: expect.stringContaining("Connect once"),
    });
    vi.stubGlobal("fetch", async (path: string) =>
      path.includes("/zip/")
        ? new Response("", { status: 404 })
        : new Response(await readFile(join(import.meta.dirname, "../../public", path))),
    );
    const unknown = await problemOf(fetchReferenceData({ house: { zip: "00000" } }));
    expect(unknown.errors[0]).toMatchObject({ code: "reference-missing", pointer: "#/house/zip" });
  });
});

describe("what is not in the tables", () => {
  it.each(["00000", "53700", "00601"])("ZIP %s is refused with pointer and repair", async (zip) => {
    const problem = await problemOf(at(zip));
    expect(problem.code).toBe("reference-missing");
    expect(problem.errors[0]).toMatchObject({ pointer: "#/house/zip", code: "reference-missing" });
    expect(problem.errors[0]!.fix).toContain("name a weather station");
  });

  it("an unknown station is refused with pointer and repair", async () => {
    const problem = await problemOf(loadReferenceData({ house: { zip: "53711", stationId: "999999" } }));
    expect(problem.errors[0]).toMatchObject({ pointer: "#/house/stationId" });
    expect(problem.errors[0]!.fix).toContain("ZIP code");
  });
});

describe("credits", () => {
  it("name every source, GeoNames with its license and link", () => {
    const geonames = CREDITS.find((credit) => credit.sourceId === "geonames")!;
    expect(geonames.license).toContain("Creative Commons Attribution 4.0");
    expect(geonames.link).toBe("https://www.geonames.org/");
    const known = new Set(SOURCES.map((source) => source.id));
    expect(CREDITS.every((credit) => known.has(credit.sourceId))).toBe(true);
    for (const who of ["GeoNames", "NREL", "NOAA", "EIA", "EPA", "DOE", "PNNL"])
      expect(CREDITS.some((credit) => credit.text.includes(who))).toBe(true);
  });
});
