/** A yes-or-no, whole or continuous quantity that the solver sets. */
export interface ModelColumn {
  name: string;
  /** Its share in the objective. */
  objective: number;
  lower: number;
  upper: number;
  isInteger: boolean;
}

/** lower ≤ Σ coefficient · column ≤ upper; either limit may be infinite. */
export interface ModelRow {
  name: string;
  lower: number;
  upper: number;
  terms: readonly { column: number; coefficient: number }[];
}

/** A mixed-integer linear programme: minimize Σ objective · column. */
export interface MixedIntegerModel {
  columns: readonly ModelColumn[];
  rows: readonly ModelRow[];
  /** Branch-and-bound nodes at most. A count and never a clock, so that the same model gives the same answer. */
  nodeLimitCount: number;
}

export interface MixedIntegerSolution {
  /** `node-limit`: the search stopped early; `values` is the best found, if any, and `bound` what is proven. */
  status: "optimal" | "infeasible" | "node-limit";
  /** One value a column; null when none was found. */
  values: readonly number[] | null;
  objective: number;
  /** No feasible point has a lower objective than this. Equal to `objective` when optimal. */
  bound: number;
  nodesCount: number;
}

/**
 * Solves a mixed-integer programme. Handed in by the caller, so that this layer stays pure: the server hands in one
 * that runs in process, a browser one that runs in a worker. It must be deterministic for a given model.
 */
export type MixedIntegerSolver = (model: MixedIntegerModel) => Promise<MixedIntegerSolution>;
