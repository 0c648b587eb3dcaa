import { ERROR_TABLE, type ErrorCode } from "./error-table.ts";
import { type FieldProblem, InputProblem } from "./input-problem.ts";

/** Problem details, RFC 9457, with our extension `errors`. */
export interface ProblemDetails {
  type: string;
  title: string;
  status: number;
  detail: string;
  instance?: string;
  errors?: readonly FieldProblem[];
}

/** `type` is a URI reference under the app itself: the page `/problems/<code>` explains it. */
export function problem(
  code: ErrorCode,
  detail: string,
  errors?: readonly FieldProblem[],
  instance?: string,
): ProblemDetails {
  const row = ERROR_TABLE[code];
  return {
    type: `/problems/${code}`,
    title: row.title,
    status: row.status,
    detail,
    ...(instance ? { instance } : {}),
    ...(errors && errors.length > 0 ? { errors } : {}),
  };
}

/** Any thrown thing as problem details; what we did not expect is never spelled out to the outside. */
export function toProblem(thrown: unknown): { code: ErrorCode; problem: ProblemDetails } {
  if (thrown instanceof InputProblem)
    return { code: thrown.code, problem: problem(thrown.code, thrown.message, thrown.errors) };
  return { code: "unexpected", problem: problem("unexpected", ERROR_TABLE.unexpected.help) };
}
