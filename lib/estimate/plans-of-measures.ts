import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { type JobMeasures, jobMeasures } from "#lib/scope/job-measures.ts";
import { catalogueOfJob } from "#lib/scope/job-repairs.ts";
import type { HouseModel } from "./complete/complete-house.ts";
import type { WorkPlan } from "./kernel/house-kernel.ts";
import { createWorkPlans } from "./work-plan.ts";

/** An option as far as its leaks go: plain data. */
export interface OptionMeasures {
  id: string;
  measures: readonly { siteId: string; repairId: string }[];
}

/**
 * Options that are already chosen, as the kernel needs them: nothing is priced or solved, for what is left of a leak
 * hangs on the repair alone. The same options give the same plans as on the whole trip.
 */
export function plansOfMeasures(
  house: HouseModel,
  optionsFrom: (all: JobMeasures) => readonly OptionMeasures[],
): WorkPlan[] {
  const { job } = house;
  const all = jobMeasures({
    sites: job.sites,
    places: job.places,
    catalogue: catalogueOfJob(job),
    book: job.priceBook ?? DEMO_PRICE_BOOK,
    sprayedSystemIds: job.plan?.offersSprayedSealant ? job.systems.map(({ id }) => id) : [],
  });
  return createWorkPlans({ house, options: optionsFrom(all), details: all.details, sprays: all.sprays });
}
