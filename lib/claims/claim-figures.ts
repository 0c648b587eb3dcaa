import { rebatesFor } from "#lib/scope/rebates.ts";
import type { Cents, Cfm, KilowattHours, Therms } from "#lib/units/quantity.ts";
import type { ClaimBody } from "./claim-schema.ts";
import type { ProgramRule } from "./program-rule.ts";

/** What a list shows of a claim, as claimed. */
export interface ClaimFigures {
  beforeTotalCfm25: Cfm;
  afterTotalCfm25: Cfm;
  beforeToOutsideCfm25: Cfm;
  afterToOutsideCfm25: Cfm;
  savedElectricityKWh: KilowattHours;
  savedNaturalGasTherms: Therms;
}

/**
 * The headline figures of a claim. A packet claims the share that the retest showed removed, of the leakage that the
 * target limits; it is taken for the other leakage too. Source: derived.
 */
export function claimFigures({ numbers }: Pick<ClaimBody, "numbers">): ClaimFigures {
  const value = (path: string) => numbers[path]?.[0] ?? 0;
  const left = 1 - value("verified/reductionShare");
  const beforeTotalCfm25 = value("leakage/totalCfm25");
  const beforeToOutsideCfm25 = value("leakage/toOutsideCfm25");
  return {
    beforeTotalCfm25,
    afterTotalCfm25: beforeTotalCfm25 * left,
    beforeToOutsideCfm25,
    afterToOutsideCfm25: beforeToOutsideCfm25 * left,
    savedElectricityKWh: value("savings/electricityKWh"),
    savedNaturalGasTherms: value("savings/naturalGasTherms"),
  };
}

/** What the program's rule pays for a claim: money owed, to the cent; and what of its conditions is not met. */
export function claimRebate(
  figures: ClaimFigures,
  rule: ProgramRule,
): { amountUsdCents: Cents; unmet: readonly string[] } {
  const [line] = rebatesFor({
    book: { rebates: [rule.rebate] },
    priceUsdCents: Number.MAX_SAFE_INTEGER,
    outcome: {
      total: { beforeCfm25: figures.beforeTotalCfm25, afterCfm25: figures.afterTotalCfm25 },
      toOutside: { beforeCfm25: figures.beforeToOutsideCfm25, afterCfm25: figures.afterToOutsideCfm25 },
      basis: "verified",
    },
  });
  return { amountUsdCents: line?.amountUsdCents ?? 0, unmet: line?.unmet ?? [] };
}
