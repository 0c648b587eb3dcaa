import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm } from "#lib/units/quantity.ts";

/** Leakage at 50 Pa over the season's mean infiltration, one story, moderate shelter. Source: practice, from memory. */
const DIVISOR_OF_ONE_STORY = 17;
/** Taller houses draw more air: the divisor falls by a tenth a story. Source: practice, from memory. */
const DIVISOR_SHARE_PER_STORY = 0.1;

/**
 * Mean infiltration over a season, from the leakage at 50 Pa.
 * Q = Q50/(17 (1 − 0.1 (stories − 1))). Valid for 1 to 4 stories; a single house may be off by 30 %.
 * Source: practice, from memory. Left out: wind, shelter and the weather of the month.
 * @throws InputProblem when a value is outside its range.
 */
export function naturalInfiltration({
  envelopeLeakageCfm50,
  storeysCount,
}: {
  envelopeLeakageCfm50: Cfm;
  storeysCount: number;
}): { infiltrationCfm: Cfm } {
  requireAbove({ field: "envelopeLeakageCfm50", label: "House air leakage", value: envelopeLeakageCfm50, unit: "cfm" });
  requireBetween({ field: "storeysCount", label: "Stories", value: storeysCount, low: 1, high: 4 });
  const divisor = DIVISOR_OF_ONE_STORY * (1 - DIVISOR_SHARE_PER_STORY * (storeysCount - 1));
  return { infiltrationCfm: envelopeLeakageCfm50 / divisor };
}
