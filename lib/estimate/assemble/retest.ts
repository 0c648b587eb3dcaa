import type { Retest, ScopeOption } from "#lib/job/result/plan-result.ts";
import { planRetest } from "#lib/retest/plan-retest.ts";
import { stagedChecks } from "#lib/retest/staged-checks.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { ASSURANCE_CONFIDENCE } from "./compliance.ts";

/** Relative standard uncertainty of one reading where no test tells of it: fan 5 %/√3 and repeatability. Form of resnet-icc-380. */
const READING_UNCERTAINTY = 0.03;

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
  const places = new Map(
    job.sites.map((site) => [site.id, house.places.find((place) => place.id === site.placeId)!.label]),
  );
  const byPlace = new Map<string, { siteIds: string[]; removesCfm25: number; variance: number }>();
  for (const { siteId, repairId, removesCfm25 } of chosen?.measures ?? []) {
    const title = places.get(siteId) ?? "the whole system";
    const stage = byPlace.get(title) ?? { siteIds: [], removesCfm25: 0, variance: 0 };
    const repair = [...scopes.jobProblem.details.values()].find(
      (detail) => detail.siteId === siteId && detail.repair.id === repairId,
    )?.repair;
    const spread = repair
      ? (removesCfm25 * repair.remainingSpreadShare) / Math.max(0.05, 1 - repair.remainingShare)
      : 0;
    stage.siteIds.push(siteId);
    stage.removesCfm25 += removesCfm25;
    stage.variance += spread * spread;
    byPlace.set(title, stage);
  }
  // The largest first, so that the gauge tells early whether the plan holds.
  const stages = [...byPlace]
    .sort(([, one], [, other]) => other.removesCfm25 - one.removesCfm25)
    .map(([title, stage]) => ({
      title: `sealing the leaks: ${title}`,
      siteIds: stage.siteIds,
      removesCfm25: stage.removesCfm25,
      standardUncertaintyCfm25: Math.sqrt(stage.variance),
    }));
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
