import { AS_PERCENT } from "./field-words.ts";

/** The unit that a field is shown in: money in dollars, shares that people know as percent in percent, a year bare. */
export function shownUnit(key: string, unit: string | undefined): string {
  if (AS_PERCENT.has(key)) return "%";
  if (key.endsWith("Year")) return "";
  if (unit === "US¢") return "$";
  return unit ?? "";
}

const HUNDRED = 100;
const inHundredths = (unit: string): boolean => unit === "%" || unit === "$";
/** Multiplying and dividing by a hundred leaves dust in the last digit of a double. */
const DIGITS = 12;

/** What was typed, as the job stores it. */
export function storedNumber(typed: number, unit: string): number {
  if (unit === "$") return Math.round(typed * HUNDRED);
  return unit === "%" ? Number((typed / HUNDRED).toPrecision(DIGITS)) : typed;
}

/** A stored number as one would have typed it. */
export function typedText(stored: number | undefined, unit: string): string {
  if (stored === undefined) return "";
  if (!inHundredths(unit)) return String(stored);
  return String(unit === "$" ? stored / HUNDRED : Number((stored * HUNDRED).toPrecision(DIGITS)));
}
