import { InputProblem } from "#lib/errors/input-problem.ts";

/** What another organization owns is not there for this one: not found, never "not allowed". */
export function notFound(what: string): InputProblem {
  return new InputProblem("not-found", [], `There is no such ${what}`);
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** An id from an address bar may be any text; the database would call it a syntax error. */
export function requireId(id: string, what: string): string {
  if (!UUID.test(id)) throw notFound(what);
  return id;
}
