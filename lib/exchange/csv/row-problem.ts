import type { FieldProblem } from "#lib/errors/input-problem.ts";

/** One thing wrong in a spreadsheet: the line and column that a person sees there, what is wrong, what to do. */
export function rowProblem({
  line,
  column,
  detail,
  fix,
  code = "row-unusable",
}: {
  line: number;
  column?: string | undefined;
  detail: string;
  fix: string;
  code?: string;
}): FieldProblem {
  const where = column === undefined ? `Line ${line}` : `Line ${line}, column ${column}`;
  return { pointer: `#/${line}${column === undefined ? "" : `/${column}`}`, code, detail: `${where}: ${detail}`, fix };
}
