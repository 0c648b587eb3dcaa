import type { BtuPerHour } from "#lib/units/quantity.ts";

/** How a season's load is shared out over bins. Columns of equal length; shares add up to 1 over the year. */
export interface SeasonLoad {
  readonly count: number;
  /** Which part of the year's account a bin falls into: its month (0 to 11), or month × 3 + 8-hour shift. */
  readonly slotIndex: Uint8Array;
  readonly hours: Float64Array;
  readonly loadShare: Float64Array;
}

/** What one Btu of yearly load asks of equipment whose efficiency does not depend on the load. Multiply by the load. */
export interface FixedEquipmentSeason {
  runHoursPerBtu: number;
  readonly runHoursPerBtuBySlot: Float64Array;
  /** Share of the load in bins where nearly nothing arrives, so that the efficiency was held at its least value. */
  heldLoadShare: number;
}

/** `slots` parts of the year are kept apart: 12 months, or 36 where prices follow the shifts. */
export const createFixedEquipmentSeason = (slots = 12): FixedEquipmentSeason => ({
  runHoursPerBtu: 0,
  runHoursPerBtuBySlot: new Float64Array(slots),
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
  const { count, slotIndex, loadShare } = season;
  const least = LEAST_USEFUL_SHARE * capacityBtuPerH;
  const bySlot = out.runHoursPerBtuBySlot;
  bySlot.fill(0);
  let held = 0;
  // Bins of one slot follow each other: each run of them is added up in one number.
  for (let b = 0; b < count; ) {
    const slot = slotIndex[b]!;
    let inSlot = bySlot[slot]!;
    for (; b < count && slotIndex[b] === slot; b++) {
      const share = loadShare[b]!;
      const useful = usefulBtuPerH[b]!;
      const isHeld = !(useful > least);
      if (isHeld) held += share;
      inSlot += share / (isHeld ? least : useful);
    }
    bySlot[slot] = inSlot;
  }
  let total = 0;
  for (let slot = 0; slot < bySlot.length; slot++) total += bySlot[slot]!;
  out.runHoursPerBtu = total;
  out.heldLoadShare = held;
}
