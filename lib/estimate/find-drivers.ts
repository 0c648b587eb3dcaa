import type { Driver } from "#lib/job/result/result-schema.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { HouseKernel } from "./kernel/house-kernel.ts";
import { outputKey } from "./kernel/write-outputs.ts";
import { DRIVER_GROUPS, type DriverGroup, fillParameters, type ParameterSpace } from "./parameter-space.ts";

/** A driver below this share of the spread is not worth a line. */
const LEAST_SHARE = 0.005;

/**
 * What makes the yearly saving uncertain: each group of parameters moved alone to its 10th and 90th percentile.
 * Parameters of a group that push the saving different ways are moved each its own way, one at a time, and their
 * effects are added in squares. Source: jcgm-101 annex B (one at a time), own-method for the groups.
 */
export function findDrivers({ kernel, space }: { kernel: HouseKernel; space: ParameterSpace }): Driver[] {
  const savedAt = kernel.layout.at(outputKey.plan(0, "savedUsd"));
  const out = new Float64Array(kernel.layout.keys.length);
  const normals = new Float64Array(space.parameters.length);
  const parameters = new Float64Array(space.parameters.length);
  const z = normalQuantile(0.9);
  const savedWith = (index: number, value: number): number => {
    normals.fill(0);
    normals[index] = value;
    fillParameters({ parameters: space.parameters, normals, out: parameters });
    kernel.evaluate(parameters, out);
    return out[savedAt]!;
  };
  kernel.evaluate(space.base(), out);
  const base = out[savedAt]!;
  const effects = new Map<DriverGroup, { low: number; high: number }>();
  space.parameters.forEach(({ group, spread }, index) => {
    if (spread.standardUncertainty === 0) return;
    const one = savedWith(index, -z) - base;
    const other = savedWith(index, z) - base;
    const effect = effects.get(group) ?? { low: 0, high: 0 };
    const down = Math.min(0, one, other);
    const up = Math.max(0, one, other);
    effects.set(group, { low: effect.low + down * down, high: effect.high + up * up });
  });
  const total = [...effects.values()].reduce((sum, { low, high }) => sum + low + high, 0);
  return [...effects]
    .map(([id, { low, high }]) => ({
      id,
      title: DRIVER_GROUPS[id].title,
      lowUsdPerYear: base - Math.sqrt(low),
      highUsdPerYear: base + Math.sqrt(high),
      varianceShare: total > 0 ? (low + high) / total : 0,
      nextMove: DRIVER_GROUPS[id].nextMove,
    }))
    .filter((driver) => driver.varianceShare >= LEAST_SHARE)
    .sort((one, other) => other.varianceShare - one.varianceShare || (one.id < other.id ? -1 : 1));
}
