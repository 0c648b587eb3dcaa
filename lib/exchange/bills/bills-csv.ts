import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { numberOfCell, type RawRow, rawRows, refuseFile } from "../csv/raw-rows.ts";
import { plainName } from "../csv/row-columns.ts";
import { rowProblem } from "../csv/row-problem.ts";
import { type BilledField, type BilledUse, type BillFile, billsOfUses, MOST_BILLS } from "./billed-use.ts";
import { daysFrom } from "./day-number.ts";

/** The columns, with other names that people give them. */
const COLUMNS = {
  start: ["start", "startDate", "first day", "from"],
  end: ["end", "endDate", "last day", "to"],
  amount: ["amount", "use", "usage", "quantity"],
  unit: ["unit", "units"],
  estimated: ["estimated", "isEstimated"],
} as const;
type Column = keyof typeof COLUMNS;
const NAMES = Object.keys(COLUMNS) as Column[];

const UNITS: Readonly<Record<string, BilledField>> = {
  kwh: "electricityKWh",
  therm: "naturalGasTherms",
  therms: "naturalGasTherms",
  galpropane: "propaneGallons",
  galoil: "fuelOilGallons",
};
const UNITS_SAID = "kWh (electricity), therm (natural gas), gal propane, gal oil";
const YES = ["yes", "y", "true", "1", "x", "estimated"];
const NO = ["", "no", "n", "false", "0", "actual", "read"];
/** A bill longer than a year tells no season. */
const LONGEST_DAYS = 400;
const MOST_ROWS = 4 * MOST_BILLS;
const MOST_PROBLEMS_TOLD = 50;

/**
 * Bills from comma-separated text: start, end, amount, unit, estimated (may be left out), one fuel a row. Dates as
 * 2026-01-15 or, the American way, 1/15/2026. Either all of it is good, or nothing of it is taken.
 * @throws InputProblem that names each line and column, what is wrong and what is allowed.
 */
export function readBillsCsv(text: string): BillFile {
  const [head, ...body] = rawRows(text);
  if (head === undefined) refuseFile(1, "The file is empty", `The first line names the columns: ${NAMES.join(", ")}.`);
  if (body.length === 0) refuseFile(2, "There is no bill below the names of the columns", "Add a line for each bill.");
  if (body.length > MOST_ROWS)
    refuseFile(MOST_ROWS + 2, `${body.length} bills are too many`, `Keep to ${MOST_ROWS} lines, the last years.`);
  const columns = columnsOf(head);
  const rows = body.map((raw) => ({ line: raw.info.lines, read: readRow(raw, columns) }));
  const problems = rows.flatMap(({ read }) => (Array.isArray(read) ? read : []));
  const uses = rows.flatMap(({ line, read }) => (Array.isArray(read) ? [] : [{ ...read, line }]));
  const all = [...problems, ...overlaps(uses)];
  if (all.length > 0) throw new InputProblem("input-unusable", all.slice(0, MOST_PROBLEMS_TOLD));
  const isAmerican = body.some(({ record }) => (record[columns.start!] ?? "").includes("/"));
  return {
    bills: billsOfUses(uses),
    notes: isAmerican ? ["Dates with slashes were read as month/day/year."] : [],
  };
}

function columnsOf({ record, info }: RawRow): Partial<Record<Column, number>> {
  const { lines: line } = info;
  const found: Partial<Record<Column, number>> = {};
  const problems: FieldProblem[] = [];
  record.forEach((written, index) => {
    if (written === "") return;
    const name = NAMES.find((each) => COLUMNS[each].some((known) => plainName(known) === plainName(written)));
    const problem = (detail: string, fix: string) =>
      problems.push(rowProblem({ line, column: written.slice(0, 40), detail, fix }));
    if (name === undefined) problem("there is no such column", `Take it out, or use one of ${NAMES.join(", ")}.`);
    else if (found[name] !== undefined) problem("the column stands twice", "Keep one of the two.");
    else found[name] = index;
  });
  for (const column of NAMES) {
    if (column === "estimated" || found[column] !== undefined) continue;
    problems.push(
      rowProblem({
        line,
        column,
        detail: "the column is missing",
        fix: "Columns: start, end, amount, unit, estimated.",
      }),
    );
  }
  if (problems.length > 0) throw new InputProblem("input-unusable", problems);
  return found;
}

function readRow({ record, info }: RawRow, columns: Partial<Record<Column, number>>): BilledUse | FieldProblem[] {
  const { lines: line } = info;
  const problems: FieldProblem[] = [];
  const cell = (column: Column) => (columns[column] === undefined ? "" : (record[columns[column]] ?? ""));
  const check = <T>(column: Column, value: T | undefined, fix: string): T => {
    if (value === undefined) {
      const said = cell(column) === "" ? "the cell is empty" : `“${cell(column).slice(0, 40)}” is not understood`;
      problems.push(rowProblem({ line, column, detail: said, fix }));
    }
    return value as T;
  };
  if (record.slice(Math.max(...Object.values(columns)) + 1).some((each) => each !== ""))
    problems.push(
      rowProblem({ line, detail: "a cell stands under no column name", fix: "Put amounts with commas in quotes." }),
    );
  const startDate = check("start", dateOf(cell("start")), "Write the first day as 2026-01-15 or 1/15/2026.");
  const endDate = check("end", dateOf(cell("end")), "Write the last day as 2026-02-14 or 2/14/2026.");
  const number = numberOfCell(cell("amount"));
  const use = check(
    "amount",
    number !== undefined && number >= 0 ? number : undefined,
    "Write a number of 0 or more, without its unit: 812.5.",
  );
  const field = check(
    "unit",
    UNITS[plainName(cell("unit"))],
    `Use ${UNITS_SAID}. Gas by volume: multiply by the therm factor that the bill prints.`,
  );
  const said = cell("estimated").toLowerCase();
  const isEstimated = check(
    "estimated",
    YES.includes(said) ? true : NO.includes(said) ? false : undefined,
    "Write yes or no, or leave it empty for no.",
  );
  if (problems.length > 0) return problems;
  const days = daysFrom(startDate, endDate);
  if (days >= 1 && days <= LONGEST_DAYS) return { field, startDate, endDate, use, isEstimated };
  const detail = days < 1 ? `the last day is before the first, ${startDate}` : `the bill covers ${days} days`;
  return [rowProblem({ line, column: "end", detail, fix: `A bill has 1 to ${LONGEST_DAYS} days; correct its dates.` })];
}

/** YYYY-MM-DD of a day that exists. */
function dateOf(cell: string): string | undefined {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(cell);
  const american = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(cell);
  const [year, month, day] = iso ? iso.slice(1) : american ? [american[3], american[1], american[2]] : [];
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const date = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(date) ? date : undefined;
}

function overlaps(uses: readonly (BilledUse & { line: number })[]): FieldProblem[] {
  const inOrder = uses.toSorted((a, b) => (a.startDate < b.startDate ? -1 : a.startDate > b.startDate ? 1 : 0));
  const last = new Map<BilledField, (typeof uses)[number]>();
  return inOrder.flatMap((use) => {
    const before = last.get(use.field);
    last.set(use.field, use);
    if (before === undefined || before.endDate < use.startDate) return [];
    return rowProblem({
      line: use.line,
      column: "start",
      detail: `the bill begins on ${use.startDate}, within the one on line ${before.line} that ends on ${before.endDate}`,
      fix: "Days may stand on one bill of a fuel only: where meters are read, the next bill begins a day later.",
    });
  });
}
