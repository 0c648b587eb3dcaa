import { BTU_PER_KWH } from "#lib/units/conversions.ts";
import type { BtuPerHour, Hours, KilowattHours, Ratio } from "#lib/units/quantity.ts";
import type { SeasonLoad } from "./fixed-equipment-season.ts";

/** What a heat pump uses for one season's load, without its blower. */
export interface HeatPumpSeason {
  electricKWh: KilowattHours;
  /** Of that, by resistance heat that helps out. */
  supplementaryKWh: KilowattHours;
  runHours: Hours;
  readonly electricKWhBySlot: Float64Array;
  readonly supplementaryKWhBySlot: Float64Array;
  readonly runHoursBySlot: Float64Array;
}

/** `slots` parts of the year are kept apart: 12 months, or 36 where prices follow the shifts. */
export const createHeatPumpSeason = (slots = 12): HeatPumpSeason => ({
  electricKWh: 0,
  supplementaryKWh: 0,
  runHours: 0,
  electricKWhBySlot: new Float64Array(slots),
  supplementaryKWhBySlot: new Float64Array(slots),
  runHoursBySlot: new Float64Array(slots),
});

/** Below this worth of a Btu of supplementary heat the ducts are open to outdoors, and it is held. Source: practice. */
const LEAST_SUPPLEMENTARY_WORTH = 0.05;
/** Of the capacity: where less arrives, running alone does not warm the rooms and strips run with it. Source: practice. */
export const LEAST_USEFUL_SHARE = 0.05;

/** One season of a heat pump in one state of its ducts. Lists are by bin. */
export interface SeasonOfHeatPump {
  season: SeasonLoad;
  /** Heat that the rooms need from this system in a year. */
  loadBtu: number;
  /** What an hour of running is worth, from fillUsefulHeatPump with the capacity below. */
  usefulBtuPerH: Float64Array;
  /** Of the same UsefulLine. */
  perCapacityFactor: Ratio;
  capacityBtuPerH: Float64Array;
  cop: Float64Array;
  degradationCoefficient: Ratio;
}

/** A season while it is gathered, in Btu and hours by slot. */
interface SeasonAccount {
  readonly electricBtu: Float64Array;
  readonly supplementaryBtu: Float64Array;
  readonly runHoursBySlot: Float64Array;
  /** Of one more Btu of supplementary heat. */
  worth: Ratio;
  degradationCoefficient: Ratio;
}

/** Clears the account, which is gathered in Btu and turned into kWh once a slot. */
export function startSeason(
  { electricKWhBySlot, supplementaryKWhBySlot, runHoursBySlot }: HeatPumpSeason,
  { perCapacityFactor, degradationCoefficient }: Pick<SeasonOfHeatPump, "perCapacityFactor" | "degradationCoefficient">,
): SeasonAccount {
  electricKWhBySlot.fill(0);
  supplementaryKWhBySlot.fill(0);
  runHoursBySlot.fill(0);
  return {
    electricBtu: electricKWhBySlot,
    supplementaryBtu: supplementaryKWhBySlot,
    runHoursBySlot,
    worth: Math.max(LEAST_SUPPLEMENTARY_WORTH, perCapacityFactor),
    degradationCoefficient,
  };
}

/** One bin at the high stage, by the rule of fillHeatPumpSeason. Its arguments are plain: it runs once a bin and draw. */
export function addHighStageBin(
  { electricBtu, supplementaryBtu, runHoursBySlot, worth, degradationCoefficient }: SeasonAccount,
  slot: number,
  binHours: Hours,
  loadBtuPerH: BtuPerHour,
  usefulBtuPerH: BtuPerHour,
  capacityBtuPerH: BtuPerHour,
  inputAtFullBtuPerH: BtuPerHour,
): void {
  const least = LEAST_USEFUL_SHARE * capacityBtuPerH;
  if (usefulBtuPerH < least && loadBtuPerH < least) {
    const ranHours = (binHours * loadBtuPerH) / least;
    const supplementary = (ranHours * (least - usefulBtuPerH)) / worth;
    electricBtu[slot]! += ranHours * inputAtFullBtuPerH + supplementary;
    supplementaryBtu[slot]! += supplementary;
    runHoursBySlot[slot]! += ranHours;
  } else if (loadBtuPerH <= usefulBtuPerH) {
    const runShare = loadBtuPerH / usefulBtuPerH;
    const partLoadFactor = 1 - degradationCoefficient * (1 - runShare);
    electricBtu[slot]! += (binHours * inputAtFullBtuPerH * runShare) / partLoadFactor;
    runHoursBySlot[slot]! += binHours * runShare;
  } else {
    const supplementary = (binHours * (loadBtuPerH - usefulBtuPerH)) / worth;
    electricBtu[slot]! += binHours * inputAtFullBtuPerH + supplementary;
    supplementaryBtu[slot]! += supplementary;
    runHoursBySlot[slot]! += binHours;
  }
}

export function finishSeason(out: HeatPumpSeason): void {
  out.electricKWh = intoKWh(out.electricKWhBySlot);
  out.supplementaryKWh = intoKWh(out.supplementaryKWhBySlot);
  out.runHours = sumOf(out.runHoursBySlot);
}

/**
 * Electricity of a heat pump over a season, bin by bin, for one state of the ducts: leaks that push it into resistance
 * heat cost what they cost. Call it once with the ducts before and once after.
 * Below capacity: run share r = L/useful, kW = H r/(3412·COP·PLF), PLF = 1 − c(1 − r): heat-pump-bin with η = useful/H.
 * Above: it runs all the time, and strips in the same air add S = (L − useful)/w, w the worth of one more Btu: again
 * R = L/η, with η at the output H + S that then flows. Where less than 0.05 H arrives, strips run along whenever it runs:
 * run share r = L/0.05 H of that same sum, so that the use goes to 0 with the load and never jumps.
 * Valid for w above 0. Source: doe-appendix-m (form of), derived. Left out: lockouts, recovery from set-back.
 * Unguarded, allocates nothing.
 */
export function fillHeatPumpSeason({
  season,
  loadBtu,
  usefulBtuPerH,
  perCapacityFactor,
  capacityBtuPerH,
  cop,
  degradationCoefficient,
  out,
}: SeasonOfHeatPump & { out: HeatPumpSeason }): void {
  const { count, slotIndex, hours, loadShare } = season;
  const account = startSeason(out, { perCapacityFactor, degradationCoefficient });
  for (let b = 0; b < count; b++) {
    const slot = slotIndex[b]!;
    const binHours = hours[b]!;
    const loadBtuPerH: BtuPerHour = (loadBtu * loadShare[b]!) / binHours;
    if (!(loadBtuPerH > 0)) continue;
    const capacity = capacityBtuPerH[b]!;
    addHighStageBin(account, slot, binHours, loadBtuPerH, usefulBtuPerH[b]!, capacity, capacity / cop[b]!);
  }
  finishSeason(out);
}

/** Turns each slot into kWh and returns the year. */
function intoKWh(btuBySlot: Float64Array): KilowattHours {
  for (let slot = 0; slot < btuBySlot.length; slot++) btuBySlot[slot]! /= BTU_PER_KWH;
  return sumOf(btuBySlot);
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
}
