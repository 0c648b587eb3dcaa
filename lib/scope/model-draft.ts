import type { Choice } from "./choices.ts";
import type { ModelColumn, ModelRow } from "./solver.ts";

/** What one unit of each quantity is worth in the objective, which is minimized. */
export interface ObjectiveWeights {
  perUsd: number;
  perRemovedCfm25: number;
  perValueUsd: number;
}

export type Term = ModelRow["terms"][number];

/** What a yes-or-no column brings with it. */
export type Worth = Partial<Omit<Choice, "leakId" | "repairId" | "systemRepairId">>;

/** Σ coefficient · column of each quantity over the columns so far. */
export interface Tallies {
  priceUsd: Term[];
  beforeTaxUsd: Term[];
  labourHours: Term[];
  removedCfm25: Term[];
  removedVariance: Term[];
}

/** The rows and columns of a model while it is written. */
export interface ModelDraft {
  weights: ObjectiveWeights;
  columns: ModelColumn[];
  rows: ModelRow[];
  tallies: Tallies;
}

export function emptyDraft(weights: ObjectiveWeights): ModelDraft {
  const tallies = { priceUsd: [], beforeTaxUsd: [], labourHours: [], removedCfm25: [], removedVariance: [] };
  return { weights, columns: [], rows: [], tallies };
}

export function addColumn(draft: ModelDraft, column: ModelColumn): number {
  draft.columns.push(column);
  return draft.columns.length - 1;
}

export function addRow(draft: ModelDraft, row: ModelRow): void {
  draft.rows.push(row);
}

export const times = (columns: readonly number[], coefficient: number): Term[] =>
  columns.map((column) => ({ column, coefficient }));

/** Adds a whole-number column (yes or no unless `upper` says more) and enters what it brings in every tally. */
export function addSwitch(draft: ModelDraft, name: string, worth: Worth, upper = 1): number {
  const { weights, tallies } = draft;
  const priceUsd = (worth.costUsdCents ?? 0) / 100;
  const removedCfm25 = worth.removedCfm25 ?? 0;
  const objective =
    priceUsd * weights.perUsd + removedCfm25 * weights.perRemovedCfm25 + (worth.valueUsd ?? 0) * weights.perValueUsd;
  const column = addColumn(draft, { name, objective, lower: 0, upper, isInteger: true });
  const enter = (terms: Term[], coefficient: number) => {
    if (coefficient !== 0) terms.push({ column, coefficient });
  };
  enter(tallies.priceUsd, priceUsd);
  enter(tallies.beforeTaxUsd, (worth.beforeTaxUsdCents ?? 0) / 100);
  enter(tallies.labourHours, worth.labourHours ?? 0);
  enter(tallies.removedCfm25, removedCfm25);
  enter(tallies.removedVariance, worth.removedVariance ?? 0);
  return column;
}
