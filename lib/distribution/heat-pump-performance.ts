import { requireAbove } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { BtuPerHour, Fahrenheit, Ratio } from "#lib/units/quantity.ts";

const fromMemory = {
  sourceId: "doe-appendix-m",
  locator: "heating capacity and power at 35 °F when not tested",
} as const;

/** What frost takes at 35 °F, over the straight line between the ratings at 17 and 47 °F. */
export const FROST = {
  capacityFactor: { value: 0.9, unit: "ratio", source: fromMemory, low: 0.85, high: 0.97 },
  powerFactor: { value: 0.985, unit: "ratio", source: fromMemory, low: 0.96, high: 1 },
} as const satisfies Record<string, SourcedValue>;

/**
 * Strips that warm the air while the outdoor coil is freed of ice, at 35 °F, averaged over the time the heat pump runs and
 * over its capacity at 47 °F: 5 kW on a three-ton unit for 4 % of the time. Source: practice, from memory.
 */
export const DEFROST_HEAT: SourcedValue = {
  value: 0.02,
  unit: "ratio",
  source: { sourceId: "practice", locator: "strip heat during defrost, from memory" },
  low: 0,
  high: 0.05,
};

const LOW_RATING_F = 17;
const FROST_F = 35;
const HIGH_RATING_F = 47;
/** Straight lines are not followed below these parts of the 47 °F rating. Source: practice. */
const LEAST_CAPACITY_RATIO = 0.2;
const LEAST_COP = 1;
/** Warmer than this no rating tells; the value there is held. Source: practice. */
const WARMEST_F = 65;

/** Ratings of a heat pump at the two standard outdoor temperatures. */
export interface HeatPumpRatings {
  capacityAt47BtuPerH: BtuPerHour;
  capacityAt17BtuPerH: BtuPerHour;
  copAt47Ratio: Ratio;
  copAt17Ratio: Ratio;
}

/**
 * Capacity and COP of a heat pump at an outdoor temperature.
 * Capacity and power are straight lines through their ratings at 17 and 47 °F; with frost, between those, lines through
 * a point at 35 °F that lies below: capacity × 0.90, power × 0.985. COP = capacity/power. Valid −40 to 65 °F: capacity
 * is not taken below 0.2 of that at 47 °F, COP not below 1. Strips that run during defrost add as much output as input,
 * most at 35 °F, none at 17 and 47 °F. Source: doe-appendix-m (form of, from memory). Left out: lockouts, humidity.
 * @throws InputProblem when a rating is not above 0.
 */
export function heatPumpPerformance({
  outdoorTemperatureF,
  frostCapacityFactor = FROST.capacityFactor.value,
  frostPowerFactor = FROST.powerFactor.value,
  defrostHeatRatio = 0,
  capacityAt47BtuPerH,
  capacityAt17BtuPerH,
  copAt47Ratio,
  copAt17Ratio,
}: HeatPumpRatings & {
  outdoorTemperatureF: Fahrenheit;
  frostCapacityFactor?: Ratio;
  frostPowerFactor?: Ratio;
  /** Strip heat during defrost at 35 °F over the capacity at 47 °F; 0 where none is wired. */
  defrostHeatRatio?: Ratio;
}): {
  capacityBtuPerH: BtuPerHour;
  cop: Ratio;
} {
  requireAbove({ field: "capacityAt47BtuPerH", label: "Capacity at 47 °F", value: capacityAt47BtuPerH, unit: "Btu/h" });
  requireAbove({ field: "capacityAt17BtuPerH", label: "Capacity at 17 °F", value: capacityAt17BtuPerH, unit: "Btu/h" });
  requireAbove({ field: "copAt47Ratio", label: "COP at 47 °F", value: copAt47Ratio });
  requireAbove({ field: "copAt17Ratio", label: "COP at 17 °F", value: copAt17Ratio });
  const capacity = ratedLine({
    outdoorTemperatureF: Math.min(WARMEST_F, outdoorTemperatureF),
    at17: capacityAt17BtuPerH,
    at47: capacityAt47BtuPerH,
    frostFactor: frostCapacityFactor,
  });
  const power = ratedLine({
    outdoorTemperatureF: Math.min(WARMEST_F, outdoorTemperatureF),
    at17: capacityAt17BtuPerH / copAt17Ratio,
    at47: capacityAt47BtuPerH / copAt47Ratio,
    frostFactor: frostPowerFactor,
  });
  const least = LEAST_CAPACITY_RATIO * capacityAt47BtuPerH;
  const strips = defrostHeatRatio * capacityAt47BtuPerH * frostShare(outdoorTemperatureF);
  const cop = power > 0 ? (capacity + strips) / (power + strips) : LEAST_COP;
  return { capacityBtuPerH: Math.max(least, capacity + strips), cop: Math.max(LEAST_COP, cop) };
}

/** 1 where frost is worst, falling to 0 at the two ratings. */
function frostShare(outdoorTemperatureF: Fahrenheit): number {
  const side = outdoorTemperatureF <= FROST_F ? FROST_F - LOW_RATING_F : HIGH_RATING_F - FROST_F;
  return Math.max(0, 1 - Math.abs(outdoorTemperatureF - FROST_F) / side);
}

function ratedLine({
  outdoorTemperatureF,
  at17,
  at47,
  frostFactor,
}: {
  outdoorTemperatureF: Fahrenheit;
  at17: number;
  at47: number;
  frostFactor: Ratio;
}): number {
  const slope = (at47 - at17) / (HIGH_RATING_F - LOW_RATING_F);
  if (outdoorTemperatureF <= LOW_RATING_F || outdoorTemperatureF >= HIGH_RATING_F) {
    return at17 + slope * (outdoorTemperatureF - LOW_RATING_F);
  }
  const at35 = frostFactor * (at17 + slope * (FROST_F - LOW_RATING_F));
  return outdoorTemperatureF <= FROST_F
    ? at17 + ((at35 - at17) * (outdoorTemperatureF - LOW_RATING_F)) / (FROST_F - LOW_RATING_F)
    : at35 + ((at47 - at35) * (outdoorTemperatureF - FROST_F)) / (HIGH_RATING_F - FROST_F);
}
