import type { Ratio } from "#lib/units/quantity.ts";
import {
  addHighStageBin,
  finishSeason,
  type HeatPumpSeason,
  LEAST_USEFUL_SHARE,
  type SeasonOfHeatPump,
  startSeason,
} from "./heat-pump-season.ts";

/** The low stage of a heat pump: less capacity, less air, its own ducts' losses. */
export interface LowStageSeason {
  capacityRatio: Ratio;
  /** Of the blower's power at the high stage: run hours of the account are hours at that power. */
  blowerPowerRatio: Ratio;
  /** By bin: what an hour of running at the low stage is worth. */
  readonly usefulBtuPerH: Float64Array;
  /** Filled: part of each bin's need that the low stage meets. */
  readonly loadShareInBin: Float64Array;
  /** Filled: what the ducts bring of the output, over the season. */
  seasonalEfficiency: Ratio;
}

/**
 * Electricity of a heat pump with a low stage, bin by bin. Below the low stage's worth it cycles at low: r = L/u_low,
 * input r·κH/(COP·PLF). Between both it changes between them all the time: high for x = (L − u_low)/(u_high − u_low). Above
 * it runs at high and strips add the rest, as with one stage, which a low stage like the high one gives exactly. Where
 * little arrives at low it is left to the high stage. Source: derived, doe-appendix-m (form of). Left out: a better COP
 * at low. Unguarded, allocates nothing.
 */
export function fillStagedHeatPumpSeason({
  season,
  loadBtu,
  usefulBtuPerH,
  perCapacityFactor,
  capacityBtuPerH,
  cop,
  degradationCoefficient,
  low,
  out,
}: SeasonOfHeatPump & { low: LowStageSeason; out: HeatPumpSeason }): void {
  const { count, slotIndex, hours, loadShare } = season;
  const account = startSeason(out, { perCapacityFactor, degradationCoefficient });
  const { electricBtu, runHoursBySlot } = account;
  let inverseEfficiency = 0;
  let needed = 0;
  for (let b = 0; b < count; b++) {
    const slot = slotIndex[b]!;
    const binHours = hours[b]!;
    const loadBtuPerH = (loadBtu * loadShare[b]!) / binHours;
    low.loadShareInBin[b] = 0;
    if (!(loadBtuPerH > 0)) continue;
    const useful = usefulBtuPerH[b]!;
    const capacity = capacityBtuPerH[b]!;
    const inputAtFullBtuPerH = capacity / cop[b]!;
    const lowCapacity = low.capacityRatio * capacity;
    const lowUseful = low.usefulBtuPerH[b]!;
    const hasLow = lowUseful > LEAST_USEFUL_SHARE * lowCapacity && lowUseful <= useful;
    // Btu put into the air for this bin's need, over the need: the inverse of what the ducts bring.
    let outputPerNeed = capacity / Math.max(useful, LEAST_USEFUL_SHARE * capacity);
    if (hasLow && loadBtuPerH <= lowUseful) {
      const runShare = loadBtuPerH / lowUseful;
      const partLoadFactor = 1 - degradationCoefficient * (1 - runShare);
      electricBtu[slot]! += (binHours * low.capacityRatio * inputAtFullBtuPerH * runShare) / partLoadFactor;
      runHoursBySlot[slot]! += binHours * runShare * low.blowerPowerRatio;
      low.loadShareInBin[b] = 1;
      outputPerNeed = lowCapacity / lowUseful;
    } else if (hasLow && loadBtuPerH < useful) {
      const highShare = (loadBtuPerH - lowUseful) / (useful - lowUseful);
      const output = (1 - highShare) * low.capacityRatio + highShare;
      electricBtu[slot]! += binHours * inputAtFullBtuPerH * output;
      runHoursBySlot[slot]! += binHours * ((1 - highShare) * low.blowerPowerRatio + highShare);
      low.loadShareInBin[b] = ((1 - highShare) * lowUseful) / loadBtuPerH;
      outputPerNeed = (output * capacity) / loadBtuPerH;
    } else {
      addHighStageBin(account, slot, binHours, loadBtuPerH, useful, capacity, inputAtFullBtuPerH);
    }
    inverseEfficiency += loadShare[b]! * outputPerNeed;
    needed += loadShare[b]!;
  }
  low.seasonalEfficiency = inverseEfficiency > 0 ? needed / inverseEfficiency : 0;
  finishSeason(out);
}
