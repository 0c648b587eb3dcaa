import { formatNumber, formatPercent, formatUsdCents } from "#lib/units/format.ts";
import type { UnitText } from "#lib/units/unit-text.ts";
import { AS_PERCENT, choiceLabel } from "./field-words.ts";

export interface ValueToSay {
  /** Where it stands, as a path or pointer; the last name of it decides how it is said. */
  path: string;
  value: number | string | boolean;
  unit: string;
}

const UNITLESS = new Set(["ratio", "share", "count", ""]);

/** A value of a job as people say it: choices in words, years without a thousands sign, shares as percent. */
export function sayValue(said: ValueToSay, text: UnitText): string {
  const { value, unit } = said;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return sayChoice(said.path, value);
  if (unit === "US¢") return formatUsdCents(value);
  const number = sayNumber({ ...said, value }, text);
  const shown = text.unit(unit);
  if (unit === "yr") return isCalendarYear(said.path) ? number : `${number} years`;
  if (shown.startsWith("USD/")) return `$${number}/${shown.slice(4)}`;
  if (shown === "h·ft²·°F/Btu") return `R-${number}`;
  if (UNITLESS.has(unit) || isPercent(said)) return number;
  return `${number} ${shown}`;
}

/** The same without its unit, for the ends of a range. */
export function sayNumber({ path, value, unit }: ValueToSay & { value: number }, text: UnitText): string {
  if (unit === "yr") return String(Math.round(value));
  if (isPercent({ path, unit })) {
    return Math.abs(value) < 0.1 ? `${formatNumber(value * 100, { significantDigits: 2 })}%` : formatPercent(value);
  }
  return text.number(value, unit);
}

const lastName = (path: string): string => path.slice(path.lastIndexOf("/") + 1);
const isCalendarYear = (path: string): boolean => lastName(path).endsWith("Year");
const isPercent = ({ path, unit }: { path: string; unit: string }): boolean =>
  unit === "share" || (unit === "ratio" && AS_PERCENT.has(lastName(path)));

/** The words of the form for a choice of the schema; any other text stays as it is. */
function sayChoice(path: string, value: string): string {
  const starPath = path.replace(/^#\//, "").replaceAll(/\/\d+(?=\/|$)/g, "/*");
  const words = choiceLabel(starPath, value, "");
  return words === "" ? value : words.charAt(0).toLowerCase() + words.slice(1);
}
