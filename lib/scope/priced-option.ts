import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cents, Cfm, Hours } from "#lib/units/quantity.ts";
import { billOfMaterials, type MaterialToLoad } from "./bill-of-materials.ts";
import { countedShare } from "./choices.ts";
import { evaluateScope } from "./evaluate-scope.ts";
import type { JobScopeProblem } from "./job-scope-problem.ts";
import { leavesUndone, type UndoneLeak } from "./left-undone.ts";
import { type MeasureDetail, measureId } from "./measure-details.ts";
import { type MeasureOrder, measureOrder } from "./measure-order.ts";
import { priceScope, type ScopePrice } from "./price-scope.ts";
import type { AimedScope } from "./scope-options.ts";
import type { ChosenScope, RepairOfLeak } from "./scope-problem.ts";
import { statedMeasures } from "./stated-measures.ts";

export interface OptionMeasure extends MeasureOrder {
  /** The leak's id; the system's for a whole-system repair. */
  siteId: string;
  repairId: string;
  title: string;
  labourHours: Hours;
  /** Its own labor and materials with tax; what it shares with others stands in the price lines. */
  priceUsdCents: Cents;
  removesCfm25: Cfm;
}

/** One option as proposals, crew sheets and results show it. */
export interface PricedOption {
  id: string;
  title: string;
  summary: string;
  scope: ChosenScope;
  measures: readonly OptionMeasure[];
  materials: readonly MaterialToLoad[];
  price: ScopePrice;
  leavesUndone: readonly UndoneLeak[];
}

function chosenDetails(
  { details }: JobScopeProblem,
  scope: Pick<ChosenScope, "measures" | "systemRepairIds">,
): MeasureDetail[] {
  const ids = [...scope.measures.map(({ leakId, repairId }) => measureId(leakId, repairId)), ...scope.systemRepairIds];
  return ids.map((id) => details.get(id)!);
}

/** What one measure removes; spraying what all of its scope removes less what the hands do. */
function removedBy({ problem }: JobScopeProblem, scope: ChosenScope, detail: MeasureDetail): Cfm {
  const handRemoval = ({ leakId, repairId }: RepairOfLeak): Cfm => {
    const leak = problem.leaks.find(({ id }) => id === leakId)!;
    const repair = leak.repairs.find(({ id }) => id === repairId)!;
    return leak.cfm25 * countedShare(problem, leak) * (1 - repair.remainingShare);
  };
  if (!detail.repair.reachesWholeSystem) return handRemoval({ leakId: detail.siteId, repairId: detail.repair.id });
  const inSystem = scope.measures.filter(
    ({ leakId }) => problem.leaks.find(({ id }) => id === leakId)!.systemId === detail.siteId,
  );
  const withSpray = evaluateScope({ problem, measures: inSystem, systemRepairIds: [detail.id] }).removedCfm25;
  return withSpray - inSystem.reduce((sum, measure) => sum + handRemoval(measure), 0);
}

/**
 * An option with its measures, price lines, materials and what it leaves undone.
 * @throws Error when the optimum's price and the price book's differ: a fault of ours.
 */
export function pricedOption({
  jobProblem,
  book,
  option,
  asbestosSiteIds,
}: {
  jobProblem: JobScopeProblem;
  book: PriceBook;
  option: AimedScope;
  asbestosSiteIds: readonly string[];
}): PricedOption {
  const { id, title, summary, scope } = option;
  const chosen = chosenDetails(jobProblem, scope);
  const price = priceScope({ book, measures: chosen });
  if (price.priceUsdCents !== scope.priceUsdCents) {
    throw new Error(`The optimum counts ${scope.priceUsdCents} cents, the price book ${price.priceUsdCents}`);
  }
  const measures = chosen.map((detail) => ({
    siteId: detail.siteId,
    repairId: detail.repair.id,
    title: detail.title,
    labourHours: detail.labourHours,
    priceUsdCents: price.measures.find((measure) => measure.id === detail.id)!.priceUsdCents,
    removesCfm25: removedBy(jobProblem, scope, detail),
    ...measureOrder(jobProblem.problem, detail),
  }));
  const undone = leavesUndone({ problem: jobProblem.problem, scope, aim: option.id, asbestosSiteIds });
  return { id, title, summary, scope, measures, materials: billOfMaterials(book, chosen), price, leavesUndone: undone };
}

/** Measures chosen by hand as an option of their own, for a plan without a solver. Nothing is claimed of an optimum. */
export function chosenByHand({
  jobProblem,
  measures,
  limitCfm25,
}: {
  jobProblem: JobScopeProblem;
  measures: readonly { siteId: string; repairId: string }[];
  limitCfm25?: Cfm;
}): { scope: ChosenScope; unknown: readonly { siteId: string; repairId: string }[] } {
  const { byHand, sprays, unknown } = statedMeasures({ ...jobProblem.problem, ...jobProblem }, measures);
  const scope = evaluateScope({
    problem: jobProblem.problem,
    measures: byHand.map(({ siteId, repairId }) => ({ leakId: siteId, repairId })),
    systemRepairIds: sprays.map(({ siteId, repairId }) => measureId(siteId, repairId)),
    limitCfm25,
  });
  return { scope: { ...scope, provenOptimal: false, gapRatio: null }, unknown };
}
