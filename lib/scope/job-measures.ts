import type { LeakSite, Reach } from "#lib/job/leak-site.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { USUAL_REACH } from "./fitting-repairs.ts";
import { coveringRepairId, leaksOfOneRun, type RunRules } from "./leaks-of-one-run.ts";
import {
  handMeasures,
  type MeasureDetail,
  pricedRepairs,
  type SprayOfSystem,
  sprayMeasure,
} from "./measure-details.ts";
import type { RepairCatalogue } from "./repair-schema.ts";

/** All that can be done to the leaks of a job, before anything is priced. */
export interface JobMeasures extends RunRules {
  /** By `measureId`. */
  details: ReadonlyMap<string, MeasureDetail>;
  sprays: readonly SprayOfSystem[];
  /** Leaks whose reach was not said, with what was taken. */
  assumedReach: readonly { siteId: string; reach: Reach }[];
  /** Repairs left out because the price book has no price for one of their materials. */
  unpricedRepairIds: readonly string[];
}

/** The measures that fit a job's leaks, and the sprayings of the systems named where the crew can spray. */
export function jobMeasures({
  sites,
  places,
  book,
  sprayedSystemIds,
  ...input
}: {
  sites: readonly LeakSite[];
  places: readonly Place[];
  catalogue: RepairCatalogue;
  book: PriceBook;
  sprayedSystemIds: Iterable<string>;
}): JobMeasures {
  const { priced: catalogue, unpricedRepairIds } = pricedRepairs(input.catalogue, book);
  const details = new Map<string, MeasureDetail>();
  const assumedReach: { siteId: string; reach: Reach }[] = [];
  const alone = sites.map((site) => {
    const place = places.find(({ id }) => id === site.placeId)!;
    const reach = site.reach ?? USUAL_REACH[place.kind];
    if (!site.reach) assumedReach.push({ siteId: site.id, reach });
    return handMeasures({ catalogue, site, place, reach });
  });
  const run = leaksOfOneRun(sites, alone);
  for (const detail of run.byHand.flat()) details.set(detail.id, detail);
  const isCovered = (siteId: string) =>
    run.byHand.flat().some((detail) => detail.siteId === siteId && coveringRepairId(detail.repair.id) !== null);
  const wholeSystem = catalogue.repairs.filter(({ reachesWholeSystem }) => reachesWholeSystem);
  const sprays = [...sprayedSystemIds].flatMap((systemId) =>
    wholeSystem.map((repair): SprayOfSystem => {
      const { detail, ...scope } = sprayMeasure({ catalogue, repair, systemId, sites });
      details.set(detail.id, detail);
      // New duct closes it all the same, sprayed or not.
      const sparesHandAtLeakIds = scope.sparesHandAtLeakIds.filter((siteId) => !isCovered(siteId));
      return { id: detail.id, systemId, ...scope, sparesHandAtLeakIds };
    }),
  );
  return { ...run, details, sprays, assumedReach, unpricedRepairIds };
}
