import type { PriceBook, Rebate } from "#lib/job/price-book-schema.ts";
import type { Cents, Cfm } from "#lib/units/quantity.ts";
import { roundedCents } from "./exact-money.ts";

/** Leakage before and after the work, as expected or as retested. */
export interface SealingOutcome {
  total: { beforeCfm25: Cfm; afterCfm25: Cfm };
  toOutside: { beforeCfm25: Cfm; afterCfm25: Cfm };
  /** `predicted`: the retest has still to show it. */
  basis: "predicted" | "verified";
}

export interface RebateLine {
  id: string;
  title: string;
  amountUsdCents: Cents;
  /** Conditions of leakage met, as far as the outcome tells. */
  isMet: boolean;
  /** Each condition that is not met, in words. */
  unmet: readonly string[];
  /** What else has to hold, and whether the retest has still to show it. */
  dependsOn: readonly string[];
}

function unmetConditions({ conditions }: Rebate, outcome: SealingOutcome): string[] {
  const { beforeCfm25, afterCfm25 } = conditions.measure === "total" ? outcome.total : outcome.toOutside;
  const removed = beforeCfm25 - afterCfm25;
  const { leastRemovedCfm25, leastRemovedShare, mostLeftCfm25 } = conditions;
  const unmet: string[] = [];
  if (leastRemovedCfm25 !== undefined && !(removed >= leastRemovedCfm25)) {
    unmet.push(`At least ${leastRemovedCfm25} cfm at 25 Pa must be removed`);
  }
  if (leastRemovedShare !== undefined && !(removed >= leastRemovedShare * beforeCfm25)) {
    unmet.push(`At least ${leastRemovedShare * 100} % must be removed`);
  }
  if (mostLeftCfm25 !== undefined && !(afterCfm25 <= mostLeftCfm25)) {
    unmet.push(`At most ${mostLeftCfm25} cfm at 25 Pa may be left`);
  }
  return unmet;
}

function fullAmount({ pays, conditions }: Rebate, outcome: SealingOutcome, priceUsdCents: Cents): Cents {
  if (pays.by === "flat") return pays.flatUsdCents;
  if (pays.by === "share-of-price") return roundedCents({ factors: [priceUsdCents, pays.priceShare] });
  const { beforeCfm25, afterCfm25 } = conditions.measure === "total" ? outcome.total : outcome.toOutside;
  const removedCfm25 = Math.max(0, Math.floor(beforeCfm25 - afterCfm25));
  return roundedCents({ factors: [removedCfm25, pays.eachCfm25UsdCents] });
}

/**
 * What each rebate of a price book would pay, beside the price and never taken from it.
 * Amount = flat, or whole cfm at 25 Pa removed × amount each, or price × share; at most its cap; 0 while a condition
 * is not met. Together never more than the price. Source: practice.
 */
export function rebatesFor({
  book,
  priceUsdCents,
  outcome,
}: {
  book: Pick<PriceBook, "rebates">;
  priceUsdCents: Cents;
  outcome: SealingOutcome;
}): RebateLine[] {
  let left = priceUsdCents;
  return book.rebates.map((rebate) => {
    const unmet = unmetConditions(rebate, outcome);
    const amount = Math.min(
      fullAmount(rebate, outcome, priceUsdCents),
      rebate.atMostUsdCents ?? Number.POSITIVE_INFINITY,
    );
    const amountUsdCents = unmet.length > 0 ? 0 : Math.min(amount, left);
    left -= amountUsdCents;
    const dependsOn = [
      ...(outcome.basis === "predicted" ? ["The test after the work has to show it"] : []),
      ...(rebate.conditionText ? [rebate.conditionText] : []),
    ];
    return { id: rebate.id, title: rebate.title, amountUsdCents, isMet: unmet.length === 0, unmet, dependsOn };
  });
}
