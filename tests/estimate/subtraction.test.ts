import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { exampleDocument } from "./example-jobs.ts";

/** The example's house with no other test than a subtraction of this sealed flow; registers open it is 3,000 cfm. */
async function resultOf(envelopeCfm50: number | null) {
  const document = exampleDocument("cold-attic-furnace.json");
  const test = {
    id: "subtraction",
    kind: "blower-door-subtraction",
    stage: "existing",
    wholeHouseCfm50: 3000,
    envelopeCfm50,
    ductToHousePressurePa: 42,
  };
  const job = parseJob({ ...document, tests: envelopeCfm50 === null ? [] : [test] });
  return await estimate(job, await loadReferenceData(job));
}

describe("a blower-door subtraction in an estimate", () => {
  it("that cannot be told from none changes no number, and says what leaks at most", async () => {
    const [without, withIt] = [await resultOf(null), await resultOf(2900)];
    expect(withIt.leakage).toEqual(without.leakage);
    const warning = withIt.warnings.find(({ code }) => code === "difference-within-doubt");
    expect(warning?.path).toBe("#/tests/0");
    expect(warning?.why).toMatch(/at most \d+ cfm leak to outside/);
  });

  it("that can be told moves the leakage toward it", async () => {
    const [without, withIt] = [await resultOf(null), await resultOf(2300)];
    const moved = withIt.leakage.toOutsideCfm25.value - without.leakage.toOutsideCfm25.value;
    expect(moved).toBeGreaterThan(0.05 * without.leakage.toOutsideCfm25.value);
    expect(withIt.warnings.map(({ code }) => code)).not.toContain("difference-within-doubt");
  });
});
