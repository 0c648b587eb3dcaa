import { byId, type Choice, type ChoiceGroup, listChoices, sprayVariance } from "./choices.ts";
import { interchangeableLeaks } from "./interchangeable.ts";
import {
  addRow,
  addSwitch,
  emptyDraft,
  type ModelDraft,
  type ObjectiveWeights,
  type Term,
  times,
} from "./model-draft.ts";
import type { ScopeGoal, ScopeProblem } from "./scope-problem.ts";
import { addMinimumCharge, addSharedCosts, addVisits } from "./shared-cost-rows.ts";

/** Where each decision stands in the model. */
export interface ScopeColumns {
  choices: { column: number; choice: Choice; group: ChoiceGroup }[];
  sprays: Map<string, number>;
  shared: Map<string, number>;
  visits: number | null;
}

export type ScopeLimits = Pick<ScopeGoal, "budgetUsdCents" | "labourHours" | "leastRemovedCfm25">;

/** A system is sprayed once, and each leak within reach is then in a state after spraying. */
function addSprays(draft: ModelDraft, problem: ScopeProblem): Map<string, number> {
  const sprays = new Map<string, number>();
  const bySystem = new Map<string, number[]>();
  for (const spray of [...problem.systemRepairs].sort(byId)) {
    const { costUsdCents, beforeTaxUsdCents, labourHours } = spray;
    const removedVariance = sprayVariance(problem, spray);
    const worth = { costUsdCents, beforeTaxUsdCents, labourHours, removedVariance };
    const column = addSwitch(draft, `spray ${spray.id}`, worth);
    sprays.set(spray.id, column);
    bySystem.set(spray.systemId, [...(bySystem.get(spray.systemId) ?? []), column]);
  }
  for (const [systemId, columns] of bySystem) {
    addRow(draft, { name: `one spraying of ${systemId}`, lower: 0, upper: 1, terms: times(columns, 1) });
  }
  return sprays;
}

function addChoices(draft: ModelDraft, groups: readonly ChoiceGroup[], sprays: ReadonlyMap<string, number>) {
  const entries: ScopeColumns["choices"] = [];
  for (const group of groups) {
    const own = group.choices.map((choice) => {
      const name = `${group.key} ${choice.repairId ?? "-"} ${choice.systemRepairId ?? "-"}`;
      return { column: addSwitch(draft, name, choice), choice, group };
    });
    entries.push(...own);
    const columnsOf = (sprayId: string) =>
      own.filter((entry) => entry.choice.systemRepairId === sprayId).map((entry) => entry.column);
    const all = own.map((entry) => entry.column);
    if (all.length > 0) addRow(draft, { name: `one state of ${group.key}`, lower: 0, upper: 1, terms: times(all, 1) });
    for (const [sprayId, column] of sprays) {
      const states = columnsOf(sprayId);
      if (states.length === 0) continue;
      const terms = [...times(states, 1), { column, coefficient: -1 }];
      addRow(draft, { name: `${group.key} after ${sprayId}`, lower: 0, upper: 0, terms });
    }
  }
  return entries;
}

function addRules(
  draft: ModelDraft,
  problem: ScopeProblem,
  { choices, sprays }: Pick<ScopeColumns, "choices" | "sprays">,
): void {
  const columnsOf = ({ leakId, repairId }: { leakId: string; repairId: string | null }) =>
    choices
      .filter(({ choice }) => choice.leakId === leakId && choice.repairId !== null)
      .filter(({ choice }) => repairId === null || choice.repairId === repairId)
      .map(({ column }) => column);
  for (const [left, right] of problem.exclusions) {
    const terms = times([...columnsOf(left), ...columnsOf(right)], 1);
    addRow(draft, { name: `not both ${left.leakId} and ${right.leakId}`, lower: 0, upper: 1, terms });
  }
  for (const { id, needsRepairedLeakIds, sparesHandAtLeakIds = [] } of problem.systemRepairs) {
    const column = sprays.get(id)!;
    for (const leakId of needsRepairedLeakIds) {
      const terms = [...times(columnsOf({ leakId, repairId: null }), 1), { column, coefficient: -1 }];
      addRow(draft, { name: `${id} after ${leakId}`, lower: 0, upper: Infinity, terms });
    }
    for (const leakId of sparesHandAtLeakIds) {
      const terms = [...times(columnsOf({ leakId, repairId: null }), 1), { column, coefficient: 1 }];
      addRow(draft, { name: `${id} and not by hand ${leakId}`, lower: 0, upper: 1, terms });
    }
  }
  for (const { repair, needs } of problem.prerequisites) {
    const terms = [...times(columnsOf(needs), 1), ...times(columnsOf(repair), -1)];
    addRow(draft, { name: `${repair.leakId} after ${needs.leakId}`, lower: 0, upper: Infinity, terms });
  }
}

/** Of leaks that nothing tells apart, the first by id is repaired first: ties break by id, and the search is shorter. */
function orderInterchangeable(draft: ModelDraft, problem: ScopeProblem, choices: ScopeColumns["choices"]): void {
  const ranks = (leakId: string, sign: number): Term[] => {
    const repaired = choices.filter(({ choice }) => choice.leakId === leakId && choice.repairId !== null);
    const repairIds = [...new Set(repaired.map(({ choice }) => choice.repairId))].sort();
    return repaired.map(({ column, choice }) => ({
      column,
      coefficient: sign * (repairIds.indexOf(choice.repairId) + 1),
    }));
  };
  for (const [first, second] of interchangeableLeaks(problem)) {
    const terms = [...ranks(first, 1), ...ranks(second, -1)];
    addRow(draft, { name: `${first} before ${second}`, lower: 0, upper: Infinity, terms });
  }
}

/**
 * The scope problem as a mixed-integer programme: one yes-or-no column for each state a leak can end in, each spraying
 * and each shared cost, and a whole number of visits. Leaks, repairs and costs enter in the order of their ids, so the
 * order of the input changes nothing.
 */
export function draftScopeModel({
  problem,
  weights,
  limits,
}: {
  problem: ScopeProblem;
  weights: ObjectiveWeights;
  limits: ScopeLimits;
}): { draft: ModelDraft; at: ScopeColumns } {
  const draft = emptyDraft(weights);
  const sprays = addSprays(draft, problem);
  const choices = addChoices(draft, listChoices(problem), sprays);
  const shared = addSharedCosts(draft, problem, { choices, sprays });
  const visits = addVisits(draft, problem, { choices, sprays });
  addMinimumCharge(draft, problem, { choices, sprays });
  addRules(draft, problem, { choices, sprays });
  orderInterchangeable(draft, problem, choices);
  const { priceUsd, labourHours, removedCfm25 } = draft.tallies;
  if (limits.budgetUsdCents !== undefined) {
    addRow(draft, { name: "budget", lower: -Infinity, upper: limits.budgetUsdCents / 100, terms: priceUsd });
  }
  if (limits.labourHours !== undefined) {
    addRow(draft, { name: "hours", lower: -Infinity, upper: limits.labourHours, terms: labourHours });
  }
  if (limits.leastRemovedCfm25 !== undefined) {
    addRow(draft, { name: "least removed", lower: limits.leastRemovedCfm25, upper: Infinity, terms: removedCfm25 });
  }
  return { draft, at: { choices, sprays, shared, visits } };
}
