import { type CsvError, parse } from "csv-parse";
import { refuse } from "#lib/errors/input-problem.ts";
import { readArriving } from "./arriving-claim.ts";
import type { SourceLine } from "./import-claims.ts";

/** A claim is at most some 50 KB; a longer line is passed over without being held. */
const MOST_LINE_CHARACTERS = 200_000;

/** Which column of a table holds what. */
export interface ClaimColumns {
  /** The packet, as its JSON text. */
  claim: string;
  contractor?: string;
  reference?: string;
}

function parseLine(text: string): { claim: ReturnType<typeof readArriving> } {
  try {
    return { claim: readArriving(JSON.parse(text)) };
  } catch {
    return { claim: { detail: "This line is not JSON. Write one claim a line, without line breaks inside." } };
  }
}

function sourceLine(line: number, text: string): SourceLine {
  const { claim } = parseLine(text);
  const place = { line, bytes: text.length };
  return "detail" in claim ? { ...place, ...claim } : { ...place, claim: { ...claim, asWritten: text } };
}

const tooLong = (line: number): SourceLine => ({
  line,
  bytes: 0,
  detail: `This line is longer than ${MOST_LINE_CHARACTERS.toLocaleString("en-US")} characters. Write one claim a line.`,
});

/** Claims of a text with one JSON record a line, in constant memory. Empty lines are passed over. */
export async function* ndjsonLines(texts: AsyncIterable<string>): AsyncGenerator<SourceLine> {
  let line = 0;
  let rest = "";
  let isSkipping = false;
  for await (const text of texts) {
    const parts = (rest + text).split("\n");
    rest = parts.pop() ?? "";
    for (const part of parts) {
      line++;
      if (isSkipping) yield tooLong(line);
      else if (part.trim() !== "") yield part.length > MOST_LINE_CHARACTERS ? tooLong(line) : sourceLine(line, part);
      isSkipping = false;
    }
    if (rest.length > MOST_LINE_CHARACTERS) isSkipping = true;
    if (isSkipping) rest = "";
  }
  if (isSkipping) yield tooLong(line + 1);
  else if (rest.trim() !== "") yield sourceLine(line + 1, rest);
}

/**
 * Claims of a comma-separated table, by its columns, in constant memory.
 * @throws InputProblem when a column that was named is not there, or the table cannot be read on.
 */
export async function* csvLines(texts: AsyncIterable<string>, columns: ClaimColumns): AsyncGenerator<SourceLine> {
  const parser = parse({ bom: true, columns: true, info: true, max_record_size: MOST_LINE_CHARACTERS });
  const feeding = feed(texts, parser);
  try {
    for await (const { record, info } of parser as AsyncIterable<{
      record: Record<string, string>;
      info: { lines: number };
    }>) {
      for (const column of Object.values(columns)) requireColumn(column, record);
      const text = record[columns.claim]!;
      const contractor = columns.contractor && record[columns.contractor];
      const reference = columns.reference && record[columns.reference];
      const read = sourceLine(info.lines, text);
      yield "claim" in read
        ? {
            ...read,
            claim: {
              ...read.claim,
              ...(contractor && { contractorId: contractor.trim() }),
              ...(reference && { reference: reference.trim() }),
            },
          }
        : read;
    }
    await feeding;
  } catch (thrown) {
    if (!(thrown instanceof Error && "code" in thrown && String(thrown.code).startsWith("CSV_"))) throw thrown;
    const { lines, message } = thrown as CsvError & { lines?: number };
    refuse({
      field: "file",
      detail: `The table cannot be read from line ${lines ?? "?"} on: ${message}`,
      fix: "Save it as CSV again.",
    });
  }
}

async function feed(texts: AsyncIterable<string>, parser: ReturnType<typeof parse>): Promise<void> {
  for await (const text of texts)
    if (!parser.write(text)) await new Promise<void>((resolve) => parser.once("drain", () => resolve()));
  parser.end();
}

function requireColumn(column: string, record: Record<string, string>): void {
  if (Object.hasOwn(record, column)) return;
  const fix = `Use one of these: ${Object.keys(record).join(", ")}.`;
  refuse({ field: "columns", detail: `The table has no column “${column}”`, fix });
}
