import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import { numberOfCell, rawRows, refuseFile } from "../csv/raw-rows.ts";
import { plainName } from "../csv/row-columns.ts";
import { rowProblem } from "../csv/row-problem.ts";
import { dayNumberOf } from "./day-number.ts";

/** Mean outdoor temperature in °F by day, counted from 1970-01-01. */
export type DailyTemperatures = ReadonlyMap<number, number>;

const DATE_NAMES = ["date", "day"].map(plainName);
const FAHRENHEIT_NAMES = ["meanF", "mean °F", "tavgF", "temperatureF"].map(plainName);
const CELSIUS_NAMES = ["meanC", "mean °C", "tavgC", "temperatureC"].map(plainName);
const COLUMNS_SAID = "date and meanF (or meanC)";
/** Colder and warmer has not been measured in the United States as the mean of a day. From memory. */
const LEAST_F = -80;
const MOST_F = 130;
const MOST_DAYS = 8000;
const MOST_PROBLEMS_TOLD = 50;
/** A mean without this share of its days is none. Source: practice. */
const LEAST_DAYS_SHARE = 0.9;

const fahrenheitOf = (celsius: number): number => celsius * 1.8 + 32;

/**
 * Daily mean temperatures from comma-separated text: date (as 2026-01-15) and meanF or meanC, one day a row; other columns
 * are passed over. Either all of it is good, or nothing of it is taken.
 * @throws InputProblem that names each line and column, what is wrong and what is allowed.
 */
export function readDailyTemperatures(text: string): DailyTemperatures {
  const [head, ...body] = rawRows(text);
  if (head === undefined) refuseFile(1, "The file is empty", `The first line names the columns: ${COLUMNS_SAID}.`);
  if (body.length > MOST_DAYS) refuseFile(MOST_DAYS + 2, `${body.length} days are too many`, "Keep the last years.");
  const names = head.record.map(plainName);
  const dateAt = names.findIndex((name) => DATE_NAMES.includes(name));
  const isCelsius = !names.some((name) => FAHRENHEIT_NAMES.includes(name));
  const meanAt = names.findIndex((name) => (isCelsius ? CELSIUS_NAMES : FAHRENHEIT_NAMES).includes(name));
  if (dateAt < 0 || meanAt < 0)
    refuseFile(1, `The columns ${COLUMNS_SAID} are not both there`, "Name the columns so; the unit is in the name.");
  const days = new Map<number, number>();
  const problems: FieldProblem[] = [];
  for (const { record, info } of body) {
    const [date, mean] = [record[dateAt] ?? "", record[meanAt] ?? ""];
    const day = /^\d{4}-\d{2}-\d{2}$/.test(date) ? dayNumberOf(date) : Number.NaN;
    // A station misses a day now and then.
    if (mean.trim() === "" && Number.isFinite(day)) continue;
    const number = numberOfCell(mean);
    const meanF = number === undefined ? Number.NaN : isCelsius ? fahrenheitOf(number) : number;
    const problem = (column: string, detail: string, fix: string) =>
      problems.push(rowProblem({ line: info.lines, column, detail, fix }));
    if (!Number.isFinite(day)) problem("date", `“${date.slice(0, 40)}” is no day`, "Write it as 2026-01-15.");
    else if (!(meanF >= LEAST_F && meanF <= MOST_F))
      problem(
        "mean",
        `“${mean.slice(0, 40)}” is no mean of a day`,
        `Write ${LEAST_F} to ${MOST_F} °F, or °C as meanC.`,
      );
    else if (days.has(day)) problem("date", `${date} stands twice`, "Keep one of the two.");
    else days.set(day, meanF);
  }
  if (problems.length > 0) throw new InputProblem("input-unusable", problems.slice(0, MOST_PROBLEMS_TOLD));
  return days;
}

/**
 * The bills with the mean outdoor temperature of their days, where nine tenths of those are known; others as they were.
 * Source: derived (mean over the days).
 */
export function withMeanOutdoor(
  bills: readonly Bill[],
  temperatures: DailyTemperatures,
): { bills: Bill[]; toldCount: number } {
  let toldCount = 0;
  const told = bills.map((bill): Bill => {
    const [first, last] = [dayNumberOf(bill.startDate), dayNumberOf(bill.endDate)];
    let sum = 0;
    let known = 0;
    for (let day = first; day <= last; day++) {
      const meanF = temperatures.get(day);
      if (meanF === undefined) continue;
      sum += meanF;
      known += 1;
    }
    if (!(known > 0 && known >= LEAST_DAYS_SHARE * (last - first + 1))) return bill;
    toldCount += 1;
    return { ...bill, meanOutdoorF: sum / known };
  });
  return { bills: told, toldCount };
}
