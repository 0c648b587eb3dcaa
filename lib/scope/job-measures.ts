import type { LeakSite, Reach } from "#lib/job/leak-site.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { USUAL_REACH } from "./fitting-repairs.ts";
import { handMeasures, type MeasureDetail, measureId, pricedRepairs, sprayMeasure } from "./measure-details.ts";
import type { RepairCatalogue } from "./repair-schema.ts";

/** Spraying one system: what it is, the leaks it reaches and those that must be closed by hand before. */
export interface SprayOfSystem {
  id: string;
  systemId: string;
  reachesLeakIds: readonly string[];
  needsRepairedLeakIds: readonly string[];
}

/** All that can be done to the leaks of a job, before anything is priced. */
export interface JobMeasures {
  /** By `measureId`. */
  details: ReadonlyMap<string, MeasureDetail>;
  /** Measures by hand, in step with the leaks. */
  byHand: readonly (readonly MeasureDetail[])[];
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
  const byHand = sites.map((site) => {
    const place = places.find(({ id }) => id === site.placeId)!;
    const reach = site.reach ?? USUAL_REACH[place.kind];
    if (!site.reach) assumedReach.push({ siteId: site.id, reach });
    const measures = handMeasures({ catalogue, site, place, reach });
    for (const detail of measures) details.set(detail.id, detail);
    return measures;
  });
  const wholeSystem = catalogue.repairs.filter(({ reachesWholeSystem }) => reachesWholeSystem);
  const sprays = [...sprayedSystemIds].flatMap((systemId) =>
    wholeSystem.map((repair): SprayOfSystem => {
      const { detail, ...scope } = sprayMeasure({ catalogue, repair, systemId, sites });
      details.set(detail.id, detail);
      return { id: detail.id, systemId, ...scope };
    }),
  );
  return { details, byHand, sprays, assumedReach, unpricedRepairIds };
}

interface StatedMeasure {
  siteId: string;
  repairId: string;
}

/**
 * Measures stated by hand, those by hand before those that reach a whole system. Measures whose leak or repair does not
 * exist or does not fit, and a second one for the same leak, are `unknown` and left out.
 */
export function statedMeasures(
  details: JobMeasures["details"],
  measures: readonly StatedMeasure[],
): { byHand: readonly StatedMeasure[]; sprays: readonly StatedMeasure[]; unknown: readonly StatedMeasure[] } {
  const isFirst = (siteId: string, index: number) =>
    measures.findIndex((measure) => measure.siteId === siteId) === index;
  const known = measures.filter(
    ({ siteId, repairId }, index) => details.has(measureId(siteId, repairId)) && isFirst(siteId, index),
  );
  const isSpray = ({ siteId, repairId }: StatedMeasure) =>
    details.get(measureId(siteId, repairId))!.repair.reachesWholeSystem;
  return {
    byHand: known.filter((measure) => !isSpray(measure)),
    sprays: known.filter(isSpray),
    unknown: measures.filter((measure) => !known.includes(measure)),
  };
}
