import { byId, type Choice } from "./choices.ts";
import { addColumn, addRow, addSwitch, type ModelDraft, times } from "./model-draft.ts";
import type { ScopeColumns } from "./scope-model.ts";
import type { ScopeProblem, SharedCost } from "./scope-problem.ts";

/** column ≥ every state of a leak, and ≥ every spraying, that calls for it: one row a leak, which is the tight form. */
function addCall(
  draft: ModelDraft,
  at: Pick<ScopeColumns, "choices" | "sprays">,
  call: {
    column: number;
    name: string;
    ofChoice: (choice: Choice, placeId: string | null) => boolean;
    ofSpray: (id: string) => boolean;
  },
): void {
  const callers = new Map<string, number[]>();
  for (const { column, choice, group } of at.choices) {
    if (!call.ofChoice(choice, group.placeId)) continue;
    const columns = callers.get(group.key) ?? [];
    columns.push(column);
    callers.set(group.key, columns);
  }
  for (const [id, column] of at.sprays) if (call.ofSpray(id)) callers.set(`spray ${id}`, [column]);
  for (const [key, columns] of callers) {
    const terms = [{ column: call.column, coefficient: 1 }, ...times(columns, -1)];
    addRow(draft, { name: `${call.name} for ${key}`, lower: 0, upper: Infinity, terms });
  }
}

const anyWork = { ofChoice: (choice: Choice) => choice.repairId !== null, ofSpray: () => true };

function callersOf({ neededFor }: SharedCost) {
  if (neededFor.kind === "any-work") return anyWork;
  if (neededFor.kind === "place") {
    return {
      ofChoice: (choice: Choice, placeId: string | null) => choice.repairId !== null && placeId === neededFor.placeId,
      ofSpray: () => false,
    };
  }
  return {
    ofChoice: (choice: Choice) => choice.repairId !== null && neededFor.repairIds.includes(choice.repairId),
    ofSpray: (id: string) => neededFor.repairIds.includes(id),
  };
}

/** Costs paid once: opening a place, a test, a permit. */
export function addSharedCosts(
  draft: ModelDraft,
  problem: ScopeProblem,
  at: Pick<ScopeColumns, "choices" | "sprays">,
): Map<string, number> {
  const columns = new Map<string, number>();
  for (const shared of [...problem.sharedCosts].sort(byId)) {
    const { costUsdCents, beforeTaxUsdCents, labourHours } = shared;
    const column = addSwitch(draft, `shared ${shared.id}`, { costUsdCents, beforeTaxUsdCents, labourHours });
    columns.set(shared.id, column);
    addCall(draft, at, { column, name: shared.id, ...callersOf(shared) });
  }
  return columns;
}

/** As many visits as the hours fill, one at least as soon as anything is done. Null when trips cost nothing. */
export function addVisits(
  draft: ModelDraft,
  problem: ScopeProblem,
  at: Pick<ScopeColumns, "choices" | "sprays">,
): number | null {
  if (problem.visits === null) return null;
  const { labourHoursEach, costUsdCents, beforeTaxUsdCents } = problem.visits;
  const hours = [...draft.tallies.labourHours];
  const mostCount = Math.ceil(hours.reduce((sum, term) => sum + term.coefficient, 0) / labourHoursEach) + 1;
  const column = addSwitch(draft, "visits", { costUsdCents, beforeTaxUsdCents }, mostCount);
  const terms = [
    { column, coefficient: labourHoursEach },
    ...hours.map((term) => ({ column: term.column, coefficient: -term.coefficient })),
  ];
  addRow(draft, { name: "hours fit the visits", lower: 0, upper: Infinity, terms });
  addCall(draft, at, { column, name: "a visit", ...anyWork });
  return column;
}

/** What is added to reach the least charge, with the tax on it. Comes last: it counts every other price. */
export function addMinimumCharge(
  draft: ModelDraft,
  problem: ScopeProblem,
  at: Pick<ScopeColumns, "choices" | "sprays">,
): void {
  if (problem.minimumCharge === null) return;
  const minimumUsd = problem.minimumCharge.minimumUsdCents / 100;
  const taxFactor = problem.minimumCharge.topUpTaxRates.reduce((sum, taxRate) => sum + taxRate, 1);
  const isAnyWork = addColumn(draft, { name: "any work", objective: 0, lower: 0, upper: 1, isInteger: true });
  addCall(draft, at, { column: isAnyWork, name: "any work", ...anyWork });
  const objective = taxFactor * draft.weights.perUsd;
  const topUp = addColumn(draft, { name: "top-up", objective, lower: 0, upper: minimumUsd, isInteger: false });
  const terms = [
    { column: topUp, coefficient: 1 },
    ...draft.tallies.beforeTaxUsd,
    { column: isAnyWork, coefficient: -minimumUsd },
  ];
  addRow(draft, { name: "least charge", lower: 0, upper: Infinity, terms });
  draft.tallies.priceUsd.push({ column: topUp, coefficient: taxFactor });
}
