import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { DistributionMode, SiteResult, SystemResult } from "#lib/job/result/leakage-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { statedMeasures } from "#lib/scope/stated-measures.ts";
import { energyOf, readRanged, savingsOf } from "./assemble/energy.ts";
import { leakageOf, seasonalOf } from "./assemble/leakage.ts";
import { reductionOf } from "./assemble/verified.ts";
import { completeHouse, type HouseModel } from "./complete/complete-house.ts";
import { elevationOf } from "./elevation-of.ts";
import type { EstimateOptions } from "./estimate.ts";
import { targetMeasure } from "./find-target.ts";
import { createHouseKernel, type WorkPlan } from "./kernel/house-kernel.ts";
import { outputKey } from "./kernel/write-outputs.ts";
import { createLedger } from "./ledger.ts";
import { plansOfMeasures } from "./plans-of-measures.ts";
import { readTests } from "./read-tests.ts";
import { evaluateHouse } from "./run-draws.ts";

type Season = Pick<DistributionMode, "seasonalBefore" | "seasonalAfter">;

/** What of a result a claim is paid for and checked by. */
export interface ClaimedFigures extends Pick<Result, "leakage" | "energy" | "savings"> {
  systems: readonly (Pick<SystemResult, "id"> & { distribution: { heating?: Season; cooling?: Season } })[];
  sites: readonly Pick<SiteResult, "id" | "cfm25">[];
  verified: Pick<NonNullable<Result["verified"]>, "differenceCfm25" | "reductionShare"> | null;
}

/** The measures stated in the job, as the kernel needs them. */
function statedPlans(house: HouseModel): WorkPlan[] {
  const stated = house.job.plan?.chosenMeasures;
  return plansOfMeasures(house, (all) => {
    if (!stated) return [];
    const known = statedMeasures(all, stated);
    return [{ id: "chosen", measures: [...known.byHand, ...known.sprays] }];
  });
}

/**
 * The trip of `estimate` without a solver, as far as a claim's figures go: the same readings, house, plan and kernel give
 * the very same numbers. Left out is what they do not hang on: worth of single leaks, prices, the promise, reasons, trace.
 * @throws InputProblem when a value of the job is outside what a method can answer.
 */
export function estimateClaimedFigures(
  job: Job,
  reference: ReferenceData,
  { draws = 0, seed = 1 }: Pick<EstimateOptions, "draws" | "seed"> = {},
): ClaimedFigures {
  const ledger = createLedger();
  const elevationFt = elevationOf(job, reference);
  const measurements = readTests({ job, elevationFt, ledger });
  const house = completeHouse({ job, reference, measurements, ledger });
  const isVerified = house.groups.some((group) => group.after.length > 0);
  const kernel = createHouseKernel(house, statedPlans(house), { isVerified, byMonth: false });
  const evaluated = {
    layout: kernel.layout,
    outcome: evaluateHouse({ kernel, space: house.space, draws, seed }),
  };
  const energy = energyOf(evaluated, "year");
  return {
    leakage: leakageOf(evaluated, "house", house.floorAreaFt2),
    systems: house.systems.map(({ id, heating, cooling }) => ({
      id,
      distribution: {
        ...(heating && { heating: seasonalOf(evaluated, id, "heating") }),
        ...(cooling && { cooling: seasonalOf(evaluated, id, "cooling") }),
      },
    })),
    sites: house.sites.map(({ id }) => ({ id, cfm25: readRanged(evaluated, outputKey.site(id, "cfm25")) })),
    energy,
    savings: savingsOf(evaluated, energy),
    verified: isVerified ? reductionOf(evaluated, targetMeasure(house)) : null,
  };
}
