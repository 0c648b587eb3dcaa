import { describe, expect, test } from "vitest";
import { optionWords, pointGist, pointWords } from "#app/jobs/[id]/options/scope-card.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { exploreScopes } from "#lib/estimate/explore-scopes.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { estimatedExample } from "#tests/documents/estimated-examples.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

const FILE = "cold-attic-furnace.json";
const lineOf = ({ lines }: { lines: readonly { label: string; value: string }[] }, label: string) =>
  lines.find((line) => line.label.startsWith(label))?.value;

describe("scopes as cards", () => {
  test("a point between the options has its saving and its leakage with a range once it is looked at", async () => {
    const { job, reference } = await exampleWithReference(FILE);
    const told = { job, text: unitText("us"), hasTarget: true, isChosen: false };
    const point = (await exploreScopes(job, reference, { solve: await createHighsSolver() })).at(1)!;
    const before = pointWords(point, told);
    expect(lineOf(before, "Saves a year")).toBeUndefined();
    expect(lineOf(before, "Leaves")).not.toContain(" to ");

    const chosenMeasures = point.measures.map(({ siteId, repairId }) => ({ siteId, repairId }));
    const { scope } = await estimate({ ...job, plan: { ...job.plan, chosenMeasures } }, reference, { draws: 200 });
    const [asWork] = scope.options;
    expect(asWork!.priceUsdCents).toBe(point.priceUsdCents);
    expect(asWork!.predictedCfm25.value).toBeCloseTo(point.predictedCfm25, 6);
    const looked = pointWords(point, told, asWork);
    expect(lineOf(looked, "Saves a year")).toMatch(/^\$\d+ \(\$\d+ to \$\d+\)$/);
    expect(lineOf(looked, "Leaves")).toMatch(/ \(\d+(\.\d+)? to \d+(\.\d+)?\)$/);
    expect(lineOf(looked, "Chance")).toMatch(/%$/);
    expect(pointGist(point, told)).toMatch(/^\$[\d,.]+, leaves .* cfm, .*% to reach the target$/);
  });

  test("each says whether it is proven, or how far from the best it may be, and why it leaves a leak", async () => {
    const { job, result } = await estimatedExample(FILE);
    const told = { job, text: unitText("us"), hasTarget: true, isChosen: false };
    const [option] = result.scope.options;
    expect(optionWords(option!, told).proof).toMatch(/^Proven: /);
    expect(optionWords({ ...option!, provenOptimal: false, gapRatio: 0.04 }, told).proof).toBe(
      "Not proven: at most 4% from the best there can be.",
    );
    for (const each of result.scope.options)
      for (const left of optionWords(each, told).leaves) expect(left).toMatch(/^\d+\. .+\. .{10,}$/);
  });
});
