import { problemsFromZod } from "#lib/errors/from-zod.ts";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import { type LeakSite, leakSiteSchema } from "#lib/job/leak-site.ts";
import { PLACE_KINDS, type PlaceKind } from "#lib/job/place.ts";
import type { Row } from "./read-rows.ts";
import { choiceName } from "./row-columns.ts";
import { rowProblem } from "./row-problem.ts";

const SIZE_WAYS = ["band", "gapLengthIn", "estimateCfm25"] as const;

/** Rows of leaks, each with the place it is in; places are known by their kind. */
export function leaksOfRows(
  rows: readonly Row[],
  systemIdOf: (name: string | undefined) => string,
): { sites: LeakSite[]; placeKinds: PlaceKind[]; problems: FieldProblem[] } {
  const problems: FieldProblem[] = [];
  const kinds = new Set<PlaceKind>();
  const sites = rows.flatMap((row, index) => {
    const place = placeOf(row);
    const size = sizeOf(row);
    if (typeof place === "object") problems.push(place);
    if (Array.isArray(size)) problems.push(...size);
    if (typeof place === "object" || Array.isArray(size)) return [];
    const { cells } = row;
    const document = {
      id: `leak-${index + 1}`,
      systemId: systemIdOf(cells.system === undefined ? undefined : String(cells.system)),
      placeId: place,
      ...choices(row, ["side", "kind", "reach"]),
      ...picked(row, ["label", "panPressurePa", "note"]),
      ...(size === undefined ? {} : { size }),
    };
    const parsed = leakSiteSchema.safeParse(document);
    if (!parsed.success) {
      problems.push(
        ...problemsFromZod({ error: parsed.error, schema: leakSiteSchema, input: document }).map((each) =>
          rowProblem({
            line: row.line,
            column: each.pointer.split("/").at(-1),
            code: each.code,
            detail: each.detail,
            fix: each.fix,
          }),
        ),
      );
      return [];
    }
    kinds.add(place);
    return [parsed.data];
  });
  return { sites, placeKinds: [...kinds], problems };
}

const picked = ({ cells }: Row, names: readonly string[]): Record<string, string | number> =>
  Object.fromEntries(names.flatMap((name) => (cells[name] === undefined ? [] : [[name, cells[name]]])));
const choices = (row: Row, names: readonly string[]): Record<string, string> =>
  Object.fromEntries(Object.entries(picked(row, names)).map(([name, cell]) => [name, choiceName(String(cell))]));

function placeOf({ line, cells }: Row): PlaceKind | FieldProblem {
  const said = cells.place === undefined ? undefined : choiceName(String(cells.place));
  const known = PLACE_KINDS.find((kind) => kind === said);
  if (known) return known;
  const detail = said === undefined ? "the cell is empty" : `“${cells.place}” is no place that is known`;
  return rowProblem({
    line,
    column: "place",
    code: "not-one-of",
    detail,
    fix: `Use one of ${PLACE_KINDS.join(", ")}.`,
  });
}

/** The size by eye, by tape or as a flow; nothing when the row tells none. */
function sizeOf(row: Row): Record<string, string | number> | undefined | FieldProblem[] {
  const { line, cells } = row;
  const ways = SIZE_WAYS.filter((name) => cells[name] !== undefined);
  if (ways.length > 1)
    return [
      rowProblem({
        line,
        column: ways[1],
        code: "size-twice",
        detail: `the size is told in two ways, ${ways.join(" and ")}`,
        fix: "Keep the one you trust and leave the other empty.",
      }),
    ];
  if ((cells.gapLengthIn === undefined) !== (cells.gapWidthIn === undefined)) {
    const column = cells.gapLengthIn === undefined ? "gapLengthIn" : "gapWidthIn";
    return [
      rowProblem({
        line,
        column,
        code: "missing",
        detail: "the cell is empty, and a gap needs its length and its width",
        fix: "Enter both in inches, or neither.",
      }),
    ];
  }
  if (ways[0] === "band") return { from: "band", ...choices(row, ["band"]) };
  if (ways[0] === "gapLengthIn") return { from: "gap", ...picked(row, ["gapLengthIn", "gapWidthIn"]) };
  if (ways[0] === "estimateCfm25") return { from: "estimate", ...picked(row, ["estimateCfm25"]) };
  return undefined;
}
