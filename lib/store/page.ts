import { InputProblem } from "#lib/errors/input-problem.ts";

/** One page of a list, newest first, and where the next one starts. */
export interface Page<T> {
  items: T[];
  /** Absent on the last page. */
  nextCursor?: string;
}

export interface PageRequest {
  limit?: number;
  cursor?: string;
}

interface Position {
  at: Date;
  id: string;
}

const USUAL_LIMIT = 50;
const HIGHEST_LIMIT = 500;

export function pageLimit({ limit = USUAL_LIMIT }: PageRequest): number {
  return Math.max(1, Math.min(HIGHEST_LIMIT, Math.trunc(limit)));
}

/** Where-condition for rows after the cursor, in the order newest first, then by id. */
export function afterCursor<Field extends string>(field: Field, { cursor }: PageRequest) {
  if (cursor === undefined) return {};
  const { at, id } = readCursor(cursor);
  // The first condition says nothing new, but lets the index start at the cursor.
  return {
    AND: [{ [field]: { lte: at } }, { OR: [{ [field]: { lt: at } }, { [field]: at, id: { gt: id } }] }],
  } as Record<string, unknown>;
}

/** Makes a page of one row more than asked for; that row only tells that there is a next page. */
export function toPage<Row extends { id: string }, T>(
  rows: readonly Row[],
  limit: number,
  at: (row: Row) => Date,
  toItem: (row: Row) => T,
): Page<T> {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  return {
    items: shown.map(toItem),
    ...(rows.length > limit && last ? { nextCursor: writeCursor({ at: at(last), id: last.id }) } : {}),
  };
}

function writeCursor({ at, id }: Position): string {
  return Buffer.from(`${at.toISOString()} ${id}`).toString("base64url");
}

function readCursor(cursor: string): Position {
  const [time = "", id = ""] = Buffer.from(cursor, "base64url").toString("utf8").split(" ");
  const at = new Date(time);
  if (Number.isNaN(at.getTime()) || !/^[0-9a-f-]{36}$/.test(id)) {
    throw new InputProblem("input-unusable", [
      {
        pointer: "#/cursor",
        detail: "This is not a place in the list",
        code: "cursor",
        fix: "Use the nextCursor of the page before, or leave it out.",
      },
    ]);
  }
  return { at, id };
}
