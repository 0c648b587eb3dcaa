import type { SourcedValue } from "#lib/sources/source.ts";

/** Specific heat of air at constant pressure, as trade formulas use it. */
export const AIR_SPECIFIC_HEAT = {
  value: 0.24,
  unit: "Btu/(lb·°F)",
  source: { sourceId: "ashrae-fundamentals-psychrometrics" },
} as const satisfies SourcedValue;

/** Density that flow instruments and trade formulas are referred to. */
export const STANDARD_AIR_DENSITY = {
  value: 0.075,
  unit: "lb/ft³",
  source: { sourceId: "practice", locator: "standard air, near 70 °F at sea level" },
} as const satisfies SourcedValue;

export const MINUTES_PER_HOUR = 60;
