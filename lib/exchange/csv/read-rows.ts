import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import { numberOfCell, type RawRow, rawRows, refuseFile } from "./raw-rows.ts";
import { choiceName, plainName, ROW_COLUMNS, ROW_KINDS, type RowColumn, type RowKind } from "./row-columns.ts";
import { rowProblem } from "./row-problem.ts";

/** A row with the line it stands on; only cells that hold something. */
export interface Row {
  line: number;
  kind: RowKind;
  cells: Readonly<Record<string, string | number>>;
}

const MOST_ROWS = 2000;

/**
 * The rows of a spreadsheet, saved as comma-separated text (semicolons and tabs are understood too), and what is wrong
 * with their columns and cells.
 * @throws InputProblem when the text cannot be read as rows at all.
 */
export function readRows(text: string): { rows: Row[]; problems: FieldProblem[] } {
  const [head, ...body] = rawRows(text);
  if (head === undefined) refuseFile(1, "The file is empty", "The first line must name the columns; see the sample.");
  if (body.length === 0) refuseFile(2, "There is no row below the names of the columns", "Add rows as in the sample.");
  if (body.length > MOST_ROWS)
    refuseFile(
      MOST_ROWS + 2,
      `${body.length.toLocaleString("en-US")} rows are too many for one house`,
      `Keep to ${MOST_ROWS.toLocaleString("en-US")} rows; split the rest into other files.`,
    );
  const columns = columnsOf(head);
  const read = body.map((raw) => readRow(raw, columns));
  return { rows: read.flatMap(({ row }) => row ?? []), problems: read.flatMap(({ problems }) => problems) };
}

function columnsOf({ record, info }: RawRow): (RowColumn | undefined)[] {
  const problems: FieldProblem[] = [];
  const known = ROW_COLUMNS.map(({ name }) => name);
  const columns = record.map((written, index) => {
    if (written === "") return undefined;
    const column = ROW_COLUMNS.find(({ name }) => plainName(name) === plainName(written));
    if (!column) {
      const near = nearestName(written, known);
      problems.push(
        rowProblem({
          line: info.lines,
          column: written,
          code: "column-unknown",
          detail: "there is no such column",
          fix: near ? `Name it ${near}, or take it out.` : `Take it out, or use one of ${known.join(", ")}.`,
        }),
      );
    } else if (record.findIndex((each) => plainName(each) === plainName(written)) < index)
      problems.push(
        rowProblem({
          line: info.lines,
          column: written,
          code: "column-repeated",
          detail: "the column stands twice",
          fix: "Keep one of the two.",
        }),
      );
    return column;
  });
  if (!columns.some((column) => column?.name === "row"))
    problems.push(
      rowProblem({
        line: info.lines,
        column: "row",
        code: "column-missing",
        detail: "the column is missing",
        fix: `It says what each row is: ${ROW_KINDS.join(", ")}.`,
      }),
    );
  if (problems.length > 0) throw new InputProblem("input-unusable", problems);
  return columns;
}

function readRow(
  { record, info: { lines: line } }: RawRow,
  columns: readonly (RowColumn | undefined)[],
): { row?: Row; problems: FieldProblem[] } {
  const at = columns.findIndex((column) => column?.name === "row");
  const said = record[at] ?? "";
  const kind = ROW_KINDS.find((each) => each === choiceName(said));
  if (kind === undefined) {
    const detail = said === "" ? "it does not say what the row is" : `“${said.slice(0, 40)}” is no kind of row`;
    return { problems: [rowProblem({ line, column: "row", detail, fix: `Use ${ROW_KINDS.join(", ")}.` })] };
  }
  const problems: FieldProblem[] = [];
  const cells: Record<string, string | number> = {};
  record.forEach((cell, index) => {
    const column = columns[index];
    if (cell === "" || column?.name === "row") return;
    const value = column ? cellValue({ cell, column, kind, line }) : unnamedCell(line);
    if (typeof value === "object") problems.push(value);
    else if (column) cells[column.name] = value;
  });
  return { row: { line, kind, cells }, problems };
}

const unnamedCell = (line: number): FieldProblem =>
  rowProblem({
    line,
    detail: `a cell stands under no column name`,
    fix: "Put a text with commas in quotes, or name the column in the first line.",
  });

function cellValue({
  cell,
  column,
  kind,
  line,
}: {
  cell: string;
  column: RowColumn;
  kind: RowKind;
  line: number;
}): string | number | FieldProblem {
  if (column.of[kind] === undefined)
    return rowProblem({
      line,
      column: column.name,
      code: "cell-out-of-place",
      detail: `a ${kind} row has nothing in this column, not “${cell.slice(0, 40)}”`,
      fix: `Leave the cell empty; it belongs to rows of the kind ${Object.keys(column.of).join(" or ")}.`,
    });
  if (!column.isNumber) return cell;
  const number = numberOfCell(cell);
  if (number !== undefined) return number;
  return rowProblem({
    line,
    column: column.name,
    code: "not-a-number",
    detail: `“${cell.slice(0, 40)}” is no number`,
    fix: "Write digits alone, with a point before decimals and no unit: 24.8.",
  });
}
