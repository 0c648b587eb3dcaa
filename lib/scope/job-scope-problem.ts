import type { LeakSite } from "#lib/job/leak-site.ts";
import { PLACE_LABELS, type Place } from "#lib/job/place.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cfm, Dollars, Share } from "#lib/units/quantity.ts";
import { fittingRepairs, labourOf, materialsOf, USUAL_REACH } from "./fitting-repairs.ts";
import { costOf, jobSharedCosts } from "./job-shared-costs.ts";
import { labourHoursOfVisit, visitLine } from "./price-lines.ts";
import { linesOfMeasure, type PricedMeasure } from "./price-scope.ts";
import type { Repair, RepairCatalogue } from "./repair-schema.ts";
import type { CandidateRepair, ScopeLeak, ScopeProblem, UnfoundLeakage } from "./scope-problem.ts";

/** One leak as the stages before left it. */
export interface SiteFindings {
  site: LeakSite;
  cfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
  toOutsideShare: Share;
  operatingCfm: Cfm;
  /** Worth of closing it wholly, over the life of the repair. */
  lifetimeValueUsd: Dollars;
}

/** A measure with all that documents, prices and crew sheets need. */
export interface MeasureDetail extends PricedMeasure {
  /** The leak's id; the system's for a whole-system repair. */
  siteId: string;
  repair: Repair;
}

export interface JobScopeProblem {
  problem: ScopeProblem;
  /** By `measureId`. */
  details: ReadonlyMap<string, MeasureDetail>;
  /** Leaks whose reach was not said, with what was taken. */
  assumedReach: readonly { siteId: string; reach: LeakSite["reach"] }[];
}

export const measureId = (siteId: string, repairId: string): string => `${siteId} ${repairId}`;
/** A system is sprayed with everything ready for the usual case; the log tells. Source: practice. */
const SPRAY_REACH = "moderate";
/** The id of a whole-system repair in the problem: one system, one repair. */
export const systemRepairId = measureId;

function candidateOf(book: PriceBook, id: string, detail: MeasureDetail): CandidateRepair {
  return {
    id,
    ...costOf(book, linesOfMeasure(book, detail)),
    labourHours: detail.labourHours,
    remainingShare: detail.repair.remainingShare,
    remainingSpreadShare: detail.repair.remainingSpreadShare,
  };
}

/**
 * A job's leaks, repairs and prices as the problem that the optimum solves. Each cost is the very line that
 * `priceScope` charges, so the optimum's price and the proposal's are one figure.
 * @throws InputProblem when the price book has no price for a material of a fitting repair.
 */
export function jobScopeProblem({
  findings,
  places,
  catalogue,
  book,
  measure,
  beforeCfm25,
  beforeStandardUncertaintyCfm25,
  notYetFound,
  offersSpray,
}: {
  findings: readonly SiteFindings[];
  places: readonly Place[];
  catalogue: RepairCatalogue;
  book: PriceBook;
  measure: ScopeProblem["measure"];
  beforeCfm25: Cfm;
  beforeStandardUncertaintyCfm25: Cfm;
  notYetFound: readonly UnfoundLeakage[];
  /** Whether the crew can spray from inside. */
  offersSpray: boolean;
}): JobScopeProblem {
  const details = new Map<string, MeasureDetail>();
  const assumedReach: { siteId: string; reach: LeakSite["reach"] }[] = [];
  const reachedBySpray = new Map<string, string[]>();
  const leaks = findings.map(({ site, ...found }): ScopeLeak => {
    const place = places.find(({ id }) => id === site.placeId)!;
    const reach = site.reach ?? USUAL_REACH[place.kind];
    if (!site.reach) assumedReach.push({ siteId: site.id, reach });
    const fitting = fittingRepairs({ catalogue, site });
    for (const { id } of fitting.filter((repair) => repair.reachesWholeSystem)) {
      const key = systemRepairId(site.systemId, id);
      reachedBySpray.set(key, [...(reachedBySpray.get(key) ?? []), site.id]);
    }
    const repairs = fitting
      .filter((repair) => !repair.reachesWholeSystem)
      .map((repair) => {
        const detail: MeasureDetail = {
          id: measureId(site.id, repair.id),
          siteId: site.id,
          repair,
          title: repair.title,
          place: { id: place.id, kind: place.kind, title: place.label ?? PLACE_LABELS[place.kind] },
          labourHours: labourOf(repair, reach),
          materials: materialsOf(repair, site),
          replacesDuct: repair.replacesDuct,
        };
        details.set(detail.id, detail);
        return candidateOf(book, repair.id, detail);
      });
    return { id: site.id, systemId: site.systemId, placeId: site.placeId, ...found, repairs };
  });
  const systemIds = [
    ...new Set([...findings.map(({ site }) => site.systemId), ...notYetFound.map(({ systemId }) => systemId)]),
  ];
  const sprays = offersSpray ? catalogue.repairs.filter((repair) => repair.reachesWholeSystem) : [];
  const systemRepairs = systemIds.flatMap((systemId) =>
    sprays.map((repair) => {
      const id = systemRepairId(systemId, repair.id);
      const labourHours = labourOf(repair, SPRAY_REACH);
      const materials = materialsOf(repair, null);
      const detail = {
        id,
        siteId: systemId,
        repair,
        title: repair.title,
        place: null,
        labourHours,
        materials,
        replacesDuct: false,
      };
      details.set(id, detail);
      return { ...candidateOf(book, id, detail), systemId, reachesLeakIds: reachedBySpray.get(id) ?? [] };
    }),
  );
  const replacingRepairIds = catalogue.repairs.filter(({ replacesDuct }) => replacesDuct).map(({ id }) => id);
  const everything = book.taxes.filter(({ appliesTo }) => appliesTo === "everything");
  return {
    details,
    assumedReach,
    problem: {
      measure,
      beforeCfm25,
      beforeStandardUncertaintyCfm25,
      leaks,
      systemRepairs,
      notYetFound,
      sharedCosts: jobSharedCosts(book, places, replacingRepairIds),
      visits: { labourHoursEach: labourHoursOfVisit(book), ...costOf(book, [visitLine(book, "Trip")]) },
      minimumCharge: { minimumUsdCents: book.minimumUsdCents, topUpTaxRates: everything.map(({ taxRate }) => taxRate) },
      exclusions: [],
      prerequisites: [],
    },
  };
}
