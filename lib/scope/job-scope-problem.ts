import type { LeakSite } from "#lib/job/leak-site.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cfm, Dollars, Share } from "#lib/units/quantity.ts";
import { type JobMeasures, jobMeasures } from "./job-measures.ts";
import { costOf, jobSharedCosts } from "./job-shared-costs.ts";
import { candidateOf } from "./measure-details.ts";
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

export interface JobScopeProblem extends Pick<JobMeasures, "details" | "assumedReach" | "unpricedRepairIds"> {
  problem: ScopeProblem;
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
  const { findings, places, catalogue, book, measure, beforeCfm25, beforeStandardUncertaintyCfm25, notYetFound } =
    input;
  const sites = findings.map(({ site }) => site);
  const systemIds = new Set([...sites, ...notYetFound].map(({ systemId }) => systemId));
  const { details, byHand, sprays, assumedReach, unpricedRepairIds, exclusions, prerequisites } = jobMeasures({
    sites,
    places,
    catalogue,
    book,
    sprayedSystemIds: input.offersSpray ? systemIds : [],
  });
  const leaks = findings.map(({ site, ...found }, index): ScopeLeak => {
    const repairs = byHand[index]!.map((detail) => candidateOf(book, detail.repair.id, detail));
    return { id: site.id, systemId: site.systemId, placeId: site.placeId, ...found, repairs };
  });
  const systemRepairs = sprays.map(
    (spray): SystemRepair => ({ ...candidateOf(book, spray.id, details.get(spray.id)!), ...spray }),
  );
  const replacingRepairIds = catalogue.repairs
    .filter(({ replacesDuct, id }) => replacesDuct && !unpricedRepairIds.includes(id))
    .map(({ id }) => id);
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
      exclusions,
      prerequisites,
    },
  };
}
