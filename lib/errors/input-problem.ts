import { ERROR_TABLE, type ErrorCode } from "./error-table.ts";

/** One thing wrong with one value: where it stands (JSON Pointer), what is wrong, what to do. */
export interface FieldProblem {
  pointer: string;
  detail: string;
  code: string;
  fix: string;
}

/** Marks a problem for every copy of this module. */
const MARK = Symbol.for("ductmend.input-problem");

/**
 * Input that cannot be used. Expected, never our bug: borders turn it into problem details (RFC 9457). It is known by its
 * mark and not by its class: the web server holds this module more than once, and what one copy throws another catches.
 */
export class InputProblem extends Error {
  readonly [MARK] = true;
  readonly code: ErrorCode;
  readonly errors: readonly FieldProblem[];

  constructor(code: ErrorCode, errors: readonly FieldProblem[], message?: string) {
    super(message ?? errors.map((e) => `${e.pointer}: ${e.detail}`).join("; ") ?? ERROR_TABLE[code].title);
    this.name = "InputProblem";
    this.code = code;
    this.errors = errors;
  }
}

Object.defineProperty(InputProblem, Symbol.hasInstance, {
  value(this: unknown, thrown: unknown): boolean {
    // A kind of its own is told from other problems by its class, as ever.
    if (this !== InputProblem) return Function.prototype[Symbol.hasInstance].call(this as typeof InputProblem, thrown);
    return typeof thrown === "object" && thrown !== null && MARK in thrown;
  },
});

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
