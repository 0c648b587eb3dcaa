import type { Job } from "#lib/job/job-schema.ts";
import { evaluateScope } from "#lib/scope/evaluate-scope.ts";
import { scopeFrontier } from "#lib/scope/frontier.ts";
import type { JobScopeProblem } from "#lib/scope/job-scope-problem.ts";
import { leavesUndone, type UndoneLeak } from "#lib/scope/left-undone.ts";
import { measureId } from "#lib/scope/measure-details.ts";
import { type MeasureOrder, measureOrder } from "#lib/scope/measure-order.ts";
import type { ChosenScope } from "#lib/scope/scope-problem.ts";
import type { MixedIntegerSolver } from "#lib/scope/solver.ts";
import type { Cents, Cfm, Dollars, Hours, Ratio, Share } from "#lib/units/quantity.ts";
import { completeHouse } from "./complete/complete-house.ts";
import { elevationOf } from "./elevation-of.ts";
import { findTarget } from "./find-target.ts";
import { createLedger } from "./ledger.ts";
import { planProblem } from "./plan-problem.ts";
import { readTests } from "./read-tests.ts";
import type { ReferenceData } from "./reference-data.ts";
import { valueLeaks } from "./value-leaks.ts";

/** A scope that no other one beats at its price. */
export interface ScopePoint {
  /** By its place on the frontier, cheapest first: "1", "2" … */
  id: string;
  measures: readonly ({ siteId: string; repairId: string; title: string } & MeasureOrder)[];
  priceUsdCents: Cents;
  labourHours: Hours;
  lifetimeValueUsd: Dollars;
  predictedCfm25: Cfm;
  probabilityOfReachingTarget: Share | null;
  leavesUndone: readonly UndoneLeak[];
  provenOptimal: boolean;
  gapRatio: Ratio | null;
}

/**
 * Price against leakage left: every scope worth looking at, cheapest first, from the same problem that the options of an
 * estimate are chosen from. No draws are made, so the numbers come without ranges. Source: own-method.
 * @throws InputProblem when a value of the job is outside what a method can answer.
 */
export async function exploreScopes(
  job: Job,
  reference: ReferenceData,
  { solve }: { solve: MixedIntegerSolver },
): Promise<ScopePoint[]> {
  const ledger = createLedger();
  const elevationFt = elevationOf(job, reference);
  const house = completeHouse({ job, reference, measurements: readTests({ job, elevationFt, ledger }), ledger });
  const worth = valueLeaks(house);
  const target = findTarget({ house, worth, ledger });
  const { jobProblem } = planProblem({ house, worth, target, ledger });
  if (jobProblem.problem.leaks.length === 0) return [];
  const asbestosSiteIds = job.sites.filter((site) => site.isSuspectedAsbestos).map((site) => site.id);
  return (await scopeFrontier({ problem: jobProblem.problem, solve }))
    .filter(({ measures, systemRepairIds }) => measures.length + systemRepairIds.length > 0)
    .map((scope, index) =>
      scopePoint({ jobProblem, scope, id: String(index + 1), limitCfm25: target?.limitCfm25, asbestosSiteIds }),
    );
}

function scopePoint({
  jobProblem: { problem, details },
  scope,
  id,
  limitCfm25,
  asbestosSiteIds,
}: {
  jobProblem: JobScopeProblem;
  scope: ChosenScope;
  id: string;
  limitCfm25: Cfm | undefined;
  asbestosSiteIds: readonly string[];
}): ScopePoint {
  const { measures, systemRepairIds } = scope;
  const ids = [...measures.map(({ leakId, repairId }) => measureId(leakId, repairId)), ...systemRepairIds];
  return {
    id,
    measures: ids.map((each) => {
      const detail = details.get(each)!;
      const { siteId, repair, title } = detail;
      return { siteId, repairId: repair.id, title, ...measureOrder(problem, detail) };
    }),
    priceUsdCents: scope.priceUsdCents,
    labourHours: scope.labourHours,
    lifetimeValueUsd: scope.lifetimeValueUsd,
    predictedCfm25: scope.predictedCfm25,
    probabilityOfReachingTarget:
      limitCfm25 === undefined
        ? null
        : evaluateScope({ problem, measures, systemRepairIds, limitCfm25 }).probabilityOfReachingTarget,
    leavesUndone: leavesUndone({ problem, scope, aim: "essential", asbestosSiteIds }),
    provenOptimal: scope.provenOptimal,
    gapRatio: scope.gapRatio,
  };
}
