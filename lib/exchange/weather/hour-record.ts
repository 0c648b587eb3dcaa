import { parse } from "csv-parse/browser/esm/sync";
import { weatherProblem } from "./weather-problem.ts";

/** One hour of a weather file, ending at `hour` of local standard time; null where the file says that it is missing. */
export interface HourRecord {
  lineNumber: number;
  month: number;
  day: number;
  /** 1 to 24. */
  hour: number;
  dryBulbC: number | null;
  dewPointC: number | null;
  relativeHumidityPercent: number | null;
  pressurePa: number | null;
  globalIrradianceWPerM2: number | null;
}

/** What the head of a weather file says of its place. */
export interface WeatherSite {
  stationId: string;
  stationName: string;
  elevationM: number;
}

/** A column: its name, the values that can be true, and from where on (or up to where) a value means missing. */
export interface Column {
  label: string;
  index: number;
  low: number;
  high: number;
  isMissing: (value: number) => boolean;
}

/** The values of a line of comma-separated text. Only headers have quotes, so the rest is split plainly. */
export function cellsOf(text: string, lineNumber: number): string[] {
  if (!text.includes('"')) return text.split(",").map((cell) => cell.trim());
  try {
    const [cells] = parse(text, { trim: true }) as string[][];
    return cells ?? [];
  } catch {
    throw weatherProblem({
      lineNumber,
      detail: "The quotes do not match",
      fix: "Export the file again, or close the open quote.",
    });
  }
}

/** A whole number in a cell, such as a month. */
export function wholeNumberIn(cell: string | undefined, label: string, lineNumber: number): number {
  const value = Number(cell);
  if (cell !== undefined && cell !== "" && Number.isInteger(value)) return value;
  throw weatherProblem({
    lineNumber,
    detail: `${label} must be a whole number, not “${(cell ?? "").slice(0, 40)}”`,
    fix: "Check that the file is a weather file with one line an hour, and export it again.",
  });
}

/** The value of a column, null when the file marks it as missing. */
export function valueIn(cells: readonly string[], column: Column, lineNumber: number): number | null {
  const cell = cells[column.index];
  if (cell === undefined || cell === "") return null;
  const value = Number(cell);
  if (!Number.isFinite(value))
    throw weatherProblem({
      lineNumber,
      detail: `${column.label} must be a number, not “${cell.slice(0, 40)}”`,
      fix: "Correct the value, or mark it as missing the way the format does.",
    });
  if (column.isMissing(value)) return null;
  if (!(value >= column.low && value <= column.high))
    throw weatherProblem({
      lineNumber,
      detail: `${column.label} of ${value} cannot be; it must lie between ${column.low} and ${column.high}`,
      fix: "Correct the value, or mark it as missing the way the format does.",
    });
  return value;
}

/** A station's id as documents hold it: six digits where there are some, else a plain word. */
export const stationIdOf = (text: string | undefined): string => {
  const plain = (text ?? "").replace(/[^A-Za-z0-9._-]/g, "").slice(0, 40);
  return /^[A-Za-z0-9]/.test(plain) ? plain : "weather-file";
};

/** Lower than any place on land, and higher than any town of the country. From memory. */
const ELEVATIONS_M = { low: -450, high: 5000 };

/**
 * The station's height out of its cell, in meters.
 * @throws InputProblem that names the line and what it must hold.
 */
export function elevationIn(
  cell: string | undefined,
  { lineNumber, place, fix }: { lineNumber: number; place: string; fix: string },
): number {
  const elevationM = Number(cell);
  if (cell === undefined || cell === "" || !(elevationM > ELEVATIONS_M.low && elevationM < ELEVATIONS_M.high))
    throw weatherProblem({
      lineNumber,
      detail: `The elevation, ${place}, must be a number of meters, not “${cell ?? ""}”`,
      fix,
    });
  return elevationM;
}
