import { ERROR_TABLE, type ErrorCode } from "./error-table.ts";

/** One thing wrong with one value: where it stands (JSON Pointer), what is wrong, what to do. */
export interface FieldProblem {
  pointer: string;
  detail: string;
  code: string;
  fix: string;
}

/** Input that cannot be used. Expected, never our bug: borders turn it into problem details (RFC 9457). */
export class InputProblem extends Error {
  readonly code: ErrorCode;
  readonly errors: readonly FieldProblem[];

  constructor(code: ErrorCode, errors: readonly FieldProblem[], message?: string) {
    super(message ?? errors.map((e) => `${e.pointer}: ${e.detail}`).join("; ") ?? ERROR_TABLE[code].title);
    this.name = "InputProblem";
    this.code = code;
    this.errors = errors;
  }
}

/**
 * Refuses one value. `field` is the plain field name or a JSON Pointer. Write the guard positively, so that NaN fails
 * it: `if (!(flowCfm > 0)) refuse({ … })`.
 */
export function refuse({
  field,
  detail,
  fix,
  code = "out-of-range",
}: {
  field: string;
  detail: string;
  fix: string;
  code?: string;
}): never {
  const pointer = field.startsWith("#") ? field : `#/${field}`;
  throw new InputProblem("outside-range", [{ pointer, detail, fix, code }]);
}
