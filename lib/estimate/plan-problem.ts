import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { lifeCycleCost } from "#lib/savings/life-cycle-cost.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { catalogueOfJob } from "#lib/scope/job-repairs.ts";
import { type JobScopeProblem, jobScopeProblem } from "#lib/scope/job-scope-problem.ts";
import type { RepairCatalogue } from "#lib/scope/repair-schema.ts";
import type { HouseModel } from "./complete/complete-house.ts";
import type { ScopeTarget } from "./find-target.ts";
import type { Ledger } from "./ledger.ts";
import type { SiteWorth } from "./value-leaks.ts";

export interface PlanInput {
  house: HouseModel;
  worth: SiteWorth;
  target: ScopeTarget | null;
  ledger: Ledger;
}

/** Present value of one dollar saved a year, escalated and discounted over the measure's life. */
export function presentValueFactor({ prices }: HouseModel): number {
  const { measureLifeYears, discountRate, escalationRate } = prices;
  return lifeCycleCost({
    costUsd: 1,
    years: measureLifeYears,
    discountRate,
    savings: [{ annualAtBaseDateUsd: 1, escalationRate }],
  }).presentValueSavings;
}

function takeBook({ house, ledger }: PlanInput): PriceBook {
  const { priceBook } = house.job;
  if (priceBook) return priceBook;
  ledger.take<string>(undefined, {
    path: "#/priceBook",
    title: "Price book",
    value: "invented demonstration prices",
    unit: "",
    reason: "The job holds no price book, so invented prices are used. Enter your own before you quote.",
    source: { sourceId: "practice" },
  });
  return DEMO_PRICE_BOOK;
}

function takeCatalogue({ house: { job }, ledger }: PlanInput): RepairCatalogue {
  ledger.take<string>(job.repairs?.versionId, {
    path: "#/repairs",
    title: "Effect, hours and materials of the repairs",
    value: "common figures",
    unit: "",
    reason: "The job holds no repairs of the organization, so the figures of common practice are used.",
    source: { sourceId: "practice" },
  });
  return catalogueOfJob(job);
}

/**
 * What can be done in this house, at which price and with which effect: the problem that every scope is chosen from.
 * Lifetime value follows the leakage while the system runs; the target follows the leakage at 25 Pa.
 */
export function planProblem(input: PlanInput): { book: PriceBook; jobProblem: JobScopeProblem } {
  const { house, worth, target, ledger } = input;
  const { job } = house;
  const book = takeBook(input);
  const factor = presentValueFactor(house);
  const jobProblem = jobScopeProblem({
    findings: job.sites.map((site, index) => ({
      site,
      ...worth.sites[index]!,
      lifetimeValueUsd: factor * worth.sites[index]!.usdPerYear,
    })),
    places: job.places,
    catalogue: takeCatalogue(input),
    book,
    measure: target?.measure ?? "total",
    beforeCfm25: target?.measure === "to-outside" ? worth.toOutsideCfm25 : worth.totalCfm25,
    beforeStandardUncertaintyCfm25:
      target?.measure === "to-outside" ? worth.toOutsideStandardUncertaintyCfm25 : worth.totalStandardUncertaintyCfm25,
    notYetFound: worth.unfound.map(({ usdPerYear, ...unfound }) => ({
      ...unfound,
      lifetimeValueUsd: factor * usdPerYear,
    })),
    offersSpray: ledger.take(job.plan?.offersSprayedSealant, {
      path: "#/plan/offersSprayedSealant",
      title: "The crew can spray sealant from inside",
      value: false,
      unit: "",
      reason: "Nothing was said, so only work by hand is offered.",
      source: { sourceId: "practice" },
    }),
  });
  for (const { siteId, reach } of jobProblem.assumedReach) {
    ledger.take(undefined, {
      path: `#/sites/${job.sites.findIndex((site) => site.id === siteId)}/reach`,
      title: `Reach of the leak “${siteId}”`,
      value: reach ?? "moderate",
      unit: "",
      reason: "Nothing was said; the usual reach in this place.",
      source: { sourceId: "practice" },
    });
  }
  for (const repairId of jobProblem.unpricedRepairIds) {
    ledger.warn({
      code: "repair-not-priced",
      path: "#/priceBook/materials",
      severity: "note",
      what: `The price book has no price for a material of “${repairId}”.`,
      why: "A repair without a price is not offered.",
      nextMove: "Add the material to the price book.",
    });
  }
  return { book, jobProblem };
}
