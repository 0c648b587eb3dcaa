import type { LeakSite, Reach } from "#lib/job/leak-site.ts";
import type { Place } from "#lib/job/place.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cfm, Dollars, Share } from "#lib/units/quantity.ts";
import { USUAL_REACH } from "./fitting-repairs.ts";
import { costOf, jobSharedCosts } from "./job-shared-costs.ts";
import { candidateOf, handMeasures, type MeasureDetail, pricedRepairs, sprayMeasure } from "./measure-details.ts";
import { labourHoursOfVisit, visitLine } from "./price-lines.ts";
import type { RepairCatalogue } from "./repair-schema.ts";
import type { ScopeLeak, ScopeProblem, SystemRepair, UnfoundLeakage } from "./scope-problem.ts";

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

export interface JobScopeProblem {
  problem: ScopeProblem;
  /** By `measureId`. */
  details: ReadonlyMap<string, MeasureDetail>;
  /** Leaks whose reach was not said, with what was taken. */
  assumedReach: readonly { siteId: string; reach: Reach }[];
  /** Repairs left out because the price book has no price for one of their materials. */
  unpricedRepairIds: readonly string[];
}

export interface JobScopeInput {
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
}

/**
 * A job's leaks, repairs and prices as the problem that the optimum solves. Each cost is the very line that
 * `priceScope` charges, so the optimum's price and the proposal's are one figure.
 */
export function jobScopeProblem(input: JobScopeInput): JobScopeProblem {
  const { findings, places, book, measure, beforeCfm25, beforeStandardUncertaintyCfm25, notYetFound } = input;
  const { priced: catalogue, unpricedRepairIds } = pricedRepairs(input.catalogue, book);
  const details = new Map<string, MeasureDetail>();
  const assumedReach: { siteId: string; reach: Reach }[] = [];
  const leaks = findings.map(({ site, ...found }): ScopeLeak => {
    const place = places.find(({ id }) => id === site.placeId)!;
    const reach = site.reach ?? USUAL_REACH[place.kind];
    if (!site.reach) assumedReach.push({ siteId: site.id, reach });
    const measures = handMeasures({ catalogue, site, place, reach });
    for (const detail of measures) details.set(detail.id, detail);
    const repairs = measures.map((detail) => candidateOf(book, detail.repair.id, detail));
    return { id: site.id, systemId: site.systemId, placeId: site.placeId, ...found, repairs };
  });
  const sites = findings.map(({ site }) => site);
  const systemIds = new Set([...sites, ...notYetFound].map(({ systemId }) => systemId));
  const sprays = input.offersSpray ? catalogue.repairs.filter(({ reachesWholeSystem }) => reachesWholeSystem) : [];
  const systemRepairs = [...systemIds].flatMap((systemId) =>
    sprays.map((repair): SystemRepair => {
      const { detail, ...scope } = sprayMeasure({ catalogue, repair, systemId, sites });
      details.set(detail.id, detail);
      return { ...candidateOf(book, detail.id, detail), systemId, ...scope };
    }),
  );
  const replacingRepairIds = catalogue.repairs.filter(({ replacesDuct }) => replacesDuct).map(({ id }) => id);
  const everything = book.taxes.filter(({ appliesTo }) => appliesTo === "everything");
  return {
    details,
    assumedReach,
    unpricedRepairIds,
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
