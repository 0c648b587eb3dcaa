import { refuse } from "./input-problem.ts";

interface Guarded {
  /** Plain field name or JSON Pointer. */
  field: string;
  /** The field's label, as a person reads it. */
  label: string;
  value: number;
  unit?: string;
  fix?: string;
}

const withUnit = (value: number, unit?: string) => (unit ? `${value} ${unit}` : `${value}`);

/** Refuses a value that is not a finite number above a limit (0 unless said otherwise); NaN is refused too. */
export function requireAbove({ field, label, value, unit, fix, limit = 0 }: Guarded & { limit?: number }): void {
  if (value > limit && value < Number.POSITIVE_INFINITY) return;
  refuse({
    field,
    detail: `${label} must be above ${withUnit(limit, unit)}, not ${value}`,
    fix: fix ?? `Enter a number above ${withUnit(limit, unit)}.`,
  });
}

/** Refuses a value that is not a number between two limits, both allowed; NaN is refused too. */
export function requireBetween({
  field,
  label,
  value,
  unit,
  fix,
  low,
  high,
}: Guarded & { low: number; high: number }): void {
  if (value >= low && value <= high) return;
  refuse({
    field,
    detail: `${label} must be between ${low} and ${withUnit(high, unit)}, not ${value}`,
    fix: fix ?? `Enter a number from ${low} to ${withUnit(high, unit)}.`,
  });
}
