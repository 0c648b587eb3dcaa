import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Fahrenheit, Ratio } from "#lib/units/quantity.ts";

const curves = { sourceId: "nrel-56354", locator: "single-speed curves at a wet bulb of 67 °F" } as const;

/** Capacity at 82 °F outdoors over that at 95 °F, where it is rated; efficiency at 95 °F over that at 82 °F. */
export const COOLING_RATIOS = {
  capacityAt82Ratio: { value: 1.0686, unit: "ratio", source: curves, low: 1.04, high: 1.1 },
  efficiencyAt95Ratio: { value: 0.804, unit: "ratio", source: curves, low: 0.76, high: 0.88 },
} as const satisfies Record<string, SourcedValue>;

/** Outdoors at the two tests of the rating: the one that capacity is rated at, and the one that SEER is made of. */
export const CAPACITY_TEST_F = 95;
const SEER_TEST_F = 82;

/** Capacity and input as straight lines of the outdoor temperature: constant + perF · t. */
export interface CoolingLines {
  capacityConstant: number;
  capacityPerF: number;
  /** Input over the rated capacity, for an efficiency of 1 at 82 °F. */
  inputConstant: number;
  inputPerF: number;
}

/** The lines of an air conditioner from its two ratios; both 1 leave it as it is at any temperature. */
export function coolingLines({
  efficiencyAt95Ratio,
  capacityAt82Ratio = COOLING_RATIOS.capacityAt82Ratio.value,
}: {
  efficiencyAt95Ratio: Ratio;
  capacityAt82Ratio?: Ratio;
}): CoolingLines {
  const apartF = CAPACITY_TEST_F - SEER_TEST_F;
  const capacityPerF = (1 - capacityAt82Ratio) / apartF;
  const inputPerF = (1 / efficiencyAt95Ratio - capacityAt82Ratio) / apartF;
  return {
    capacityConstant: 1 - CAPACITY_TEST_F * capacityPerF,
    capacityPerF,
    inputConstant: capacityAt82Ratio - SEER_TEST_F * inputPerF,
    inputPerF,
  };
}

/**
 * How an air conditioner's capacity and efficiency follow the outdoor temperature.
 * Capacity and power are straight lines through the tests at 82 and 95 °F; capacity is rated at 95 °F, and SEER is the
 * efficiency at 82 °F with its cycling, so the efficiency ratio is 1 there. Valid 60 to 125 °F. Source: doe-appendix-m
 * (form of: how the procedure goes between its tests), nrel-56354 for the two ratios (coefficients from memory, seen
 * again in public code). Left out: the wet bulb of the air that enters, refrigerant charge.
 * @throws InputProblem when a value is outside its range.
 */
export function coolingPerformance({
  outdoorTemperatureF,
  efficiencyAt95Ratio = COOLING_RATIOS.efficiencyAt95Ratio.value,
  capacityAt82Ratio = COOLING_RATIOS.capacityAt82Ratio.value,
}: {
  outdoorTemperatureF: Fahrenheit;
  efficiencyAt95Ratio?: Ratio;
  capacityAt82Ratio?: Ratio;
}): { capacityRatio: Ratio; efficiencyRatio: Ratio } {
  const outdoor = {
    field: "outdoorTemperatureF",
    label: "Outdoor temperature",
    value: outdoorTemperatureF,
    unit: "°F",
  };
  requireBetween({ ...outdoor, low: 50, high: 135 });
  const efficiency = { field: "efficiencyAt95Ratio", label: "Efficiency at 95 °F", value: efficiencyAt95Ratio };
  requireBetween({ ...efficiency, low: 0.6, high: 1.05 });
  const capacity = { field: "capacityAt82Ratio", label: "Capacity at 82 °F", value: capacityAt82Ratio };
  requireBetween({ ...capacity, low: 0.9, high: 1.3 });
  const lines = coolingLines({ efficiencyAt95Ratio, capacityAt82Ratio });
  const capacityRatio = lines.capacityConstant + lines.capacityPerF * outdoorTemperatureF;
  const input = lines.inputConstant + lines.inputPerF * outdoorTemperatureF;
  return { capacityRatio, efficiencyRatio: capacityRatio / input };
}
