import { describe, expect, it } from "vitest";
import { claimedNumbers } from "#lib/claims/claimed-numbers.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { estimateClaimedFigures } from "#lib/estimate/estimate-claimed-figures.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { EXAMPLE_FILES, exampleWithReference } from "./example-jobs.ts";

const RETEST = "mixed-crawlspace-retest.json";

/** Bit for bit: the reviewer's short way must never say another number than the whole estimate. */
async function expectSame(job: Job, reference: Awaited<ReturnType<typeof exampleWithReference>>["reference"]) {
  for (const draws of [0, 40]) {
    const whole = claimedNumbers(await estimate(job, reference, { draws, seed: 7 }));
    expect(Object.keys(whole).length).toBeGreaterThan(10);
    expect(claimedNumbers(estimateClaimedFigures(job, reference, { draws, seed: 7 }))).toEqual(whole);
  }
}

describe("a claim's figures alone", () => {
  it.each(EXAMPLE_FILES)("are those of the whole estimate, bit for bit: %s", async (file) => {
    const { job, reference } = await exampleWithReference(file);
    await expectSame(job, reference);
  });

  it("stay so whatever the plan says", async () => {
    const { job, reference } = await exampleWithReference(RETEST);
    const { plan, ...withoutPlan } = job;
    const measures = plan!.chosenMeasures!;
    const system = job.systems[0]!.id;
    const plans: Job["plan"][] = [
      { ...plan, chosenMeasures: [] },
      { ...plan, chosenMeasures: [...measures, measures[0]!, { siteId: "nowhere", repairId: measures[0]!.repairId }] },
      { chosenMeasures: measures, targetCfm25: 100 },
      { chosenMeasures: measures, targetCfm25: 100, targetMeasure: "to-outside" },
      { chosenMeasures: measures, targetReductionShare: 0.5, targetMeasure: "to-outside" },
      { chosenMeasures: measures, targetMeasure: "to-outside" },
      { chosenMeasures: [{ siteId: system, repairId: "spray-from-inside" }, ...measures], offersSprayedSealant: true },
    ];
    await expectSame(withoutPlan, reference);
    for (const each of plans) await expectSame({ ...job, plan: each }, reference);
    await expectSame({ ...job, priceBook: { ...DEMO_PRICE_BOOK, materials: [] } }, reference);
  });
});
