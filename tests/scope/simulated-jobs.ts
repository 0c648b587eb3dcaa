import type { ChosenScope, ScopeProblem } from "#lib/scope/scope-problem.ts";
import { seededRandom } from "./random-problem.ts";

/** Draws from the seeded generator: normal (Box and Muller), gamma (Marsaglia and Tsang), beta (two gammas). */
function drawsFrom(seed: number) {
  const random = seededRandom(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * (1 - random()) ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  /** Of a given mean and standard deviation, never negative. */
  const amount = (mean: number, sd: number): number => (sd === 0 ? mean : gamma((mean / sd) ** 2) * (sd ** 2 / mean));
  /** Of a given mean and standard deviation, between 0 and 1. */
  const share = (mean: number, sd: number): number => {
    if (sd === 0) return mean;
    const size = (mean * (1 - mean)) / sd ** 2 - 1;
    const [above, below] = [gamma(mean * size), gamma((1 - mean) * size)];
    return above / (above + below);
  };
  return { normal, amount, share };
}

/**
 * How often a scope leaves no more than the limit when it is carried out again and again on houses drawn from what is
 * known: leak sizes gamma, shares left beta (both skewed, as in life), the measurement normal. Only means and standard
 * deviations are shared with the method under test.
 */
export function simulateJobs({
  problem,
  scope,
  limitCfm25,
  jobsCount,
  seed,
}: {
  problem: ScopeProblem;
  scope: ChosenScope;
  limitCfm25: number;
  jobsCount: number;
  seed: number;
}): { reachedShare: number; meanCfm25: number; standardDeviationCfm25: number } {
  const { normal, amount, share } = drawsFrom(seed);
  const isTotal = problem.measure === "total";
  const sprays = problem.systemRepairs.filter(({ id }) => scope.systemRepairIds.includes(id));
  let reached = 0;
  let sum = 0;
  let sumOfSquares = 0;
  for (let job = 0; job < jobsCount; job += 1) {
    let left = problem.beforeCfm25 + problem.beforeStandardUncertaintyCfm25 * normal();
    const sprayShares = new Map(
      sprays.map((spray) => [spray.id, share(spray.remainingShare, spray.remainingSpreadShare)]),
    );
    for (const leak of problem.leaks) {
      const part = isTotal ? 1 : leak.toOutsideShare;
      const repairId = scope.measures.find(({ leakId }) => leakId === leak.id)?.repairId;
      const repair = leak.repairs.find(({ id }) => id === repairId);
      const spray = sprays.find(({ reachesLeakIds }) => reachesLeakIds.includes(leak.id));
      if (!repair && !spray) continue;
      const flow = amount(leak.cfm25, leak.standardUncertaintyCfm25) * part;
      const byHand = repair ? share(repair.remainingShare, repair.remainingSpreadShare) : 1;
      left -= flow * (1 - byHand * (spray ? sprayShares.get(spray.id)! : 1));
    }
    for (const spray of sprays) {
      for (const cell of problem.notYetFound.filter(({ systemId }) => systemId === spray.systemId)) {
        left -= (isTotal ? cell.cfm25 : cell.toOutsideCfm25) * (1 - sprayShares.get(spray.id)!);
      }
    }
    if (left <= limitCfm25) reached += 1;
    sum += left;
    sumOfSquares += left ** 2;
  }
  const meanCfm25 = sum / jobsCount;
  return {
    reachedShare: reached / jobsCount,
    meanCfm25,
    standardDeviationCfm25: Math.sqrt(sumOfSquares / jobsCount - meanCfm25 ** 2),
  };
}
