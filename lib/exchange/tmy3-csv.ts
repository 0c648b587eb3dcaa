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

/** Source: nrel-tmy3, user's manual: −9900 stands for missing. */
const isMissing = (value: number): boolean => value <= -9900;
const PASCALS_PER_MBAR = 100;

const COLUMNS = {
  dryBulb: { name: "Dry-bulb (C)", label: "Dry-bulb temperature", low: -70, high: 70 },
  dewPoint: { name: "Dew-point (C)", label: "Dew point", low: -70, high: 70 },
  humidity: { name: "RHum (%)", label: "Relative humidity", low: 0, high: 110 },
  pressure: { name: "Pressure (mbar)", label: "Station pressure", low: 310, high: 1200 },
  sun: { name: "GHI (W/m^2)", label: "Global horizontal radiation", low: 0, high: 1500 },
} as const;
type Columns = Record<keyof typeof COLUMNS, Column>;

/**
 * Reads a TMY3 file as comma-separated text, line by line: °C, hours that end at the hour named, local standard time.
 * Columns are found by their names on the second line. Source: nrel-tmy3.
 * @throws InputProblem that names the line and what to do.
 */
export async function readTmy3Csv(first: TextLine, lines: AsyncIterator<TextLine>): Promise<WeatherFile> {
  const site = siteOf(first);
  const head = await lines.next();
  if (head.done)
    throw weatherProblem({
      detail: "The file has no line of column names",
      fix: "The second line of a TMY3 file names the columns; export the file again.",
    });
  return collectYear(site, records(findColumns(head.value), lines));
}

function siteOf({ number, text }: TextLine): WeatherSite {
  const [stationId, name, state, , , , elevation] = cellsOf(text, number);
  return {
    stationId: stationIdOf(stationId),
    stationName: [name, state].filter((part) => part).join(", ") || "Weather file",
    elevationM: elevationIn(elevation, {
      lineNumber: number,
      place: "seventh on the first line",
      fix: "The first line must hold station, name, state, time zone, latitude, longitude, elevation.",
    }),
  };
}

function findColumns({ number, text }: TextLine): Columns {
  const names = cellsOf(text, number);
  const find = (key: keyof typeof COLUMNS): Column => {
    const { name, label, low, high } = COLUMNS[key];
    const index = names.indexOf(name);
    if (index < 0)
      throw weatherProblem({
        lineNumber: number,
        detail: `The column “${name}” is missing`,
        fix: "Export the file with all columns of TMY3, under their own names.",
      });
    return { label, index, low, high, isMissing };
  };
  return {
    dryBulb: find("dryBulb"),
    dewPoint: find("dewPoint"),
    humidity: find("humidity"),
    pressure: find("pressure"),
    sun: find("sun"),
  };
}

async function* records(columns: Columns, lines: AsyncIterator<TextLine>): AsyncGenerator<HourRecord> {
  for (let next = await lines.next(); !next.done; next = await lines.next()) {
    const { number: lineNumber, text } = next.value;
    if (text.trim() === "") continue;
    const cells = cellsOf(text, lineNumber);
    const [month, day] = (cells[0] ?? "").split("/");
    const [hour, minute] = (cells[1] ?? "").split(":");
    if (minute !== "00")
      throw weatherProblem({
        lineNumber,
        detail: `The time must be a full hour such as 01:00, not “${(cells[1] ?? "").slice(0, 20)}”`,
        fix: "Use a file with one line an hour, stamped at the end of the hour.",
      });
    const pressureMbar = valueIn(cells, columns.pressure, lineNumber);
    yield {
      lineNumber,
      month: wholeNumberIn(month, "Month", lineNumber),
      day: wholeNumberIn(day, "Day", lineNumber),
      hour: wholeNumberIn(hour, "Hour", lineNumber),
      dryBulbC: valueIn(cells, columns.dryBulb, lineNumber),
      dewPointC: valueIn(cells, columns.dewPoint, lineNumber),
      relativeHumidityPercent: valueIn(cells, columns.humidity, lineNumber),
      pressurePa: pressureMbar === null ? null : pressureMbar * PASCALS_PER_MBAR,
      globalIrradianceWPerM2: valueIn(cells, columns.sun, lineNumber),
    };
  }
}
