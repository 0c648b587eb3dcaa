import { parse } from "csv-parse/browser/esm/sync";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { rowProblem } from "./row-problem.ts";

/** The cells of a row, with the line it stands on. */
export interface RawRow {
  record: string[];
  info: { lines: number };
}

const DELIMITERS = [",", ";", "\t"] as const;
/** Digits as a spreadsheet writes them, thousands commas within quotes included. */
const NUMBER = /^[+-]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?$/;

/**
 * The rows of comma-separated text (semicolons and tabs are understood too), the one with the column names first.
 * @throws InputProblem when letters or quotes are broken.
 */
export function rawRows(text: string): RawRow[] {
  if (text.includes("\uFFFD"))
    refuseFile(1, "The file holds letters that cannot be read", "Save it again as “CSV UTF-8”.");
  const firstLine = text.replace(/^\uFEFF/, "").split(/\r?\n/, 1)[0] ?? "";
  const count = (delimiter: string) => firstLine.split(delimiter).length;
  const delimiter = DELIMITERS.reduce((best, each) => (count(each) > count(best) ? each : best));
  try {
    return parse(text, {
      bom: true,
      delimiter,
      trim: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
    }) as unknown as RawRow[];
  } catch (error) {
    const line = (error as { lines?: number }).lines ?? 1;
    return refuseFile(line, "The quotes do not match", "Close the open quote, or write a quote within a text twice.");
  }
}

/** @throws InputProblem always: the file as a whole cannot be read. */
export function refuseFile(line: number, detail: string, fix: string): never {
  throw new InputProblem("input-unusable", [rowProblem({ line, detail, fix })]);
}

/** The number in a cell; undefined when it is none. */
export function numberOfCell(cell: string): number | undefined {
  const plain = cell.replace(/^[−–]/, "-");
  return NUMBER.test(plain) && /\d/.test(plain) ? Number(plain.replaceAll(",", "")) : undefined;
}
