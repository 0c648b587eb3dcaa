import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Ratio, Share } from "#lib/units/quantity.ts";
import { requireShare } from "./duct-guards.ts";
import { requireDelivery } from "./thermal-regain.ts";

/** Heat that warms the ducts themselves at each start and is lost at each stop. */
export const CYCLING_LOSS = {
  sheetMetal: {
    value: 0.05,
    unit: "ratio",
    source: { sourceId: "practice", locator: "form of ashrae-152, from memory" },
    low: 0.02,
    high: 0.08,
  },
  flexibleOrBoard: {
    value: 0.02,
    unit: "ratio",
    source: { sourceId: "practice", locator: "form of ashrae-152, from memory" },
    low: 0.01,
    high: 0.03,
  },
} as const satisfies Record<string, SourcedValue>;

/**
 * Distribution efficiency: what the rooms get over what perfect ducts would need, from its factors.
 * DE × equipment × load × (1 − cyclingLoss·outsideAreaShare·(1 − regain)). Valid for a delivery effectiveness with or
 * without regain. All ducts inside: 1. Source: ashrae-152 (form of). Left out: ducts that exchange air while idle.
 * @throws InputProblem when a share is outside 0 to 1 or a factor impossible.
 */
export function distributionEfficiency({
  deliveryEffectiveness,
  equipmentFactor = 1,
  loadFactor = 1,
  cyclingLoss = CYCLING_LOSS.sheetMetal.value,
  outsideAreaShare = 1,
  regain = 0,
}: {
  deliveryEffectiveness: Ratio;
  equipmentFactor?: Ratio;
  loadFactor?: Ratio;
  cyclingLoss?: Ratio;
  outsideAreaShare?: Share;
  regain?: Ratio;
}): { distributionEfficiency: Ratio } {
  requireDelivery(deliveryEffectiveness);
  requireBetween({ field: "equipmentFactor", label: "Equipment factor", value: equipmentFactor, low: 0.2, high: 1.5 });
  requireBetween({ field: "loadFactor", label: "Load factor", value: loadFactor, low: -1000, high: 1000 });
  requireBetween({ field: "cyclingLoss", label: "Cycling loss", value: cyclingLoss, low: 0, high: 0.3 });
  requireShare("outsideAreaShare", "Share of the duct surface outside the rooms", outsideAreaShare);
  requireShare("regain", "Regain", regain);
  return {
    distributionEfficiency:
      deliveryEffectiveness * equipmentFactor * loadFactor * cyclingFactor({ cyclingLoss, outsideAreaShare, regain }),
  };
}

/** What cycling leaves: 1 − cyclingLoss·outsideAreaShare·(1 − regain). Unguarded. Source: ashrae-152 (form of). */
export function cyclingFactor({
  cyclingLoss,
  outsideAreaShare,
  regain,
}: {
  cyclingLoss: Ratio;
  outsideAreaShare: Share;
  regain: Ratio;
}): Ratio {
  return 1 - cyclingLoss * outsideAreaShare * (1 - regain);
}
