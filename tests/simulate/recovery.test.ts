import { describe, expect, it } from "vitest";
import {
  oneSide,
  overHouses,
  subtraction,
  summarize,
  toOutside,
  totalInFiveSteps,
  totalInOneStep,
} from "./recovery.ts";
import { expectReconciles, expectRecovers, expectZoneShares } from "./recovery-claims.ts";
import { deltaQOverHouses, meanDoubt } from "./recovery-of-delta-q.ts";
import { flowByMatchedPressure, flowByTemperatureRise } from "./recovery-of-shares.ts";

/** Few houses, so wide claims; the same with narrow claims over 500 houses stands in tests/proofs. */
const HOUSES = 60;
const CLAIM = { leastCovered: 0.88, mostBias: 0.04, errorOverStated: [0.5, 1.4], mostCannotShare: 0.3 } as const;

describe("methods recover the leaks of random houses within their stated doubt", () => {
  it.each([
    ["total leakage, one step", totalInOneStep],
    ["total leakage, five steps and a power law", totalInFiveSteps],
    ["supply side alone", oneSide("supply")],
    ["return side alone", oneSide("return")],
    ["leakage to outside", toOutside],
    ["fan flow by temperature rise", flowByTemperatureRise],
    ["fan flow by matched pressure", flowByMatchedPressure],
  ] as const)("%s", (_, method) => {
    expectRecovers(overHouses(HOUSES, method), CLAIM);
  });

  it("subtraction mostly says that it cannot tell", () => {
    const attempts = overHouses(HOUSES, subtraction);
    expect(summarize(attempts).cannots).toBeGreaterThan(HOUSES / 2);
  });

  it("reconciled leaks lie nearer the truth than the eye's guess", () => {
    expectReconciles(20);
  });

  it("Delta-Q in a calm, and in gusts its doubt grows", () => {
    const [calm, windy] = [deltaQOverHouses(15, 0), deltaQOverHouses(15, 2)];
    expect(summarize(calm).covered).toBeGreaterThanOrEqual(0.9);
    expect(summarize(windy).covered).toBeGreaterThanOrEqual(0.85);
    expect(meanDoubt(windy)).toBeGreaterThan(2 * meanDoubt(calm));
  });

  it("zone shares", () => {
    expectZoneShares(HOUSES);
  });
});

describe("the claims can fail", () => {
  it("a method that reads 15 % high is caught", () => {
    const high = overHouses(HOUSES, totalInOneStep).map((attempt) =>
      attempt.said === "value" ? { ...attempt, foundCfm: 1.15 * attempt.foundCfm } : attempt,
    );
    expect(() => expectRecovers(high, CLAIM)).toThrow();
  });

  it("a method that says too little doubt, or far too much, is caught", () => {
    for (const factor of [0.4, 4]) {
      const boastful = overHouses(HOUSES, totalInOneStep).map((attempt) =>
        attempt.said === "value" ? { ...attempt, uncertaintyCfm: factor * attempt.uncertaintyCfm } : attempt,
      );
      expect(() => expectRecovers(boastful, CLAIM)).toThrow();
    }
  });
});
