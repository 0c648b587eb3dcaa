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
    const board = job.sites.find(({ kind }) => kind === "cracked-board")!;
    const sites: Job["sites"] = [
      ...job.sites,
      { ...board, id: "board-seam", kind: "seam", size: { from: "band", band: "hairline" }, partOfSiteId: board.id },
    ];
    const section = { siteId: board.id, repairId: "replace-board-section" };
    const seam = { siteId: "board-seam", repairId: "covered-by-replace-board-section" };
    const withSection = { ...job, sites, plan: { ...plan, chosenMeasures: [section] } };
    await expectSame(withSection, reference);
    await expectSame({ ...withSection, plan: { ...plan, chosenMeasures: [section, seam] } }, reference);
    // The seam goes with the new section whether it is stated or not.
    const claimed = (each: Job) => claimedNumbers(estimateClaimedFigures(each, reference, { draws: 0 }));
    expect(claimed({ ...withSection, plan: { ...plan, chosenMeasures: [section, seam] } })).toEqual(
      claimed(withSection),
    );
    for (const each of plans) await expectSame({ ...job, plan: each }, reference);
    await expectSame({ ...job, priceBook: { ...DEMO_PRICE_BOOK, materials: [] } }, reference);
  });
});
