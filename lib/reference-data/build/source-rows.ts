import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { parse } from "csv-parse/sync";

export type Row = Readonly<Record<string, string>>;

/** The rows of a CSV file with a header line, plain or gzipped. */
export function readRows(folder: string, name: string): Row[] {
  const bytes = readFileSync(join(folder, name));
  return parse(name.endsWith(".gz") ? gunzipSync(bytes) : bytes, { columns: true, skip_empty_lines: true });
}

/** A number that must be there. */
export function numberIn(row: Row, column: string): number {
  const text = row[column];
  const value = Number(text);
  if (text === undefined || text.trim() === "" || !Number.isFinite(value))
    throw new Error(`Column ${column} holds “${text}”, not a number, in ${JSON.stringify(row)}`);
  return value;
}

/** A text that must be there. */
export function textIn(row: Row, column: string): string {
  const text = row[column];
  if (text === undefined || text === "") throw new Error(`Column ${column} is empty in ${JSON.stringify(row)}`);
  return text;
}

export function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group) group.push(item);
    else groups.set(keyOf(item), [item]);
  }
  return groups;
}

/** Keeps so many decimals: what the source states, without digits that arithmetic adds. */
export const decimals = (value: number, count: number): number => Number(value.toFixed(count));
