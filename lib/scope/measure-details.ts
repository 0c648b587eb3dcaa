import type { LeakKindId } from "#lib/job/leak-kinds.ts";
import type { LeakSite, Reach } from "#lib/job/leak-site.ts";
import { PLACE_LABELS } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { fittingRepairs, isNarrow, labourOf, materialsOf } from "./fitting-repairs.ts";
import { costOf } from "./job-shared-costs.ts";
import { linesOfMeasure, type PricedMeasure } from "./price-scope.ts";
import type { Repair, RepairCatalogue } from "./repair-schema.ts";
import type { CandidateRepair } from "./scope-problem.ts";

/** A measure with all that documents, prices and crew sheets need. */
export interface MeasureDetail extends PricedMeasure {
  /** The leak's id; the system's for a whole-system repair. */
  siteId: string;
  repair: Repair;
}

/** One repair at one leak, or of one system. */
export const measureId = (siteId: string, repairId: string): string => `${siteId} ${repairId}`;

/** Spraying one system: what it is, and the leaks that it has to do with. */
export interface SprayOfSystem {
  id: string;
  systemId: string;
  reachesLeakIds: readonly string[];
  /** Closed by hand before. */
  needsRepairedLeakIds: readonly string[];
  /** Left to it, so that nobody seals them by hand as well. */
  sparesHandAtLeakIds: readonly string[];
}

/** A system is sprayed with everything ready for the usual case. Source: practice. */
const SPRAY_REACH = "moderate";
/** Isolated while a system is sprayed, so they neither leak then nor have to be closed before. Source: practice. */
const ISOLATED_KINDS: readonly LeakKindId[] = ["air-handler-cabinet", "filter-slot", "platform-return"];

/** The repairs that a price book can price, and the ids of those with a material that it does not know. */
export function pricedRepairs(catalogue: RepairCatalogue, book: PriceBook) {
  const known = new Set(book.materials.map(({ id }) => id));
  const isPriced = ({ materials }: Repair) => materials.every(({ materialId }) => known.has(materialId));
  return {
    priced: { ...catalogue, repairs: catalogue.repairs.filter(isPriced) },
    unpricedRepairIds: catalogue.repairs.filter((repair) => !isPriced(repair)).map(({ id }) => id),
  };
}

/** Everything that can be done by hand at one leak, whatever is done at others. */
export function handMeasures({
  catalogue,
  site,
  place,
  reach,
}: {
  catalogue: RepairCatalogue;
  site: LeakSite;
  place: Place;
  reach: Reach;
}): MeasureDetail[] {
  return fittingRepairs({ catalogue, site })
    .filter(({ reachesWholeSystem }) => !reachesWholeSystem)
    .map((repair) => ({
      id: measureId(site.id, repair.id),
      siteId: site.id,
      repair,
      title: repair.title,
      place: { id: place.id, kind: place.kind, title: place.label ?? PLACE_LABELS[place.kind] },
      labourHours: labourOf(repair, reach),
      materials: materialsOf(repair, site),
      replacesDuct: repair.replacesDuct,
    }));
}

/** Spraying one system, with the leaks it reaches, those that must be closed by hand before, and those left to it. */
export function sprayMeasure({
  catalogue,
  repair,
  systemId,
  sites,
}: {
  catalogue: RepairCatalogue;
  repair: Repair;
  systemId: string;
  sites: readonly LeakSite[];
}): { detail: MeasureDetail } & Omit<SprayOfSystem, "id" | "systemId"> {
  const ofSystem = sites.filter((site) => site.systemId === systemId);
  const reached = ofSystem.filter((site) => fittingRepairs({ catalogue, site }).includes(repair));
  const tooWide = ofSystem.filter((site) => !reached.includes(site) && !ISOLATED_KINDS.includes(site.kind));
  return {
    detail: {
      id: measureId(systemId, repair.id),
      siteId: systemId,
      repair,
      title: repair.title,
      place: null,
      labourHours: labourOf(repair, SPRAY_REACH),
      materials: materialsOf(repair, null),
      replacesDuct: repair.replacesDuct,
    },
    reachesLeakIds: reached.map(({ id }) => id),
    needsRepairedLeakIds: tooWide.map(({ id }) => id),
    sparesHandAtLeakIds: reached.filter((site) => isNarrow(site, repair.sparesHandSealingUpToIn)).map(({ id }) => id),
  };
}

/** A measure as the optimum sees it, priced by the very lines that the proposal charges. */
export function candidateOf(book: PriceBook, id: string, detail: MeasureDetail): CandidateRepair {
  return {
    id,
    ...costOf(book, linesOfMeasure(book, detail)),
    labourHours: detail.labourHours,
    remainingShare: detail.repair.remainingShare,
    remainingSpreadShare: detail.repair.remainingSpreadShare,
  };
}
