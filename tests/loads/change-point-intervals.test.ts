import { describe, expect, it } from "vitest";
import { coverageOfIntervals, coverageOfWeighed, GAS, ONE_METER } from "./interval-study.ts";

/** The long run is tests/proofs/change-point-intervals.test.ts; 60 years here, or 30 pairs, so a share may be off by a tenth. */
const TRIALS = 60;

describe("intervals of a fit of bills (synthetic bills with noise, derived)", () => {
  it.each([
    ["gas", GAS, 1],
    ["electric heat and cooling on one meter", ONE_METER, 2],
  ] as const)(
    "%s: base, slopes, balance temperatures and normal year lie within 95 % intervals",
    (_, household, years) => {
      const all = coverageOfIntervals({ household, confidence: 0.95, seed: 3, trials: TRIALS / years, years });
      expect(all.length).toBeGreaterThanOrEqual(4);
      for (const { name, share } of all) expect(share, name).toBeGreaterThan(0.85);
    },
  );

  it("would fail if they claimed to be surer than they are", () => {
    const narrow = coverageOfIntervals({ household: GAS, confidence: 0.5, seed: 3, trials: TRIALS });
    for (const { name, share } of narrow) expect(share, name).toBeLessThan(0.75);
  });

  it("seasons weighed with what is known cover about as often as they claim", () => {
    const { heating, cooling } = coverageOfWeighed({ seed: 3, trials: TRIALS, confidence: 0.8 });
    for (const share of [heating, cooling]) {
      expect(share).toBeGreaterThan(0.65);
      expect(share).toBeLessThan(0.95);
    }
  });
});
