import { group } from "d3-array";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import type { Share } from "#lib/units/quantity.ts";
import { inspectionSampleSize } from "./inspection-sample-size.ts";

/** A claim that may be drawn, with the group it belongs to. */
export interface SampledClaim {
  id: string;
  /** Such as the contractor, and whether there are flags. */
  stratum: string;
}

export interface Stratum {
  stratum: string;
  populationCount: number;
  sampleCount: number;
  claimIds: string[];
}

export interface InspectionSample {
  populationCount: number;
  sampleCount: number;
  strata: Stratum[];
}

/** A group of which one claim is seen says nothing of its spread. Source: cochran-1977 §5.6. */
const LEAST_PER_STRATUM: number = 2;

/**
 * A sample whose size follows from confidence and precision, spread over the strata by their size, at least two of each.
 * The same seed and claims give the same sample, in whatever order the claims come. Source: cochran-1977 §5.5
 * (proportional allocation), by largest remainder. Left out: optimum allocation, which needs the spread of each stratum.
 * @throws InputProblem as inspectionSampleSize does.
 */
export function drawInspectionSample({
  claims,
  seed,
  confidenceProbability,
  precisionShare,
}: {
  claims: readonly SampledClaim[];
  seed: number;
  confidenceProbability: Share;
  precisionShare: Share;
}): InspectionSample {
  const populationCount = claims.length;
  const { sampleCount } = inspectionSampleSize({ populationCount, confidenceProbability, precisionShare });
  const byStratum = group(claims, ({ stratum }) => stratum);
  const names = [...byStratum.keys()].sort();
  const sizes = names.map((name) => byStratum.get(name)!.length);
  const counts = allocate(sizes, sampleCount);
  const source = createDrawSource(seed);
  const strata = names.map((stratum, index): Stratum => {
    const ids = byStratum
      .get(stratum)!
      .map(({ id }) => id)
      .sort();
    const draws = new Float64Array(ids.length);
    source.fillUniforms(index, draws);
    // The ids with the smallest random numbers: every set of this size is equally likely.
    const drawn = ids
      .map((id, at) => ({ id, draw: draws[at]! }))
      .sort((one, other) => one.draw - other.draw)
      .slice(0, counts[index])
      .map(({ id }) => id)
      .sort();
    return { stratum, populationCount: ids.length, sampleCount: drawn.length, claimIds: drawn };
  });
  return { populationCount, sampleCount: strata.reduce((sum, each) => sum + each.sampleCount, 0), strata };
}

/** Whole numbers near the shares of the total, each within what its stratum has; the least may raise the total. */
function allocate(sizes: readonly number[], total: number): number[] {
  const population = sizes.reduce((sum, size) => sum + size, 0);
  const shares = sizes.map((size) => (size * total) / population);
  const counts = shares.map(Math.floor);
  const byRemainder = shares
    .map((share, index) => ({ index, remainder: share - Math.floor(share) }))
    .sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  const missing = total - counts.reduce((sum, count) => sum + count, 0);
  for (const { index } of byRemainder.slice(0, missing)) counts[index]! += 1;
  return counts.map((count, index) => Math.min(sizes[index]!, Math.max(LEAST_PER_STRATUM, count)));
}
