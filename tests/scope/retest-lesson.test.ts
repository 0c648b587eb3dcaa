import { beforeAll, describe, expect, test } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { STARTING_CATALOGUE as catalogue } from "#lib/scope/repairs.ts";
import { retestLesson } from "#lib/scope/retest-lesson.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";
import { expectClose } from "#tests/expect-close.ts";

let job: Job;
let result: Result;
let bare: Result;
beforeAll(async () => {
  const example = await exampleWithReference("mixed-crawlspace-retest.json");
  job = example.job;
  result = await estimate(job, example.reference, { draws: 500 });
  bare = await estimate(job, example.reference);
});

describe("what a job's retest says of its repairs", () => {
  test("every repair that was done with the leakage it was put on, and what the two tests say was removed", () => {
    const lesson = retestLesson({ job, result, catalogue })!;
    const done = job.plan!.chosenMeasures!;
    expect(lesson.treated.reduce((sum, { sitesCount }) => sum + sitesCount, 0)).toBe(done.length);
    const leakOf = (siteId: string) => result.sites.find(({ id }) => id === siteId)!;
    const isOutside = result.scope.target?.measure === "to-outside";
    const expected = done
      .map(({ siteId }) => (isOutside ? leakOf(siteId).toOutsideCfm25 : leakOf(siteId).cfm25).value)
      .reduce((sum, cfm25) => sum + cfm25, 0);
    expectClose({
      actual: lesson.treated.reduce((sum, { cfm25 }) => sum + cfm25, 0),
      expected,
      relativeTolerance: 1e-9,
      reason: "the same leaks, summed in another order",
    });
    expect(lesson.removedCfm25).toBe(result.verified!.differenceCfm25.value);
  });

  test("it is never surer than the two tests are, and less sure than they for the doubt of the leaks' sizes", () => {
    const { p10, p90 } = result.verified!.differenceCfm25;
    const { standardUncertaintyCfm25 } = retestLesson({ job, result, catalogue })!;
    // The range from the 10th to the 90th percentile of a normal quantity is 2 × 1.28155 standard deviations.
    expect(standardUncertaintyCfm25).toBeGreaterThan((p90! - p10!) / (2 * 1.28155));
  });

  test("nothing is learned without ranges, without stated repairs, without a retest, or from spraying", () => {
    expect(retestLesson({ job, result: bare, catalogue })).toBeNull();
    expect(retestLesson({ job, result: { ...result, verified: null }, catalogue })).toBeNull();
    const withMeasures = (chosenMeasures: NonNullable<Job["plan"]>["chosenMeasures"]) =>
      retestLesson({ job: { ...job, plan: { ...job.plan, chosenMeasures } }, result, catalogue });
    expect(withMeasures([])).toBeNull();
    expect(withMeasures([{ siteId: "nowhere", repairId: "mastic-with-mesh" }])).toBeNull();
    expect(withMeasures([{ siteId: job.sites[0]!.id, repairId: "spray-from-inside" }])).toBeNull();
  });
});
