import { parse } from "csv-parse/browser/esm/sync";

/** The names of the columns, from the start of a table; none where its first line cannot be read. */
export function columnsOfHead(head: string): string[] {
  try {
    const [first] = parse(head, { bom: true, to_line: 1, relax_quotes: true }) as string[][];
    return (first ?? []).map((name) => name.trim()).filter((name) => name !== "");
  } catch {
    return [];
  }
}

/** The column that is most likely meant: the name itself, else one that contains it. */
export function guessColumn(columns: readonly string[], word: string): string {
  const plain = (name: string) => name.toLowerCase();
  return columns.find((name) => plain(name) === word) ?? columns.find((name) => plain(name).includes(word)) ?? "";
}
