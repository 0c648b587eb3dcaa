import type { Citation } from "#lib/sources/source.ts";
import type { MethodCard } from "./method-card.ts";
import { runCard } from "./run-method.ts";

/** One published value beside what the method gives here and now. */
export interface CheckOutcome {
  name: string;
  path: string;
  expected: number;
  actual: number | null;
  relativeTolerance: number;
  toleranceReason: string;
  source: Citation;
  isMet: boolean;
}

function valueAt(output: unknown, path: string): number | null {
  let value: unknown = output;
  for (const key of path.split(".")) {
    if (typeof value !== "object" || value === null) return null;
    value = (value as Record<string, unknown>)[key];
  }
  return typeof value === "number" ? value : null;
}

/** Computes the published checks of a method there and then. */
export function runChecks(card: MethodCard): CheckOutcome[] {
  return card.checks.flatMap((check) => {
    const { output } = runCard(card, check.input);
    return Object.entries(check.expected).map(([path, expected]) => {
      const actual = valueAt(output, path);
      const allowed = check.relativeTolerance * (check.scale ?? Math.abs(expected));
      return {
        name: check.name,
        path,
        expected,
        actual,
        relativeTolerance: check.relativeTolerance,
        toleranceReason: check.toleranceReason,
        source: check.source,
        isMet: actual !== null && Math.abs(actual - expected) <= allowed,
      };
    });
  });
}
