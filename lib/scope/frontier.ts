import type { ChosenScope } from "./scope-problem.ts";
import { solveWeighted, type WeightedRequest } from "./solve-weighted.ts";

/** Points that a drawing can tell apart. */
const MOST_POINTS_COUNT = 16;
/** With fewer corners than this the steps between them are filled in. */
const FEW_POINTS_COUNT = 8;
/** A point must beat the line between its neighbors by a cent. */
const LEAST_GAIN_USD = 0.01;
/** The most that can be sealed, and of equals the cheapest. */
const SEALED_FIRST = { perUsd: 1e-6, perRemovedCfm25: -1, perValueUsd: 0 };

const priceUsd = (scope: ChosenScope): number => scope.priceUsdCents / 100;
const isSame = (one: ChosenScope, other: ChosenScope): boolean =>
  one.priceUsdCents === other.priceUsdCents && Math.abs(one.removedCfm25 - other.removedCfm25) < 1e-6;

interface Step {
  from: ChosenScope;
  to: ChosenScope;
}

/** The widest steps first, by the area between their ends. */
function widestFirst(one: Step, other: Step): number {
  const area = ({ from, to }: Step) => (priceUsd(to) - priceUsd(from)) * (to.removedCfm25 - from.removedCfm25);
  return area(other) - area(one);
}

/**
 * Price against expected leakage: scopes of which none is both cheaper and tighter, from nothing done to all that can
 * be sealed.
 * Between two points the best of price − λ · removed is sought, λ the slope of the line through them; what lies below
 * the line is a corner of the frontier, and the search goes on to either side (dichotomic search). Where there are few
 * corners, the cheapest scope that removes at least what lies halfway fills the step. At most 16 points, in the order
 * of price, each of them the proven optimum of its own problem. Source: own-method. Left out: steps between corners
 * when there are many.
 */
export async function scopeFrontier({
  problem,
  solve,
  nodeLimitCount,
}: Pick<WeightedRequest, "problem" | "solve" | "nodeLimitCount">): Promise<ChosenScope[]> {
  const ask = (request: Pick<WeightedRequest, "weights" | "limits">) =>
    solveWeighted({ problem, solve, nodeLimitCount, ...request });
  const most = await ask({ weights: SEALED_FIRST, limits: {} });
  const least = await ask({ weights: { perUsd: 1, perRemovedCfm25: 0, perValueUsd: 0 }, limits: {} });
  if (most === null || least === null || isSame(most, least)) return least === null ? [] : [least];
  const points = [least, most];
  const steps: Step[] = [{ from: least, to: most }];
  const small: Step[] = [];
  while (steps.length > 0 && points.length < MOST_POINTS_COUNT) {
    steps.sort(widestFirst);
    const step = steps.shift()!;
    const { from, to } = step;
    const usdPerCfm25 = (priceUsd(to) - priceUsd(from)) / (to.removedCfm25 - from.removedCfm25);
    const found = await ask({ weights: { perUsd: 1, perRemovedCfm25: -usdPerCfm25, perValueUsd: 0 }, limits: {} });
    const worth = (scope: ChosenScope) => priceUsd(scope) - usdPerCfm25 * scope.removedCfm25;
    if (found === null || worth(found) > worth(from) - LEAST_GAIN_USD) {
      small.push(step);
      continue;
    }
    points.push(found);
    steps.push({ from, to: found }, { from: found, to });
  }
  if (points.length < FEW_POINTS_COUNT) points.push(...(await fillSteps(small, ask, FEW_POINTS_COUNT - points.length)));
  return points.sort((one, other) => one.priceUsdCents - other.priceUsdCents || one.removedCfm25 - other.removedCfm25);
}

/** The cheapest scope past the middle of each wide step. */
async function fillSteps(
  steps: Step[],
  ask: (request: Pick<WeightedRequest, "weights" | "limits">) => Promise<ChosenScope | null>,
  mostCount: number,
): Promise<ChosenScope[]> {
  const found: ChosenScope[] = [];
  const queue = [...steps].sort(widestFirst);
  while (queue.length > 0 && found.length < mostCount) {
    const { from, to } = queue.shift()!;
    const leastRemovedCfm25 = (from.removedCfm25 + to.removedCfm25) / 2;
    const between = await ask({
      weights: { perUsd: 1, perRemovedCfm25: -1e-6, perValueUsd: 0 },
      limits: { leastRemovedCfm25 },
    });
    if (between === null || isSame(between, to)) continue;
    found.push(between);
    queue.push({ from, to: between }, { from: between, to });
    queue.sort(widestFirst);
  }
  return found;
}
