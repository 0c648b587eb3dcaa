import type { Retest, ScopeOption } from "#lib/job/result/plan-result.ts";
import { planRetest } from "#lib/retest/plan-retest.ts";
import { stagedChecks } from "#lib/retest/staged-checks.ts";
import { measureId } from "#lib/scope/measure-details.ts";
import { walkingOrder } from "#lib/scope/walking-order.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { ASSURANCE_CONFIDENCE } from "./compliance.ts";

/** Relative standard uncertainty of one reading where no test tells of it: fan 5 %/√3 and repeatability. Form of resnet-icc-380. */
const READING_UNCERTAINTY = 0.03;
/** A repair that closes next to nothing is not taken to spread without end. Source: practice. */
const LEAST_CLOSED_SHARE = 0.05;

/** How far what one repair removes spreads, cfm at 25 Pa. */
function spreadOf({ jobProblem }: AssembleInput["scopes"], measure: ScopeOption["measures"][number]): number {
  const repair = jobProblem.details.get(measureId(measure.siteId, measure.repairId))?.repair;
  if (!repair) return 0;
  return (measure.removesCfm25 * repair.remainingSpreadShare) / Math.max(LEAST_CLOSED_SHARE, 1 - repair.remainingShare);
}

/** The numbers to look for at the retest, and along the work. Null without a target. */
export function retestOf(
  { house, target, measurements, scopes }: AssembleInput,
  chosen: ScopeOption | null,
): Retest | null {
  if (!target || !(target.limitCfm25 > 0)) return null;
  const { job } = house;
  const measure = target.measure === "total" ? "total" : "toOutside";
  const test = measurements.find((each) => each.measure === measure);
  const fanTest = job.tests.find((each) => each.id === test?.testId);
  const direction = fanTest && "direction" in fanTest ? fanTest.direction : "pushing";
  const fan = job.instruments?.fans?.find((each) => each.id === fanTest?.fanId) ?? job.instruments?.fans?.[0];
  const relative = test ? test.standardUncertaintyCfm25 / test.cfm25 : READING_UNCERTAINTY;
  const plan = planRetest({
    limitCfm25: target.limitCfm25,
    relativeStandardUncertainty: relative,
    confidence: ASSURANCE_CONFIDENCE,
    restrictors: fan?.calibrations.filter((row) => row.direction === direction) ?? [],
    fanAirDensityLbPerFt3: house.airDensityLbPerFt3,
    calibrationDensityLbPerFt3: fan?.calibrationDensityLbPerFt3,
  });
  const stages = walkingOrder({ measures: chosen?.measures ?? [], sites: job.sites, systems: job.systems }).map(
    ({ placeId, siteIds }) => {
      const done = (chosen?.measures ?? []).filter(({ siteId }) => siteIds.includes(siteId));
      const place = house.places.find(({ id }) => id === placeId);
      return {
        title: `sealing the leaks: ${place?.label ?? "the whole system"}`,
        siteIds,
        removesCfm25: done.reduce((sum, { removesCfm25 }) => sum + removesCfm25, 0),
        standardUncertaintyCfm25: Math.sqrt(done.reduce((sum, measure) => sum + spreadOf(scopes, measure) ** 2, 0)),
      };
    },
  );
  return {
    target: target.title,
    measure: target.measure,
    limitCfm25: target.limitCfm25,
    acceptanceCfm25: plan.acceptanceCfm25,
    confidenceProbability: ASSURANCE_CONFIDENCE,
    relativeUncertaintyRatio: relative,
    expectedCfm25: chosen?.predictedCfm25.value ?? target.limitCfm25,
    readings: plan.readings.map((reading) => ({ ...reading, direction })),
    stagedChecks: stagedChecks({
      stages,
      acceptanceCfm25: plan.acceptanceCfm25,
      confidence: target.confidenceProbability,
    }).map((check) => ({ ...check, afterSiteIds: [...check.afterSiteIds] })),
    conditions: [
      `Test ${target.measure === "total" ? "total leakage" : "leakage to outside"} by ${direction} air, as the first time.`,
      "Same fan, same flow restrictor where its span allows, same covers on the registers, same doors open.",
      "Filter out, dampers open, air handler off; combustion appliances made safe before and after, by the local protocol.",
    ],
  };
}
