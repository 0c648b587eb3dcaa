import type { LearnedEffect } from "./learning.ts";
import type { RepairCatalogue } from "./repair-schema.ts";

/** No share spreads wider than half, as the schema has it. */
const WIDEST_SPREAD_SHARE = 0.5;

/**
 * The catalogue with the effects that a firm's own retests taught. The spread of one leak takes in how well the mean is
 * known: √(spread² + u²). Everything else stays as the catalogue has it.
 */
export function withLearnedEffects(catalogue: RepairCatalogue, learned: readonly LearnedEffect[]): RepairCatalogue {
  const byRepair = new Map(learned.map((effect) => [effect.repairId, effect]));
  const repairs = catalogue.repairs.map((repair) => {
    const effect = byRepair.get(repair.id);
    if (!effect || effect.retestsCount === 0) return repair;
    const spread = Math.hypot(effect.remainingSpreadShare, effect.shareStandardUncertainty);
    return {
      ...repair,
      remainingShare: effect.remainingShare,
      remainingSpreadShare: Math.min(WIDEST_SPREAD_SHARE, spread),
    };
  });
  return { ...catalogue, repairs };
}
