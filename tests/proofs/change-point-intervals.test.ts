import { describe, expect, it } from "vitest";
import { type Covered, coverageOfIntervals, coverageOfWeighed, GAS, ONE_METER } from "#tests/loads/interval-study.ts";

const TRIALS = 500;
/** Two and a half standard deviations of a share of 500 trials, and what first order and a grid of 0.5 °F leave. */
const TOLERANCE = { 0.95: 0.045, 0.8: 0.075 } as const;

const said = (all: readonly Covered[]) =>
  all.map(({ name, share }) => `${name} ${(100 * share).toFixed(1)} %`).join(", ");

describe("intervals of change-point fits on 500 years of synthetic bills with noise", () => {
  it.each([
    ["gas", GAS, 1, 0.95],
    ["gas", GAS, 1, 0.8],
    ["electric heat and cooling on one meter, one year", ONE_METER, 1, 0.95],
    ["electric heat and cooling on one meter, two years", ONE_METER, 2, 0.95],
    ["electric heat and cooling on one meter, two years", ONE_METER, 2, 0.8],
  ] as const)(
    "%s: cover about as often as they claim",
    (title, household, years, confidence) => {
      const all = coverageOfIntervals({ household, confidence, seed: 2029, trials: TRIALS, years });
      console.log(`${title}, ${years} year(s), ${confidence}: ${said(all)}`);
      for (const { name, share } of all) expect(Math.abs(share - confidence), name).toBeLessThan(TOLERANCE[confidence]);
    },
    600_000,
  );

  it("seasons weighed with what is known of a household: the same", () => {
    const { heating, cooling } = coverageOfWeighed({ seed: 2029, trials: TRIALS, confidence: 0.8 });
    console.log(`weighed, 0.8: heating ${(100 * heating).toFixed(1)} %, cooling ${(100 * cooling).toFixed(1)} %`);
    for (const share of [heating, cooling]) expect(Math.abs(share - 0.8)).toBeLessThan(0.1);
  }, 600_000);
});
