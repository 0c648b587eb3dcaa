import { describe, expect, test } from "vitest";
import { assumptionEffects, spreadOf } from "#lib/estimate/assumption-effects.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { withValueAt } from "#lib/job/with-value-at.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { exampleWithReference } from "./example-jobs.ts";

describe("what an assumed value does to the dollars", async () => {
  const { job, reference } = await exampleWithReference("mixed-crawlspace-heat-pump.json");
  const result = await estimate(job, reference, { solve: await createHighsSolver() });
  const effects = await assumptionEffects({ job, reference, result });
  const effectOf = (path: string) => effects.find((effect) => effect.path === path)!;

  test("more of the loss finding its way back leaves less to save (direction: definition of regain)", async () => {
    const regain = result.assumptions.find(({ path }) => path === "#/places/0/regainFactor")!;
    const { lowUsdPerYear, highUsdPerYear } = effectOf(regain.path);
    expect(highUsdPerYear - lowUsdPerYear).toBeGreaterThan(1);
    const told = await estimate(parseJob(withValueAt(job, regain.path, regain.high)), reference, {
      solve: await createHighsSolver(),
    });
    expect(told.savings.costUsdPerYear.value).toBeLessThan(result.savings.costUsdPerYear.value);
  });
  test("rates of discount and of price rise do not touch a year's dollars (nist-hb-135: they act between years)", () => {
    const shown = result.savings.costUsdPerYear.value;
    for (const path of ["#/rates/discountRate", "#/rates/fuelEscalationRate", "#/rates/measureLifeYears"]) {
      expect(effectOf(path).lowUsdPerYear / shown, path).toBeCloseTo(1, 9);
      expect(effectOf(path).highUsdPerYear / shown, path).toBeCloseTo(1, 9);
    }
  });
  test("the answer that is shown lies within every effect", () => {
    expect(effects.length).toBeGreaterThan(10);
    for (const { lowUsdPerYear, highUsdPerYear } of effects) {
      expect(lowUsdPerYear).toBeLessThanOrEqual(result.savings.costUsdPerYear.value);
      expect(highUsdPerYear).toBeGreaterThanOrEqual(result.savings.costUsdPerYear.value);
    }
  });
});

test("several open answers widen the range by their spans in squares: 30 and 40 make 50", () => {
  const effect = (lowUsdPerYear: number, highUsdPerYear: number) => ({ path: "", lowUsdPerYear, highUsdPerYear });
  expect(spreadOf([effect(100, 130), effect(90, 130)])).toBeCloseTo(50, 9);
  expect(spreadOf([])).toBe(0);
});
