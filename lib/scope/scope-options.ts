import { refuse } from "#lib/errors/input-problem.ts";
import { evaluateScope } from "./evaluate-scope.ts";
import type { OptionAim } from "./left-undone.ts";
import { measureId } from "./measure-details.ts";
import { optimizeScope } from "./optimize-scope.ts";
import { explainOutOfReach } from "./out-of-reach.ts";
import type { ChosenScope, ScopeGoal, ScopeProblem } from "./scope-problem.ts";
import type { MixedIntegerSolver } from "./solver.ts";

/** Share of the fuller option's effect that the essential one must have. */
const ESSENTIAL_SHARE = 0.5;
const MOST_OPTIONS_COUNT = 3;

export interface AimedScope {
  id: OptionAim;
  title: string;
  summary: string;
  scope: ChosenScope;
}

export interface ScopeOptions {
  /** One to three, cheapest first; none when nothing is worth doing. */
  options: readonly AimedScope[];
  /** The option that meets the plan: the target if there is one, else everything worth reaching. */
  recommendedId: OptionAim | null;
  /** Sentences for people when the target cannot be promised. */
  outOfReach: readonly string[];
}

export interface ScopeOptionsRequest {
  problem: ScopeProblem;
  target?: ScopeGoal["target"];
  /** What the recommended option is for; to reach the target when not said. */
  objective?: "reach-target" | "most-value" | "crew-hours";
  /** Limits that every option keeps. */
  budgetUsdCents?: number;
  labourHours?: number;
  solve: MixedIntegerSolver;
  nodeLimitCount?: number;
}

/** The names are those of the homeowner's paper, so that both talk of one thing; a test holds them together. */
const TITLES: Readonly<Record<OptionAim, { title: string; summary: string }>> = {
  essential: { title: "The essential", summary: "The least work that gets at least half of the effect" },
  target: { title: "Reaches the goal", summary: "The lowest price that reaches the target as surely as asked" },
  everything: { title: "All that pays", summary: "The most saved over the years beyond its price" },
  closest: { title: "As tight as can be", summary: "The lowest leakage that can be promised" },
  chosen: { title: "Picked by hand", summary: "The measures that were chosen, without a search for better ones" },
  limited: { title: "Within the limit", summary: "The most that the budget or the hours allow" },
};

/** Said where a target is out of reach and some work is worth its price. */
export const ADVICE_BY_VALUE =
  "So the advice is the work that is worth most beyond its price; what comes closest to the target stands beside it.";

/** A scope under the title of what it is for. */
export const aimedScope = (id: OptionAim, scope: ChosenScope): AimedScope => ({ id, ...TITLES[id], scope });

/** The probability of a scope that was chosen for something else than the target. */
function withProbability(scope: ChosenScope, target: ScopeGoal["target"], problem: ScopeProblem): ChosenScope {
  if (!target) return scope;
  const { measures, systemRepairIds } = scope;
  const { probabilityOfReachingTarget } = evaluateScope({
    problem,
    measures,
    systemRepairIds,
    limitCfm25: target.limitCfm25,
  });
  return { ...scope, probabilityOfReachingTarget };
}

/** Whether two scopes put the same repairs on the same leaks, in whatever order they are listed. */
export function isSameWork(one: ChosenScope, other: ChosenScope): boolean {
  const key = ({ measures, systemRepairIds }: ChosenScope) =>
    [...measures.map(({ leakId, repairId }) => measureId(leakId, repairId)), ...systemRepairIds].sort().join(" ");
  return key(one) === key(other);
}

/**
 * Up to three scopes side by side: the essential, the one that reaches the target, everything worth reaching.
 * Target: least price with the probability asked for. Everything: most lifetime value beyond its price, target kept.
 * Within the limit (objective crew-hours): most sealed in the hours. Essential: least price for half of the leakage
 * that the recommended one removes. Two that are the same work are shown once. Where the target is out of reach, the
 * reasons are told, and unless the hours are the aim the advice is what is worth most beyond its price over the years
 * (everything); what comes closest stands beside it, and is the advice only where no work is worth its price. Source:
 * own-method: a target that is missed all the same is no reason to pay for work that does not pay for itself.
 * @throws InputProblem when the objective is crew hours and none are given.
 */
export async function scopeOptions(request: ScopeOptionsRequest): Promise<ScopeOptions> {
  const { problem, target, objective = "reach-target", budgetUsdCents, labourHours, solve, nodeLimitCount } = request;
  const ask = (goal: ScopeGoal) =>
    optimizeScope({ problem, goal: { budgetUsdCents, labourHours, ...goal }, solve, nodeLimitCount });
  const scopeFor = async (id: OptionAim, goal: ScopeGoal): Promise<AimedScope[]> => {
    const outcome = await ask(goal);
    return outcome.kind === "scope" ? [aimedScope(id, withProbability(outcome.scope, target, problem))] : [];
  };
  const reached = target ? await ask({ want: "least-price", target }) : null;
  const forTarget: AimedScope[] = [];
  let outOfReach: string[] = [];
  if (target && reached?.kind === "scope") forTarget.push(aimedScope("target", reached.scope));
  if (target && reached?.kind === "out-of-reach") {
    const { why } = reached;
    forTarget.push(
      aimedScope(why.isHeldBackByLimits ? "limited" : "closest", withProbability(why.closest, target, problem)),
    );
    outOfReach = explainOutOfReach(why, target.limitCfm25);
  }
  const keptTarget = reached?.kind === "scope" ? target : undefined;
  const everything = await scopeFor("everything", { want: "most-net-value", target: keptTarget });
  const within =
    objective === "crew-hours" ? await scopeFor("limited", { want: "most-sealed", ...neededHours(labourHours) }) : [];
  const isByValue = objective === "most-value" || reached?.kind === "out-of-reach";
  const inOrder = [...within, ...(isByValue ? [...everything, ...forTarget] : [...forTarget, ...everything])];
  const doing = inOrder.filter(({ scope }) => scope.measures.length + scope.systemRepairIds.length > 0);
  const recommended = doing[0];
  if (!recommended) return { options: [], recommendedId: null, outOfReach };
  if (recommended.id === "everything" && outOfReach.length > 0 && objective !== "most-value")
    outOfReach = [...outOfReach, ADVICE_BY_VALUE];
  const leastRemovedCfm25 = ESSENTIAL_SHARE * recommended.scope.removedCfm25;
  const all = [...doing, ...(await scopeFor("essential", { want: "least-price", leastRemovedCfm25 }))];
  const options = all
    .filter(({ scope }, index) => !all.slice(0, index).some((earlier) => isSameWork(earlier.scope, scope)))
    .slice(0, MOST_OPTIONS_COUNT)
    .sort((one, other) => one.scope.priceUsdCents - other.scope.priceUsdCents);
  return { options, recommendedId: recommended.id, outOfReach };
}

function neededHours(labourHours: number | undefined): { labourHours: number } {
  if (labourHours !== undefined) return { labourHours };
  return refuse({
    field: "#/plan/crewHours",
    detail: "The plan is to finish within the crew's hours, but no hours are given",
    fix: "Enter the crew hours, or choose another aim.",
    code: "missing",
  });
}
