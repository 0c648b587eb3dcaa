import type { BtuPerHour } from "#lib/units/quantity.ts";

/** How a season's load is shared out over bins. Columns of equal length; shares add up to 1 over the year. */
export interface SeasonLoad {
  readonly count: number;
  /** 0 to 11. */
  readonly monthIndex: Uint8Array;
  readonly hours: Float64Array;
  readonly loadShare: Float64Array;
}

/** What one Btu of yearly load asks of equipment whose efficiency does not depend on the load. Multiply by the load. */
export interface FixedEquipmentSeason {
  runHoursPerBtu: number;
  readonly runHoursPerBtuByMonth: Float64Array;
  /** Share of the load in bins where nearly nothing arrives, so that the efficiency was held at its least value. */
  heldLoadShare: number;
}

export const createFixedEquipmentSeason = (): FixedEquipmentSeason => ({
  runHoursPerBtu: 0,
  runHoursPerBtuByMonth: new Float64Array(12),
  heldLoadShare: 0,
});

/** Of the capacity; below it a load has no finite answer, so it is held there and reported. Source: practice. */
export const LEAST_USEFUL_SHARE = 0.05;

/**
 * Run time of a furnace, resistance heater or air conditioner over a season, per Btu of load.
 * Σ share/useful over the bins: a load-weighted season. Energy = load × run hours per Btu × capacity/efficiency; the
 * season's distribution efficiency = 1/(capacity × run hours per Btu), times the equipment factor. Valid for equipment
 * that meets the load; before and after share the load. Source: derived (energy is additive, as seasonal-efficiency).
 * Left out: unmet load of equipment that is too small. Unguarded, allocates nothing.
 */
export function fillFixedEquipmentSeason({
  season,
  usefulBtuPerH,
  capacityBtuPerH,
  out,
}: {
  season: SeasonLoad;
  /** By bin, as fillUsefulHeating or fillUsefulCooling gives it. */
  usefulBtuPerH: Float64Array;
  capacityBtuPerH: BtuPerHour;
  out: FixedEquipmentSeason;
}): void {
  const { count, monthIndex, loadShare } = season;
  const least = LEAST_USEFUL_SHARE * capacityBtuPerH;
  const byMonth = out.runHoursPerBtuByMonth;
  byMonth.fill(0);
  let held = 0;
  for (let b = 0; b < count; b++) {
    const share = loadShare[b]!;
    const useful = usefulBtuPerH[b]!;
    const isHeld = !(useful > least);
    if (isHeld) held += share;
    byMonth[monthIndex[b]!]! += share / (isHeld ? least : useful);
  }
  let total = 0;
  for (let month = 0; month < byMonth.length; month++) total += byMonth[month]!;
  out.runHoursPerBtu = total;
  out.heldLoadShare = held;
}
