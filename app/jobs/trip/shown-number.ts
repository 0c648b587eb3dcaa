import { readQuantity } from "#app/design/read-quantity.ts";
import { readInUnits } from "#app/units/read-in-units.ts";
import { fieldNumberOf, shownUnitOf, type UnitSystem } from "#lib/units/display-unit.ts";
import { AS_PERCENT } from "./field-words.ts";

/** A field by its name, the unit that the schema gives it, and the units of whoever types. */
export interface NumberFieldUnit {
  key: string;
  unit: string | undefined;
  system: UnitSystem;
}

/** The unit that a field is shown in: money in dollars, shares that people know as percent in percent, a year bare. */
export function shownUnit({ key, unit, system }: NumberFieldUnit): string {
  if (AS_PERCENT.has(key)) return "%";
  if (key.endsWith("Year")) return "";
  if (unit === "US¢") return "$";
  return shownUnitOf({ unit: unit ?? "", system });
}

const HUNDRED = 100;
/** Multiplying and dividing by a hundred leaves dust in the last digit of a double. */
const DIGITS = 12;

/** What was typed, as the job stores it; undefined where it is no number. */
export function storedNumber(text: string, field: NumberFieldUnit): number | undefined {
  const shown = shownUnit(field);
  if (shown !== "$" && shown !== "%") return readInUnits(text, { unit: field.unit ?? "", system: field.system });
  const typed = readQuantity(text);
  if (typed === undefined) return undefined;
  if (shown === "$") return Math.round(typed * HUNDRED);
  return Number((typed / HUNDRED).toPrecision(DIGITS));
}

/** A stored number as one would have typed it. */
export function typedText(stored: number | undefined, field: NumberFieldUnit): string {
  if (stored === undefined) return "";
  const shown = shownUnit(field);
  if (shown === "$") return String(stored / HUNDRED);
  if (shown === "%") return String(Number((stored * HUNDRED).toPrecision(DIGITS)));
  return String(fieldNumberOf({ value: stored, unit: field.unit ?? "", system: field.system }));
}
