import loadHighs, { type Highs } from "highs";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { MixedIntegerModel, MixedIntegerSolution, MixedIntegerSolver } from "#lib/scope/solver.ts";

/** Fixed, so that a model always takes the same path through the search. */
const RANDOM_SEED = 20_000;

/** Rows packed one after another, as the solver wants them. */
function packRows(model: MixedIntegerModel) {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of model.rows) {
    for (const { column, coefficient } of row.terms) {
      indices.push(column);
      values.push(coefficient);
    }
    starts.push(indices.length);
  }
  return { format: "csr" as const, numRows: model.rows.length, numCols: model.columns.length, starts, indices, values };
}

function solveWith(highs: Highs, model: MixedIntegerModel): MixedIntegerSolution {
  const { optimal, infeasible, unboundedOrInfeasible, solutionLimit } = highs.constants.modelStatus;
  return highs.withModel(
    {
      numCols: model.columns.length,
      numRows: model.rows.length,
      colCost: model.columns.map((column) => column.objective),
      colLower: model.columns.map((column) => column.lower),
      colUpper: model.columns.map((column) => column.upper),
      rowLower: model.rows.map((row) => row.lower),
      rowUpper: model.rows.map((row) => row.upper),
      matrix: packRows(model),
      integrality: model.columns.map((column) => (column.isInteger ? 1 : 0)),
    },
    (instance): MixedIntegerSolution => {
      instance.options.set({
        output_flag: false,
        random_seed: RANDOM_SEED,
        mip_rel_gap: 0,
        mip_max_nodes: model.nodeLimitCount,
      });
      const { modelStatus } = instance.run();
      const nodesCount = Number(instance.info.get("mip_node_count"));
      if (modelStatus === infeasible || modelStatus === unboundedOrInfeasible) {
        return { status: "infeasible", values: null, objective: Infinity, bound: Infinity, nodesCount };
      }
      if (modelStatus !== optimal && modelStatus !== solutionLimit) {
        throw new InputProblem("solver-failed", [], `The solver stopped with status ${modelStatus}`);
      }
      const objective = Number(instance.info.get("objective_function_value"));
      const hasPoint = Number.isFinite(objective) && Math.abs(objective) < 1e30;
      return {
        status: modelStatus === optimal ? "optimal" : "node-limit",
        values: hasPoint ? [...instance.getSolution().colValue] : null,
        objective,
        bound: modelStatus === optimal ? objective : Number(instance.info.get("mip_dual_bound")),
        nodesCount,
      };
    },
  );
}

let loading: Promise<Highs> | undefined;

/**
 * The solver of this process: one thread, gap zero, a fixed seed, a limit on nodes and none on time. The runtime is
 * loaded once. It blocks while it runs, so a page loads its own in a worker with `solverOver`.
 */
export async function createHighsSolver(): Promise<MixedIntegerSolver> {
  loading ??= loadHighs();
  return solverOver(await loading);
}

/**
 * A solver over a loaded runtime, such as one that a browser's worker loaded from its own address.
 * The solver throws InputProblem "solver-failed" when the runtime itself gives up.
 */
export function solverOver(highs: Highs): MixedIntegerSolver {
  return async (model) => solveWith(highs, model);
}
