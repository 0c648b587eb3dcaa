import { coveringRepairId } from "./leaks-of-one-run.ts";
import type { MeasureDetail } from "./measure-details.ts";
import type { ScopeProblem } from "./scope-problem.ts";

/** What a measure has to do with others, by the ids of their leaks; each is absent where there is none. */
export interface MeasureOrder {
  /** Repaired before it. */
  firstSiteIds?: string[];
  /** Closed by it without a repair of their own, or the leak whose new duct closes this one. */
  togetherWithSiteIds?: string[];
  /** Left to it and not sealed by hand as well. */
  notByHandSiteIds?: string[];
}

/** The exclusions and prerequisites of a problem as they concern one measure of it. */
export function measureOrder(
  { prerequisites, systemRepairs }: Pick<ScopeProblem, "prerequisites" | "systemRepairs">,
  { id, siteId, repair }: Pick<MeasureDetail, "id" | "siteId" | "repair">,
): MeasureOrder {
  const spray = systemRepairs.find((each) => each.id === id);
  const own = prerequisites.filter((rule) => rule.repair.leakId === siteId && rule.repair.repairId === repair.id);
  const isTogether = ({ needs }: (typeof own)[number]) =>
    coveringRepairId(repair.id) !== null || (needs.repairId !== null && coveringRepairId(needs.repairId) !== null);
  const ids = (rules: typeof own) => rules.map(({ needs }) => needs.leakId);
  return {
    ...some("firstSiteIds", [...ids(own.filter((rule) => !isTogether(rule))), ...(spray?.needsRepairedLeakIds ?? [])]),
    ...some("togetherWithSiteIds", ids(own.filter(isTogether))),
    ...some("notByHandSiteIds", spray?.sparesHandAtLeakIds ?? []),
  };
}

const some = (name: keyof MeasureOrder, ids: readonly string[]): MeasureOrder =>
  ids.length > 0 ? { [name]: [...new Set(ids)] } : {};
