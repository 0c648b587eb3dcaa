import type { ScopePoint } from "#lib/estimate/explore-scopes.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { priceFrontierOf } from "#lib/pictures/of-result/charts-of-result.ts";
import type { PriceFrontierInput } from "#lib/pictures/price-frontier.ts";
import { pointId } from "./scope-card.ts";

type Work = readonly { siteId: string; repairId: string }[];

const keyOf = (measures: Work): string =>
  measures
    .map(({ siteId, repairId }) => `${siteId} ${repairId}`)
    .sort()
    .join("|");

/** The points that are no option's own work. */
export function pointsBetween(points: readonly ScopePoint[], options: readonly ScopeOption[]): ScopePoint[] {
  const known = new Set(options.map(({ measures }) => keyOf(measures)));
  return points.filter(({ measures }) => !known.has(keyOf(measures)));
}

/** The options of the estimate by their titles, and every point between them by its number. */
export function frontierInput(result: Result, between: readonly ScopePoint[]): PriceFrontierInput | undefined {
  const ofOptions = priceFrontierOf(result);
  if (!ofOptions) return undefined;
  return {
    ...ofOptions,
    points: [
      ...ofOptions.points,
      ...between.map((point) => ({
        id: pointId(point),
        label: point.id,
        name: `Point ${point.id}`,
        priceUsdCents: point.priceUsdCents,
        predictedCfm25: point.predictedCfm25,
      })),
    ],
  };
}
