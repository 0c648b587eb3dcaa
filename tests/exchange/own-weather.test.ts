import { createReadStream, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { createClaim } from "#lib/claims/create-claim.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import type { CommandContext } from "#lib/cli/command.ts";
import { withWeather } from "#lib/cli/with-weather.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { readWeatherFile } from "#lib/exchange/read-weather-file.ts";
import { packWeatherYear } from "#lib/exchange/weather/pack-weather-year.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { unpackWeatherYear } from "#lib/reference-data/unpack-weather-year.ts";
import { exampleDocument, exampleJob } from "#tests/estimate/example-jobs.ts";
import { epwLines, madeHours, tmy3Lines } from "./weather-text.ts";

const HOURS = madeHours();
const RETEST = "mixed-crawlspace-retest.json";
const folder = mkdtempSync(join(tmpdir(), "ductmend-weather-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const yearOf = async (lines: readonly string[]) => packWeatherYear((await readWeatherFile([lines.join("\n")])).climate);

function standing(): CommandContext & { said: string[] } {
  const said: string[] = [];
  return {
    args: [],
    workingFolder: folder,
    readInput: async () => "",
    out: () => {},
    say: (text) => said.push(text),
    said,
  };
}

describe("a weather file of one's own", () => {
  it("keeps its hours and bins in the job, and loses less than its rounding", async () => {
    const { climate } = await readWeatherFile([epwLines(HOURS).join("\n")]);
    const again = unpackWeatherYear(JSON.parse(JSON.stringify(packWeatherYear(climate))));
    expect(again.bins.hours).toEqual(climate.bins.hours);
    expect(again.bins.temperatureF).toEqual(climate.bins.temperatureF);
    expect([again.bins.month, again.bins.shift]).toEqual([climate.bins.month, climate.bins.shift]);
    const furthest = (one: Float64Array, other: Float64Array) =>
      one.reduce((most, each, at) => Math.max(most, Math.abs(each - other[at]!)), 0);
    expect(furthest(again.bins.humidityRatio, climate.bins.humidityRatio)).toBeLessThanOrEqual(0.5e-5 + 1e-12);
    expect(furthest(again.bins.globalIrradianceWPerM2, climate.bins.globalIrradianceWPerM2)).toBeLessThanOrEqual(0.5);
    expect(furthest(again.months.meanTemperatureF, climate.months.meanTemperatureF)).toBeLessThanOrEqual(0.005 + 1e-9);
    expect(again.basis).toBe("weather-file");
  });

  it("stands in for the station: the answer follows it, its hash is in the reference data, either format the same", async () => {
    const [epw, tmy3] = [await yearOf(epwLines(HOURS)), await yearOf(tmy3Lines(HOURS))];
    const job = exampleJob(RETEST);
    const withYear = parseJob({ ...job, house: { ...job.house, weatherYear: epw } });
    const [reference, ofStation] = [await loadReferenceData(withYear), await loadReferenceData(job)];
    expect(reference.station).toMatchObject({ id: "999990", distanceMiles: null });
    expect(reference.hash).not.toBe(ofStation.hash);
    const { title, ...year } = epw;
    const { title: tmy3Title, ...sameYear } = tmy3;
    expect(sameYear).toEqual(year);
    expect([title, tmy3Title].map((each) => each.toLowerCase())).toEqual(
      Array(2).fill(expect.stringContaining("invented town")),
    );
    const [own, station] = [await estimate(withYear, reference), await estimate(job, ofStation)];
    expect(own.place.stationTitle).toBe(title);
    expect(own.savings.costUsdPerYear.value).not.toBe(station.savings.costUsdPerYear.value);
    // Ten degrees colder all year needs more heat.
    const colder = await yearOf(
      epwLines(HOURS.map((hour) => ({ ...hour, dryBulbC: hour.dryBulbC - 10, dewPointC: hour.dewPointC - 10 }))),
    );
    const coldJob = parseJob({ ...job, house: { ...job.house, weatherYear: colder }, energy: { prefer: "building" } });
    const mildJob = parseJob({ ...coldJob, house: withYear.house });
    const need = async (of: typeof job) =>
      (await estimate(of, await loadReferenceData(of))).energy.electricity.beforeKWh.value;
    expect(await need(coldJob)).toBeGreaterThan(await need(mildJob));
  });

  it("comes in on the command line, and a fault is told with its line", async () => {
    writeFileSync(join(folder, "own.epw"), epwLines(HOURS).join("\r\n"));
    const job = exampleJob(RETEST);
    const context = standing();
    const read = await withWeather(job, "own.epw", context);
    expect(read.house.weatherYear).toEqual(await yearOf(epwLines(HOURS)));
    expect(context.said).toEqual([]);
    writeFileSync(join(folder, "bad.epw"), epwLines(HOURS.filter((_, at) => at !== 50)).join("\n"));
    await expect(withWeather(job, "bad.epw", context)).rejects.toThrow("Line 59");
    await expect(withWeather(job, "none.epw", context)).rejects.toThrow(InputProblem);
  });

  it("goes into a claim that anyone can recompute", async () => {
    const job = parseJob({
      ...exampleDocument(RETEST),
      house: { ...exampleJob(RETEST).house, weatherYear: await yearOf(epwLines(HOURS)) },
    });
    const reference = await loadReferenceData(job);
    const claim = createClaim({
      job,
      reference,
      result: await estimate(job, reference, { draws: 50 }),
      claimedBy: "Crew lead B (invented)",
      claimedOn: "2026-11-20",
      measureLifeYears: 18,
      netToGrossRatio: 0.9,
    });
    const outcome = await recomputeClaim(JSON.parse(JSON.stringify(claim)), {
      loadReference: loadReferenceData,
      withDraws: true,
    });
    expect(outcome.outcome).toBe("same");
  });

  it("is refused where hours are missing or columns do not fit", async () => {
    const year = await yearOf(epwLines(HOURS));
    const parseWith = (weatherYear: unknown) => () =>
      parseJob({ ...exampleDocument(RETEST), house: { ...exampleJob(RETEST).house, weatherYear } });
    expect(parseWith({ ...year, hours: year.hours.slice(1) })).toThrow("one entry for each bin");
    expect(parseWith({ ...year, hours: year.hours.map((each, at) => (at === 0 ? each + 1 : each)) })).toThrow(
      "Month 1",
    );
    expect(parseWith({ ...year, elevationFt: "high" })).toThrow();
  });
});

const realFolder = process.env.DUCTMEND_WEATHER_DIR;
const files = realFolder === undefined ? [] : readdirSync(realFolder).filter((name) => /\.(epw|csv)$/i.test(name));

if (realFolder !== undefined)
  describe("a real weather file in a job", () => {
    it.each(files.slice(0, 10))("%s is accepted and answers", async (name) => {
      const { climate } = await readWeatherFile(createReadStream(join(realFolder, name), { encoding: "utf8" }));
      const job = exampleJob(RETEST);
      const own = parseJob({ ...job, house: { ...job.house, weatherYear: packWeatherYear(climate) } });
      const { savings } = await estimate(own, await loadReferenceData(own));
      expect(Number.isFinite(savings.costUsdPerYear.value)).toBe(true);
    });
  });
