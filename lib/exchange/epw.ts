import type { TextLine } from "./text-lines.ts";
import { collectYear, type WeatherFile } from "./weather/collect-year.ts";
import {
  type Column,
  cellsOf,
  elevationIn,
  type HourRecord,
  stationIdOf,
  valueIn,
  type WeatherSite,
  wholeNumberIn,
} from "./weather/hour-record.ts";
import { weatherProblem } from "./weather/weather-problem.ts";

/** The eight lines before the hours. */
const LAST_HEADER = "DATA PERIODS";
const MOST_HEADERS = 40;

/** Columns after year, month, day, hour, minute and flags. Source: epw-format. */
const COLUMNS = {
  dryBulb: { label: "Dry-bulb temperature", index: 6, low: -70, high: 70, isMissing: (value) => value >= 99.9 },
  dewPoint: { label: "Dew point", index: 7, low: -70, high: 70, isMissing: (value) => value >= 99.9 },
  humidity: { label: "Relative humidity", index: 8, low: 0, high: 110, isMissing: (value) => value >= 999 },
  pressure: { label: "Station pressure", index: 9, low: 31_000, high: 120_000, isMissing: (value) => value >= 999_999 },
  sun: { label: "Global horizontal radiation", index: 13, low: 0, high: 1500, isMissing: (value) => value >= 9999 },
} as const satisfies Record<string, Column>;

/**
 * Reads an EnergyPlus weather file (EPW), line by line: °C, hours that end at the hour named, local standard time.
 * Valid for one data period of a whole year with one record an hour. Source: epw-format.
 * @throws InputProblem that names the line and what to do.
 */
export async function readEpw(first: TextLine, lines: AsyncIterator<TextLine>): Promise<WeatherFile> {
  const site = siteOf(first);
  await skipHeaders(lines);
  return collectYear(site, records(lines));
}

function siteOf({ number, text }: TextLine): WeatherSite {
  const [, city, region, , , stationId, , , , elevation] = cellsOf(text, number);
  return {
    stationId: stationIdOf(stationId),
    stationName: [city, region].filter((part) => part).join(", ") || "Weather file",
    elevationM: elevationIn(elevation, {
      lineNumber: number,
      place: "last on the LOCATION line",
      fix: "Complete the line: LOCATION, city, state, country, source, station, latitude, longitude, time zone, elevation.",
    }),
  };
}

async function skipHeaders(lines: AsyncIterator<TextLine>): Promise<void> {
  for (let count = 0; count < MOST_HEADERS; count += 1) {
    const { value, done } = await lines.next();
    if (done) break;
    if (!value.text.toUpperCase().startsWith(LAST_HEADER)) continue;
    const [, periods, perHour] = cellsOf(value.text, value.number);
    if (periods === "1" && perHour === "1") return;
    throw weatherProblem({
      lineNumber: value.number,
      detail: `The file has ${periods} data periods and ${perHour} records an hour; one of each can be read`,
      fix: "Use a file with one period of a whole year and one record an hour.",
    });
  }
  throw weatherProblem({
    detail: `The line ${LAST_HEADER} is missing from the head of the file`,
    fix: "Export the weather file again; its head has eight lines from LOCATION to DATA PERIODS.",
  });
}

async function* records(lines: AsyncIterator<TextLine>): AsyncGenerator<HourRecord> {
  for (let next = await lines.next(); !next.done; next = await lines.next()) {
    const { number: lineNumber, text } = next.value;
    if (text.trim() === "") continue;
    const cells = cellsOf(text, lineNumber);
    yield {
      lineNumber,
      month: wholeNumberIn(cells[1], "Month", lineNumber),
      day: wholeNumberIn(cells[2], "Day", lineNumber),
      hour: wholeNumberIn(cells[3], "Hour", lineNumber),
      dryBulbC: valueIn(cells, COLUMNS.dryBulb, lineNumber),
      dewPointC: valueIn(cells, COLUMNS.dewPoint, lineNumber),
      relativeHumidityPercent: valueIn(cells, COLUMNS.humidity, lineNumber),
      pressurePa: valueIn(cells, COLUMNS.pressure, lineNumber),
      globalIrradianceWPerM2: valueIn(cells, COLUMNS.sun, lineNumber),
    };
  }
}
