import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import type { HouseKernel } from "./kernel/house-kernel.ts";
import type { Outcome } from "./output-layout.ts";
import { fillParameters, type ParameterSpace } from "./parameter-space.ts";

/**
 * Evaluates the house at its best estimates, and once more for every draw of its uncertain parameters.
 * Propagation of distributions by Monte Carlo (jcgm-101). The numbers of draw k depend on the seed and k alone, so the
 * result does not depend on how draws are shared among workers. `from` and `to` name the draws of one share.
 */
export function runDraws({
  kernel,
  space,
  seed,
  from,
  to,
}: {
  kernel: HouseKernel;
  space: ParameterSpace;
  seed: number;
  from: number;
  to: number;
}): Float64Array[] {
  const count = to - from;
  const outputs = kernel.layout.keys.length;
  const rows = Array.from({ length: outputs }, () => new Float64Array(count));
  const source = createDrawSource(seed);
  const normals = new Float64Array(space.parameters.length);
  const parameters = new Float64Array(space.parameters.length);
  const out = new Float64Array(outputs);
  for (let k = 0; k < count; k++) {
    source.fillNormals(from + k, normals);
    fillParameters({ parameters: space.parameters, normals, out: parameters });
    kernel.evaluate(parameters, out);
    for (let i = 0; i < outputs; i++) rows[i]![k] = out[i]!;
  }
  return rows;
}

/**
 * The house at its best estimates, with ranges when draws are asked for; `rows` are draws made elsewhere. The
 * deterministic evaluation comes last.
 */
export function evaluateHouse({
  kernel,
  space,
  draws,
  seed,
  rows = draws > 0 ? runDraws({ kernel, space, seed, from: 0, to: draws }) : null,
}: {
  kernel: HouseKernel;
  space: ParameterSpace;
  draws: number;
  seed: number;
  rows?: readonly Float64Array[] | null;
}): Outcome {
  const values = new Float64Array(kernel.layout.keys.length);
  kernel.evaluate(space.base(), values);
  return { values, draws: rows };
}
