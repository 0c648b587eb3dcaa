import { createReadStream, readdirSync } from "node:fs";
import { join } from "node:path";
import psychrolib from "psychrolib";
import { describe, expect, it } from "vitest";
import { climateYearFromHours } from "#lib/climate/climate-year-from-hours.ts";
import { meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { readWeatherFile } from "#lib/exchange/read-weather-file.ts";
import { unpackClimate } from "#lib/reference-data/unpack-climate.ts";
import { expectClose } from "#tests/expect-close.ts";
import { stationTables } from "#tests/reference-data/read-table.ts";
import { EPW_FIRST_LINE, epwLines, type MadeHour, madeHours, TMY3_FIRST_LINE, tmy3Lines } from "./weather-text.ts";

/** 0.45359237 kg × 9.80665 m/s² over (0.0254 m)². */
const PASCALS_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;
const HOURS = madeHours();
const read = (lines: readonly string[], end = "\r\n") => readWeatherFile([lines.join(end) + end]);
const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);

async function problemOf(promise: Promise<unknown>): Promise<string> {
  const thrown = await promise.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(thrown).toBeInstanceOf(InputProblem);
  const { errors } = thrown as InputProblem;
  expect(errors[0]).toMatchObject({ pointer: "#/weatherFile", code: "weather-file" });
  expect(errors[0]!.fix.length).toBeGreaterThan(15);
  return errors[0]!.detail;
}

/** The year with one hour changed. */
const changed = (at: number, change: Partial<MadeHour>): MadeHour[] =>
  HOURS.map((hour, index) => (index === at ? { ...hour, ...change } : hour));

describe.each([
  ["EPW", epwLines, EPW_FIRST_LINE, { temperature: 99.9, pressure: 999_999, sun: 9999 }],
  ["TMY3", tmy3Lines, TMY3_FIRST_LINE, { temperature: -9900, pressure: -990_000, sun: -9900 }],
] as const)("a %s file", (_, linesOf, firstLine, missing) => {
  it("gives the climate year of its hours", async () => {
    const { climate, notes } = await read(linesOf(HOURS));
    expect(notes).toEqual([]);
    expect(climate.basis).toBe("weather-file");
    expect(climate.stationId).toBe("999990");
    expect(climate.stationName.toLowerCase()).toContain("invented town");
    expectClose({
      actual: climate.elevationFt,
      expected: 866.14,
      relativeTolerance: 1e-5,
      reason: "264 m at 0.3048 m a foot, five figures",
    });
    psychrolib.SetUnitSystem(psychrolib.IP);
    const expected = climateYearFromHours({
      stationId: "999990",
      stationName: climate.stationName,
      elevationFt: climate.elevationFt,
      stationPressurePa: sum(HOURS.map((hour) => hour.pressurePa)) / 8760,
      temperatureF: HOURS.map((hour) => (hour.dryBulbC * 9) / 5 + 32),
      humidityRatio: HOURS.map((hour) =>
        psychrolib.GetHumRatioFromRelHum((hour.dewPointC * 9) / 5 + 32, 1, hour.pressurePa / PASCALS_PER_PSI),
      ),
      globalIrradianceWPerM2: HOURS.map((hour) => hour.sunWPerM2),
    });
    expect(climate.months).toEqual(expected.months);
    expect(climate.bins.hours).toEqual(expected.bins.hours);
    expect(climate.bins.globalIrradianceWPerM2).toEqual(expected.bins.globalIrradianceWPerM2);
    expectClose({
      actual: climate.stationPressurePa,
      expected: expected.stationPressurePa,
      relativeTolerance: 1e-9,
      reason: "the mean of the same values",
    });
    climate.bins.humidityRatio.forEach((ratio, bin) => {
      expectClose({
        actual: ratio,
        expected: expected.bins.humidityRatio[bin]!,
        relativeTolerance: 1e-3,
        reason: "psychrolib, at the triple point the two switch from ice to water at slightly different temperatures",
      });
    });
  });

  it("reads the same from pieces of any size, from any line end, with a byte order mark", async () => {
    const whole = await read(linesOf(HOURS));
    const text = `\uFEFF${linesOf(HOURS).join("\n")}`;
    for (const size of [11, 4096]) {
      const pieces = Array.from({ length: Math.ceil(text.length / size) }, (__, piece) =>
        text.slice(piece * size, (piece + 1) * size),
      );
      expect((await readWeatherFile(pieces)).climate).toEqual(whole.climate);
    }
  });

  it("fills short gaps on a straight line and says how many hours", async () => {
    const withGap = HOURS.map((hour, at) =>
      at >= 1000 && at < 1004 ? { ...hour, dryBulbC: missing.temperature } : hour,
    );
    const { climate, notes } = await read(linesOf(withGap));
    expect(sum(climate.bins.hours)).toBe(8760);
    expect(notes.map((note) => note.code)).toEqual(["weather-hours-filled"]);
    expect(notes[0]!.what).toContain("4 hours");
    const filledMean = meanOfHours(climate.bins)[1]!;
    expect(Math.abs(filledMean - meanOfHours((await read(linesOf(HOURS))).climate.bins)[1]!)).toBeLessThan(0.3);
  });

  it("refuses a gap of seven hours, at the line where it begins", async () => {
    const withGap = HOURS.map((hour, at) => (at >= 1000 && at < 1007 ? { ...hour, sunWPerM2: missing.sun } : hour));
    expect(await problemOf(read(linesOf(withGap)))).toMatch(`Line ${firstLine + 1000}: Sun`);
  });

  it("takes the elevation's standard pressure where none was measured", async () => {
    const { climate } = await read(linesOf(HOURS.map((hour) => ({ ...hour, pressurePa: missing.pressure }))));
    expectClose({
      actual: climate.stationPressurePa,
      expected: 98_192,
      relativeTolerance: 2e-4,
      reason: "iso-2533 table: 98,199 Pa at 263 m and 98,187 at 264 m, read to 10 Pa",
    });
  });

  it.each([
    ["an hour left out", HOURS.filter((__, at) => at !== 50), 50, "Expected the hour that ends at 3:00 of 1/3"],
    ["an hour twice", [...HOURS.slice(0, 51), HOURS[50]!, ...HOURS.slice(51)], 51, "Expected the hour"],
    ["the hours of daylight saving", changed(2000, { hour: HOURS[2000]!.hour + 1 }), 2000, "Expected the hour"],
    ["a temperature that cannot be", changed(30, { dryBulbC: 71 }), 30, "between -70 and 70"],
    ["a dew point above the air", changed(30, { dewPointC: HOURS[30]!.dryBulbC + 3 }), 30, "above the air"],
    ["a pressure in other units", changed(30, { pressurePa: 980 }), 30, "Station pressure"],
    ["a word for a number", changed(30, { sunWPerM2: Number.NaN }), 30, "must be a number"],
    ["a thirteenth month", changed(30, { month: 13 }), 30, "Expected the hour"],
  ])("refuses %s, with the line", async (__, hours, at, words) => {
    const detail = await problemOf(read(linesOf(hours)));
    expect(detail).toContain(`Line ${firstLine + at}: `);
    expect(detail).toContain(words);
  });

  it("refuses a file that ends early or goes on into another year", async () => {
    expect(await problemOf(read(linesOf(HOURS.slice(0, 4000))))).toContain("4,000 hours");
    expect(await problemOf(read(linesOf([...HOURS, HOURS[0]!])))).toContain(`Line ${firstLine + 8760}`);
  });

  it("leaves a leap day out and says so", async () => {
    const leap = HOURS.slice(0, 24).map((hour) => ({ ...hour, month: 2, day: 29 }));
    const end = (31 + 28) * 24;
    const { climate, notes } = await read(linesOf([...HOURS.slice(0, end), ...leap, ...HOURS.slice(end)]));
    expect(notes.map((note) => note.code)).toEqual(["leap-day-left-out"]);
    expect(climate).toEqual((await read(linesOf(HOURS))).climate);
  });
});

describe("either format", () => {
  it("gives the same year for the same hours", async () => {
    const [epw, tmy3] = await Promise.all([read(epwLines(HOURS)), read(tmy3Lines(HOURS))]);
    expect({ ...epw.climate, stationName: "" }).toEqual({ ...tmy3.climate, stationName: "" });
  });

  it("uses relative humidity where the dew point is missing", async () => {
    const humid = epwLines(HOURS).map((line, at) =>
      at < EPW_FIRST_LINE - 1 ? line : line.replace(/,[^,]+,999,/, ",99.9,100,"),
    );
    const { climate } = await read(humid);
    const saturated = await read(epwLines(HOURS.map((hour) => ({ ...hour, dewPointC: hour.dryBulbC }))));
    expect(climate.bins.humidityRatio).toEqual(saturated.climate.bins.humidityRatio);
  });

  it.each([
    ["an empty file", [], "empty"],
    ["another kind of text", ["Dear all,"], "begins neither"],
    ["an EPW file without its elevation", ["LOCATION,A,B,C,D,1,2,3,4"], "elevation"],
    ["an EPW file cut in its head", epwLines([]).slice(0, 4), "DATA PERIODS"],
    [
      "two records an hour",
      epwLines(HOURS).map((line) => line.replace("PERIODS,1,1", "PERIODS,1,2")),
      "2 records an hour",
    ],
    [
      "a TMY3 file without a column",
      tmy3Lines(HOURS).map((line) => line.replace("Dew-point (C)", "Dew")),
      "Dew-point (C)",
    ],
    ["half hours", tmy3Lines(HOURS).map((line) => line.replace("05:00", "05:30")), "full hour"],
    ["a line without an end", ["x".repeat(200_000)], "too long"],
  ])("refuses %s", async (_, lines, words) => {
    expect(await problemOf(readWeatherFile([lines.join("\n")]))).toContain(words);
  });
});

const folder = process.env.DUCTMEND_WEATHER_DIR;
const files = folder === undefined ? [] : readdirSync(folder).filter((name) => /\.(epw|csv)$/i.test(name));

if (folder !== undefined)
  describe("real weather files", () => {
    it("are there", () => expect(files.length).toBeGreaterThan(0));

    it.each(files.slice(0, 50))(
      "%s reads, and agrees with the tables where it is one of their stations",
      async (name) => {
        const { climate } = await readWeatherFile(createReadStream(join(folder, name), { encoding: "utf8" }));
        expect(sum(climate.bins.hours)).toBe(8760);
        const table = stationTables.find((each) => each.stationId === climate.stationId);
        if (!table || !/TY.?\.csv$/i.test(name)) return;
        const known = unpackClimate(table);
        expect(climate.bins.hours).toEqual(known.bins.hours);
        climate.months.meanTemperatureF.forEach((meanF, month) => {
          expect(Math.abs(meanF - known.months.meanTemperatureF[month]!)).toBeLessThan(0.1);
        });
      },
    );
  });
