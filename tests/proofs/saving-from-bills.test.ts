import { expect, it } from "vitest";
import { LEAKY, SAVED, SEALED, study } from "#tests/loads/billed-household.ts";

/** 1,000 pairs of years each, one with a known saving and one with none. */
it("a saving by the bills: how often its range covers the truth, and how often nothing is taken for something", () => {
  for (const [truth, savedTherms] of [
    [SEALED, SAVED],
    [LEAKY, 0],
  ] as const) {
    const all = study({ truth, seed: 2027, pairs: 1000 });
    const savings = all.flatMap(({ saved }) => (saved === null ? [] : [saved]));
    const mean = savings.reduce((sum, { value }) => sum + value, 0) / savings.length;
    const covered = savings.filter(({ p10, p90 }) => p10 <= savedTherms && savedTherms <= p90).length / savings.length;
    const real = Math.sqrt(savings.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / savings.length);
    const stated = Math.sqrt(savings.reduce((sum, each) => sum + each.standardUncertainty ** 2, 0) / savings.length);
    const told = all.filter(({ cannotTell }) => cannotTell === null).length / all.length;
    console.log({ savedTherms, mean, covered, errorRatio: real / stated, told, fitted: savings.length });
    expect(covered).toBeGreaterThan(0.77);
    expect(covered).toBeLessThan(0.83);
    if (savedTherms === 0) expect(told).toBeLessThan(0.07);
    else expect(told).toBeGreaterThan(0.85);
  }
}, 300_000);
