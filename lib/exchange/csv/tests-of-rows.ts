import { problemsFromZod } from "#lib/errors/from-zod.ts";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import { type DuctTest, ductTestSchema } from "#lib/job/duct-test.ts";
import type { Row } from "./read-rows.ts";
import { choiceName } from "./row-columns.ts";
import { rowProblem } from "./row-problem.ts";

/** Cells that speak for the whole test, not for one step of it. */
const OF_THE_TEST = [
  "kind",
  "stage",
  "direction",
  "part",
  "date",
  "baselineBeforePa",
  "baselineAfterPa",
  "houseToOutsidePressurePa",
  "ductToHousePressurePa",
  "system",
  "note",
] as const;
const CHOICES: ReadonlySet<string> = new Set(["kind", "stage", "direction", "part"]);
const KINDS = ["total-leakage", "leakage-to-outside"];

/** Rows of readings as tests: the rows with one name are the steps of one test. */
export function testsOfRows(
  rows: readonly Row[],
  systemIdOf: (name: string) => string,
): { tests: DuctTest[]; problems: FieldProblem[] } {
  const problems: FieldProblem[] = [];
  const byName = new Map<string, Row[]>();
  for (const row of rows) {
    const name = row.cells.test;
    if (name === undefined)
      problems.push(missingCell(row.line, "test", "Name the test; its other steps share the name."));
    else byName.set(String(name), [...(byName.get(String(name)) ?? []), row]);
  }
  const tests = [...byName.values()].flatMap((steps, index) => {
    const read = testOf(steps, `test-${index + 1}`, systemIdOf);
    if (Array.isArray(read)) problems.push(...read);
    return Array.isArray(read) ? [] : [read];
  });
  return { tests, problems };
}

const missingCell = (line: number, column: string, fix: string): FieldProblem =>
  rowProblem({ line, column, code: "missing", detail: "the cell is empty", fix });

function testOf(steps: readonly Row[], id: string, systemIdOf: (name: string) => string): DuctTest | FieldProblem[] {
  const { told, lineOf, problems } = gather(steps);
  const { kind, system, ...rest } = told;
  const first = steps[0]!.line;
  if (kind === undefined) problems.push(missingCell(first, "kind", `Use ${KINDS.join(" or ")}.`));
  else if (!KINDS.includes(String(kind)))
    problems.push(
      rowProblem({
        line: lineOf.get("kind") ?? first,
        column: "kind",
        code: "not-one-of",
        detail: `“${kind}” is no test that rows can tell`,
        fix: `Use ${KINDS.join(" or ")}; enter other tests on the trip.`,
      }),
    );
  for (const { line, cells } of steps)
    if (cells.flowCfm === undefined)
      problems.push(missingCell(line, "flowCfm", "Enter the fan flow of the step in cfm."));
  if (problems.length > 0) return problems;
  const document = {
    id,
    kind,
    ...rest,
    ...(system === undefined ? {} : { systemId: systemIdOf(String(system)) }),
    points: steps.map(({ cells: { ductPressurePa, flowCfm } }) => ({ ductPressurePa, flowCfm })),
  };
  const parsed = ductTestSchema.safeParse(document);
  if (parsed.success) return stepsAtZero(steps, parsed.data) ?? parsed.data;
  return problemsFromZod({ error: parsed.error, schema: ductTestSchema, input: document }).map((each) => {
    const [, at, name] = /^#\/points\/(\d+)\/(\w+)/.exec(each.pointer) ?? [];
    const column = name ?? each.pointer.split("/")[1] ?? "test";
    const line = at === undefined ? (lineOf.get(column) ?? first) : steps[Number(at)]!.line;
    return rowProblem({ line, column, code: each.code, detail: each.detail, fix: each.fix });
  });
}

/** Total leakage at no pressure says nothing; to outside it is what the test wants. */
function stepsAtZero(steps: readonly Row[], { kind }: DuctTest): FieldProblem[] | undefined {
  const wrong = kind === "total-leakage" ? steps.filter(({ cells }) => cells.ductPressurePa === 0) : [];
  if (wrong.length === 0) return undefined;
  return wrong.map(({ line }) =>
    rowProblem({
      line,
      column: "ductPressurePa",
      code: "pressure-zero",
      detail: "a duct pressure of 0 Pa says nothing of the leakage",
      fix: "Enter the pressure that stood in the duct, with its sign.",
    }),
  );
}

/** What the rows of one test say of the whole test: once is enough, twice must agree. */
function gather(steps: readonly Row[]) {
  const told: Record<string, string | number> = {};
  const lineOf = new Map<string, number>();
  const problems: FieldProblem[] = [];
  for (const { line, cells } of steps) {
    for (const name of OF_THE_TEST) {
      const cell = cells[name];
      if (cell === undefined) continue;
      const value = CHOICES.has(name) ? choiceName(String(cell)) : cell;
      if (told[name] === undefined) {
        told[name] = value;
        lineOf.set(name, line);
      } else if (told[name] !== value)
        problems.push(
          rowProblem({
            line,
            column: name,
            code: "does-not-agree",
            detail: `“${cell}” where line ${lineOf.get(name)} of the same test says “${told[name]}”`,
            fix: "Say it once, say it alike, or give the other test its own name.",
          }),
        );
    }
  }
  return { told, lineOf, problems };
}
