import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import type { Job } from "#lib/job/job-schema.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Cfm, Share } from "#lib/units/quantity.ts";
import { coveringRepairId } from "./leaks-of-one-run.ts";
import type { SealingRetest } from "./learning.ts";
import type { RepairCatalogue } from "./repair-schema.ts";

/** Half of the range from the 10th to the 90th percentile, in standard deviations of a normal quantity. */
const Z_90 = normalQuantile(0.9, 0, 1);

const standardUncertainty = ({ p10, p90 }: Ranged): number | null =>
  p10 === undefined || p90 === undefined ? null : (p90 - p10) / (2 * Z_90);

/**
 * What a job's retest says of the repairs that were done; null where it says nothing: no retest, no ranges, repairs not
 * stated in the job, or a whole system sprayed, since then the leaks that nobody found were sealed too.
 * u² = u(difference of the tests)² + Σ (u(Q_i) (1 − f_i))², the doubt of the leaks' own sizes added as if each stood
 * alone, f the share that the catalogue expects to be left. Source: own-method. Left out: that the sizes move against
 * each other, so the lesson is taken for less sure than it is.
 */
export function retestLesson({
  job,
  result,
  catalogue,
}: {
  job: Job;
  result: Result;
  catalogue: RepairCatalogue;
}): SealingRetest | null {
  const measures = job.plan?.chosenMeasures ?? [];
  const removed = result.verified?.differenceCfm25;
  const testDoubtCfm25 = removed && standardUncertainty(removed);
  if (!removed || !testDoubtCfm25 || measures.length === 0) return null;
  const treated = new Map<string, { repairId: string; cfm25: Cfm; sitesCount: number }>();
  let variance = testDoubtCfm25 ** 2;
  for (const { siteId, repairId } of measures) {
    const site = result.sites.find(({ id }) => id === siteId);
    const learnedId = coveringRepairId(repairId) ?? repairId;
    const repair = catalogue.repairs.find(({ id }) => id === learnedId);
    if (!site || !repair || repair.reachesWholeSystem) return null;
    const flow = result.scope.target?.measure === "to-outside" ? site.toOutsideCfm25 : site.cfm25;
    const closedShare: Share = 1 - repair.remainingShare;
    variance += ((standardUncertainty(flow) ?? 0) * closedShare) ** 2;
    const sum = treated.get(learnedId) ?? { repairId: learnedId, cfm25: 0, sitesCount: 0 };
    treated.set(learnedId, { repairId: learnedId, cfm25: sum.cfm25 + flow.value, sitesCount: sum.sitesCount + 1 });
  }
  return {
    treated: [...treated.values()],
    removedCfm25: removed.value,
    standardUncertaintyCfm25: Math.sqrt(variance),
  };
}
