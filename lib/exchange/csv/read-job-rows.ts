import { problemsFromZod } from "#lib/errors/from-zod.ts";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import type { DuctTest } from "#lib/job/duct-test.ts";
import { houseSchema } from "#lib/job/house.ts";
import type { LeakSite } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { leaksOfRows } from "./leaks-of-rows.ts";
import { type Row, readRows } from "./read-rows.ts";
import { rowProblem } from "./row-problem.ts";
import { testsOfRows } from "./tests-of-rows.ts";

/** What a spreadsheet tells of a job: the start of one, for the equipment and the ducts are asked on the trip. */
export interface JobRows {
  house: { label: string; zip?: string; conditionedFloorAreaFt2?: number };
  systems: { id: string; label: string }[];
  /** Each place has the name of its kind as its id. */
  placeKinds: PlaceKind[];
  tests: DuctTest[];
  sites: LeakSite[];
}

const MOST_PROBLEMS_TOLD = 50;
const startOfHouseSchema = houseSchema.pick({ label: true, zip: true, conditionedFloorAreaFt2: true }).partial({
  conditionedFloorAreaFt2: true,
});

/**
 * Reads a job from the rows of a spreadsheet: one row for the house, a row for each step of a test, a row for each
 * leak. Either all of it is good, or nothing of it is taken. Valid for up to 2,000 rows. Left out: tests by
 * subtraction and Delta-Q, instruments, equipment.
 * @throws InputProblem that names each line and column, what is wrong and what is allowed.
 */
export function readJobRows(text: string): JobRows {
  const { rows, problems } = readRows(text);
  const of = (kind: Row["kind"]) => rows.filter((row) => row.kind === kind);
  const house = houseOf(of("house"));
  const names = new Map<string, string>();
  const systemIdOf = (name = "Main system"): string => {
    const key = name.trim().toLowerCase();
    if (!names.has(key)) names.set(key, name.trim());
    return `system-${[...names.keys()].indexOf(key) + 1}`;
  };
  const { tests, problems: ofTests } = testsOfRows(of("reading"), systemIdOf);
  const { sites, placeKinds, problems: ofLeaks } = leaksOfRows(of("leak"), systemIdOf);
  const all = oneEach([...problems, ...(Array.isArray(house) ? house : []), ...ofTests, ...ofLeaks]);
  if (Array.isArray(house) || all.length > 0)
    throw new InputProblem("input-unusable", all.sort(byLine).slice(0, MOST_PROBLEMS_TOLD));
  if (names.size === 0) systemIdOf();
  const systems = [...names.values()].map((label, index) => ({ id: `system-${index + 1}`, label }));
  return { house, systems, placeKinds, tests, sites };
}

/** The first thing wrong at a place; what follows from it is not told. */
const oneEach = (problems: readonly FieldProblem[]): FieldProblem[] => [
  ...new Map(problems.toReversed().map((each) => [each.pointer, each])).values(),
];
const lineOf = ({ pointer }: FieldProblem): number => Number(pointer.split("/")[1]);
const byLine = (a: FieldProblem, b: FieldProblem): number => lineOf(a) - lineOf(b);

function houseOf(rows: readonly Row[]): JobRows["house"] | FieldProblem[] {
  const [row, second] = rows;
  if (row === undefined)
    return [
      rowProblem({ line: 2, column: "row", detail: "no row tells the house", fix: "Add a row of the kind house." }),
    ];
  if (second !== undefined)
    return [
      rowProblem({
        line: second.line,
        column: "row",
        detail: `a second house; the first is on line ${row.line}`,
        fix: "One file is one house: put the other house into its own file.",
      }),
    ];
  const parsed = startOfHouseSchema.safeParse(row.cells);
  if (parsed.success) return parsed.data;
  return problemsFromZod({ error: parsed.error, schema: startOfHouseSchema, input: row.cells }).map((each) =>
    rowProblem({
      line: row.line,
      column: each.pointer.split("/")[1],
      code: each.code,
      detail: each.detail,
      fix: each.fix,
    }),
  );
}
