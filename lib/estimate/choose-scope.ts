import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { JobScopeProblem } from "#lib/scope/job-scope-problem.ts";
import { chosenByHand, type PricedOption, pricedOption } from "#lib/scope/priced-option.ts";
import { type AimedScope, aimedScope, isSameWork, scopeOptions } from "#lib/scope/scope-options.ts";
import type { MixedIntegerSolver } from "#lib/scope/solver.ts";
import { type PlanInput, planProblem } from "./plan-problem.ts";

export interface ChosenScopes {
  options: readonly PricedOption[];
  chosenId: string | null;
  jobProblem: JobScopeProblem;
  book: PriceBook;
  outOfReach: readonly string[];
}

interface Input extends PlanInput {
  solve: MixedIntegerSolver | undefined;
}

function askedLimits({ house }: Input, book: PriceBook): { budgetUsdCents?: number; labourHours?: number } {
  const { plan } = house.job;
  return {
    budgetUsdCents: plan?.budgetUsdCents,
    labourHours: plan?.crewHours === undefined ? undefined : plan.crewHours * book.labour.crewCount,
  };
}

/**
 * The scope: the options that the solver finds, and the measures stated in the job, which are chosen where there are
 * any. Stated measures that are the work of an option found are that option.
 */
export async function chooseScope(input: Input): Promise<ChosenScopes> {
  const { house, target, solve, ledger } = input;
  const { job } = house;
  const { book, jobProblem } = planProblem(input);
  const chance = target ? { limitCfm25: target.limitCfm25, probability: target.confidenceProbability } : undefined;
  let aimed: readonly AimedScope[] = [];
  let chosenId: string | null = null;
  let outOfReach: readonly string[] = [];
  const byHand = job.plan?.chosenMeasures;
  if (byHand) {
    const { scope, unknown } = chosenByHand({ jobProblem, measures: byHand, limitCfm25: target?.limitCfm25 });
    aimed = [aimedScope("chosen", scope)];
    chosenId = "chosen";
    for (const { siteId, repairId } of unknown) {
      ledger.warn({
        code: "measure-does-not-fit",
        path: "#/plan/chosenMeasures",
        severity: "problem",
        what: `The repair “${repairId}” does not fit the leak “${siteId}”.`,
        why: "Each kind of leak has its own repairs, and a leak is repaired once.",
        nextMove: "Choose one of the repairs offered for this leak. Until then the measure is left out.",
      });
    }
  }
  if (solve && jobProblem.problem.leaks.length > 0) {
    const found = await scopeOptions({
      problem: jobProblem.problem,
      target: chance,
      objective: job.plan?.objective,
      ...askedLimits(input, book),
      solve,
    });
    outOfReach = found.outOfReach;
    const [byHandFirst] = aimed;
    const same = found.options.find(({ scope }) => byHandFirst && isSameWork(scope, byHandFirst.scope));
    const wanted = job.plan?.chosenOptionId;
    aimed = same ? found.options : [...aimed, ...found.options];
    if (same) chosenId = same.id;
    else if (!byHand)
      chosenId =
        (wanted !== undefined && found.options.some(({ id }) => id === wanted) ? wanted : found.recommendedId) ?? null;
  }
  const asbestosSiteIds = job.sites.filter((site) => site.isSuspectedAsbestos).map((site) => site.id);
  return {
    options: aimed.map((option) => pricedOption({ jobProblem, book, option, asbestosSiteIds })),
    chosenId,
    jobProblem,
    book,
    outOfReach,
  };
}
