import { expect } from "vitest";
import { observerNumber, randomHouseNumber } from "./known-house.ts";
import { type Attempt, type Recovery, summarize } from "./recovery.ts";
import { reconciledLeaks, zoneShares } from "./recovery-of-shares.ts";

/** What a method must do in many houses to be said to recover the truth. */
export interface Claim {
  /** At least this share of truths within twice the stated standard uncertainty; 0.95 is what it claims. */
  leastCovered: number;
  /** At most this far off on average, relative. */
  mostBias: number;
  /** Real error over stated, within these: above, it hides doubt; far below, it cries wolf. */
  errorOverStated: readonly [low: number, high: number];
  /** At most this share of the houses may be answered "cannot". */
  mostCannotShare: number;
}

export function expectRecovers(attempts: readonly Attempt[], claim: Claim): Recovery {
  const recovery = summarize(attempts);
  expect(recovery.values).toBeGreaterThan(0);
  expect(recovery.covered).toBeGreaterThanOrEqual(claim.leastCovered);
  expect(Math.abs(recovery.bias)).toBeLessThanOrEqual(claim.mostBias);
  expect(recovery.errorOverStated).toBeGreaterThanOrEqual(claim.errorOverStated[0]);
  expect(recovery.errorOverStated).toBeLessThanOrEqual(claim.errorOverStated[1]);
  expect(recovery.cannots / attempts.length).toBeLessThanOrEqual(claim.mostCannotShare);
  return recovery;
}

/** Found leaks move toward the truth, and their stated doubt holds; returns the figures. */
export function expectReconciles(houseCount: number) {
  const sites: ReturnType<typeof reconciledLeaks>["sites"] = [];
  const unseen: { found: number; truth: number }[] = [];
  for (let k = 0; k < houseCount; k++) {
    const { nextNormal } = observerNumber(k);
    const leaks = reconciledLeaks(randomHouseNumber(k), nextNormal);
    sites.push(...leaks.sites);
    unseen.push({ found: leaks.unseenFoundCfm, truth: leaks.unseenTruthCfm });
  }
  const rms = (of: (site: (typeof sites)[number]) => number) =>
    Math.sqrt(sites.reduce((sum, site) => sum + of(site) ** 2, 0) / sites.length);
  const covered =
    sites.filter((site) => Math.abs(site.foundCfm - site.truthCfm) <= 2 * site.uncertaintyCfm).length / sites.length;
  const priorErrorCfm = rms((site) => site.priorCfm - site.truthCfm);
  const foundErrorCfm = rms((site) => site.foundCfm - site.truthCfm);
  expect(covered).toBeGreaterThanOrEqual(0.92);
  expect(foundErrorCfm).toBeLessThan(0.85 * priorErrorCfm);
  const mean = (of: (pair: (typeof unseen)[number]) => number) =>
    unseen.reduce((sum, pair) => sum + of(pair), 0) / unseen.length;
  return {
    sites: sites.length,
    covered,
    priorErrorCfm,
    foundErrorCfm,
    unseenFoundCfm: mean((pair) => pair.found),
    unseenTruthCfm: mean((pair) => pair.truth),
  };
}

/** Zone shares by measured pressure against a small leak's own. Ducts that leak into the zone bias its pressure. */
export function expectZoneShares(houseCount: number) {
  const misses = overHousesShares(houseCount).map(({ found, truth }) => found - truth);
  const rms = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
  expect(misses.length).toBeGreaterThan(houseCount / 2);
  expect(rms).toBeLessThan(0.03);
  expect(Math.max(...misses.map(Math.abs))).toBeLessThan(0.15);
  return { zones: misses.length, rms };
}

const overHousesShares = (count: number) =>
  Array.from({ length: count }, (_, k) => zoneShares(randomHouseNumber(k), observerNumber(k))).flat();
