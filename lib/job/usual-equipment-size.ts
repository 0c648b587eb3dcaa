import { requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, SquareFeet } from "#lib/units/quantity.ts";

/** The floor areas that a house may have, as in the schema of the job. */
export const FLOOR_AREA_SPAN_FT2 = { low: 150, high: 30_000 } as const;

/** Heating output that installers commonly pick for a floor area. Source: practice, from memory. */
const HEATING_BTU_PER_H_PER_FT2 = 35;
/** One nominal ton of cooling commonly serves this floor area. Source: practice, from memory. */
const FLOOR_FT2_PER_TON = 550;
const BTU_PER_H_PER_TON = 12_000;
/** Sizes come in steps, and one system has a largest and a smallest. Source: practice, from memory. */
const HEATING = { step: 10_000, min: 40_000, max: 120_000 };
const COOLING = { step: BTU_PER_H_PER_TON / 2, min: 1.5 * BTU_PER_H_PER_TON, max: 5 * BTU_PER_H_PER_TON };

/** How far from the usual size what stands in a house may be: 25 to 55 Btu/h per ft², a ton per 800 to 400 ft². Source: practice, from memory. */
export const SIZE_FACTORS = {
  heating: { low: 25 / HEATING_BTU_PER_H_PER_FT2, high: 55 / HEATING_BTU_PER_H_PER_FT2 },
  cooling: { low: FLOOR_FT2_PER_TON / 800, high: FLOOR_FT2_PER_TON / 400 },
} as const;

/**
 * The size of heating and cooling equipment that a house of this floor area usually has, until the nameplate is read.
 * heating = 35 Btu/h per ft², cooling = one ton per 550 ft², each to the nearest size sold.
 * Valid for 150 to 30,000 ft² served by one system. Source: practice, from memory.
 * @throws InputProblem outside that range. Left out: climate, insulation, age, several systems.
 */
export function usualEquipmentSize({ floorAreaFt2 }: { floorAreaFt2: SquareFeet }): {
  heatingBtuPerH: BtuPerHour;
  coolingBtuPerH: BtuPerHour;
} {
  requireBetween({
    field: "floorAreaFt2",
    label: "Floor area",
    value: floorAreaFt2,
    unit: "ft²",
    ...FLOOR_AREA_SPAN_FT2,
  });
  return {
    heatingBtuPerH: nearestSize(HEATING_BTU_PER_H_PER_FT2 * floorAreaFt2, HEATING),
    coolingBtuPerH: nearestSize((floorAreaFt2 / FLOOR_FT2_PER_TON) * BTU_PER_H_PER_TON, COOLING),
  };
}

function nearestSize(wantedBtuPerH: number, { step, min, max }: { step: number; min: number; max: number }): number {
  return Math.min(max, Math.max(min, Math.round(wantedBtuPerH / step) * step));
}
