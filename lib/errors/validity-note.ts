/**
 * What makes a computed value doubtful, in plain words. It never stops a calculation and never changes a value:
 * it travels beside the result (`warnings` of the result document add the path).
 */
export interface ValidityNote {
  code: string;
  severity: "note" | "doubt" | "problem";
  /** What was seen. */
  what: string;
  /** Why it matters. */
  why: string;
  /** What to do next. */
  nextMove: string;
}
