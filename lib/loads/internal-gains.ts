import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, SquareFeet } from "#lib/units/quantity.ts";

/** Btu a day of a household: a fixed part, by floor area, by bedroom. Source: practice, from memory. */
const FIXED_BTU_PER_DAY = 17900;
const BTU_PER_DAY_FT2 = 23.8;
const BTU_PER_DAY_BEDROOM = 4104;

/**
 * Mean heat of people, lights and appliances.
 * q = (17,900 + 23.8 A + 4,104 N)/24. Source: practice, locator "reference home of the rating standards, from memory".
 * Left out: the hours of the day.
 * @throws InputProblem when a value is outside its range.
 */
export function internalGains({
  conditionedFloorAreaFt2,
  bedroomsCount,
}: {
  conditionedFloorAreaFt2: SquareFeet;
  bedroomsCount: number;
}): { internalGainsBtuPerH: BtuPerHour } {
  requireAbove({
    field: "conditionedFloorAreaFt2",
    label: "Conditioned floor area",
    value: conditionedFloorAreaFt2,
    unit: "ft²",
  });
  requireBetween({ field: "bedroomsCount", label: "Bedrooms", value: bedroomsCount, low: 0, high: 20 });
  const btuPerDay = FIXED_BTU_PER_DAY + BTU_PER_DAY_FT2 * conditionedFloorAreaFt2 + BTU_PER_DAY_BEDROOM * bedroomsCount;
  return { internalGainsBtuPerH: btuPerDay / 24 };
}
