import fc from "fast-check";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { sampleVariance } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { drawInspectionSample } from "#lib/claims/sampling/draw-inspection-sample.ts";
import { estimateTotal } from "#lib/claims/sampling/estimate-total.ts";
import { inspectionSampleSize } from "#lib/claims/sampling/inspection-sample-size.ts";
import { reinspectionTolerance } from "#lib/claims/sampling/reinspection-tolerance.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";

const USUAL = { confidenceProbability: 0.95, precisionShare: 0.05 };

describe("how many claims to inspect", () => {
  // krejcie-morgan-1970 table 1 (χ² = 3.841, d = .05, P = .5), rounded to the nearest; read in a copy of the article
  // (Educational and Psychological Measurement 30, 607-610), but for the rows marked so.
  it.each([
    [10, 10],
    [15, 14],
    [20, 19],
    [25, 24],
    [30, 28],
    [35, 32],
    [40, 36],
    [45, 40],
    [50, 44],
    [55, 48],
    [60, 52],
    [65, 56],
    [70, 59],
    [75, 63],
    [80, 66],
    [85, 70],
    [90, 73],
    [95, 76],
    [100, 80],
    [110, 86],
    [120, 92],
    [130, 97],
    [140, 103],
    [220, 140],
    [230, 144],
    [240, 148],
    [250, 152],
    [500, 217],
    [1_200, 291],
    [1_300, 297],
    [1_400, 302],
    [1_500, 306],
    [2_800, 338],
    // The article's own example in words.
    [9_000, 368],
    // From memory.
    [1_000, 278],
    [5_000, 357],
    [10_000, 370],
    [75_000, 382],
  ])("krejcie-morgan-1970 table 1: of %i, %i", (populationCount, tabled) => {
    const { unroundedCount, sampleCount } = inspectionSampleSize({ populationCount, ...USUAL });
    // Half a claim: the table prints whole numbers.
    expect(Math.abs(unroundedCount - tabled)).toBeLessThanOrEqual(0.5);
    expect(sampleCount - unroundedCount).toBeLessThan(1);
    expect(sampleCount).toBeGreaterThanOrEqual(unroundedCount);
  });

  it("cochran-1977 §4.4: without a bound on the claims, z²pq/d² = 384.15 at 95 % and ±5 %", () => {
    const { withoutCorrectionCount } = inspectionSampleSize({ populationCount: 1e9, ...USUAL });
    expect(withoutCorrectionCount / 384.15).toBeCloseTo(1, 4);
  });

  it("never asks for more than there are, and for more when surer or finer", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.double({ min: 0.5, max: 0.99, noNaN: true }),
        fc.double({ min: 0.01, max: 0.4, noNaN: true }),
        (populationCount, confidenceProbability, precisionShare) => {
          const size = (confidence: number, precision: number) =>
            inspectionSampleSize({ populationCount, confidenceProbability: confidence, precisionShare: precision })
              .sampleCount;
          const here = size(confidenceProbability, precisionShare);
          expect(here).toBeLessThanOrEqual(populationCount);
          expect(here).toBeGreaterThanOrEqual(1);
          expect(size(Math.min(0.999, confidenceProbability + 0.005), precisionShare)).toBeGreaterThanOrEqual(here);
          expect(size(confidenceProbability, precisionShare * 1.2)).toBeLessThanOrEqual(here);
        },
      ),
    );
  });

  it.each([
    { populationCount: 0, ...USUAL },
    { populationCount: 10.5, ...USUAL },
    { populationCount: Number.NaN, ...USUAL },
    { populationCount: 10, confidenceProbability: 1, precisionShare: 0.05 },
    { populationCount: 10, confidenceProbability: 0.95, precisionShare: Number.NaN },
  ])("refuses %j", (request) => {
    expect(() => inspectionSampleSize(request)).toThrow(InputProblem);
  });
});

describe("the sample", () => {
  const claims = [
    ...Array.from({ length: 700 }, (_, i) => ({ id: `a${i}`, stratum: "contractor A, no flag" })),
    ...Array.from({ length: 290 }, (_, i) => ({ id: `b${i}`, stratum: "contractor B, no flag" })),
    ...Array.from({ length: 10 }, (_, i) => ({ id: `c${i}`, stratum: "contractor B, flagged" })),
    { id: "d0", stratum: "contractor C, flagged" },
  ];

  it("cochran-1977 §5.5: spreads over the groups by their size, at least two of each", () => {
    const { strata, sampleCount } = drawInspectionSample({ claims, seed: 1, ...USUAL });
    const counts = Object.fromEntries(strata.map(({ stratum, sampleCount: count }) => [stratum, count]));
    // 278 of 1,001: 278 × .6993 = 194.4, × .2897 = 80.5, × .00999 = 2.8, and the one of C.
    expect(counts["contractor A, no flag"]).toBe(194);
    expect([80, 81]).toContain(counts["contractor B, no flag"]);
    expect(counts["contractor B, flagged"]).toBe(3);
    expect(counts["contractor C, flagged"]).toBe(1);
    expect(sampleCount).toBeGreaterThanOrEqual(278);
  });

  it("is the same for the same seed in whatever order the claims come, and another for another seed", () => {
    const one = drawInspectionSample({ claims, seed: 7, ...USUAL });
    expect(drawInspectionSample({ claims: [...claims].reverse(), seed: 7, ...USUAL })).toEqual(one);
    expect(drawInspectionSample({ claims, seed: 8, ...USUAL }).strata).not.toEqual(one.strata);
  });

  it("takes every claim of a group equally often: 2 of 10 over 2,000 seeds, each within 5 standard deviations of 400", () => {
    const group = claims.filter(({ id }) => id.startsWith("c"));
    const taken = new Map<string, number>();
    const seeds = 2_000;
    for (let seed = 0; seed < seeds; seed++) {
      const { strata } = drawInspectionSample({ claims: group, seed, confidenceProbability: 0.5, precisionShare: 0.4 });
      expect(strata[0]!.sampleCount).toBe(2);
      for (const id of strata[0]!.claimIds) taken.set(id, (taken.get(id) ?? 0) + 1);
    }
    const spread = Math.sqrt(seeds * 0.2 * 0.8);
    for (const { id } of group) expect(Math.abs(taken.get(id)! - seeds * 0.2)).toBeLessThan(5 * spread);
  });
});

describe("how far an inspector may read from the claim", () => {
  it("iso-5725-6, form of: with instruments perfect it is 1.96 √2 = 2.77 times the operators' difference", () => {
    const { toleranceCfm25 } = reinspectionTolerance({
      claimedCfm25: 100,
      claimedStandardUncertaintyCfm25: 0,
      inspectedCfm25: 100,
      inspectedStandardUncertaintyCfm25: 0,
      operatorRelativeUncertainty: 0.05,
    });
    expect(toleranceCfm25 / (2.7718 * 5)).toBeCloseTo(1, 4);
  });

  it("by hand: u 3 and 4, no operator's part, 95 % → 1.95996 × 5", () => {
    const { toleranceCfm25, differenceCfm25, isWithin } = reinspectionTolerance({
      claimedCfm25: 80,
      claimedStandardUncertaintyCfm25: 3,
      inspectedCfm25: 91,
      inspectedStandardUncertaintyCfm25: 4,
      operatorRelativeUncertainty: 0,
    });
    expect(toleranceCfm25).toBeCloseTo(9.7998, 3);
    expect(differenceCfm25).toBe(11);
    expect(isWithin).toBe(false);
  });

  it("grows with every part of the doubt", () => {
    const base = {
      claimedCfm25: 80,
      claimedStandardUncertaintyCfm25: 3,
      inspectedCfm25: 90,
      inspectedStandardUncertaintyCfm25: 3,
    };
    const of = (change: Partial<Parameters<typeof reinspectionTolerance>[0]>) =>
      reinspectionTolerance({ ...base, ...change }).toleranceCfm25;
    const here = of({});
    expect(of({ claimedStandardUncertaintyCfm25: 4 })).toBeGreaterThan(here);
    expect(of({ inspectedStandardUncertaintyCfm25: 4 })).toBeGreaterThan(here);
    expect(of({ operatorRelativeUncertainty: 0.08 })).toBeGreaterThan(here);
    expect(of({ confidenceProbability: 0.8 })).toBeLessThan(here);
    expect(() => of({ inspectedCfm25: Number.NaN })).toThrow(InputProblem);
  });
});

describe("a total by a sample", () => {
  const sumsOf = (values: readonly number[]) => ({
    count: values.length,
    sum: values.reduce((sum, value) => sum + value, 0),
    sumOfSquares: values.reduce((sum, value) => sum + value ** 2, 0),
  });

  it("is the total itself once every claim is in it", () => {
    expect(estimateTotal(sumsOf([3, 4, 5]), 3)).toEqual({ total: 12, low: 12, high: 12 });
    expect(estimateTotal(sumsOf([]), 0)).toEqual({ total: 0, low: 0, high: 0 });
  });

  /** N·ȳ ± 1.96·N·√(s²/n·(1 − n/N)) worked with the variance of a general library (simple-statistics). */
  it("has the range of Cochran's formula", () => {
    const values = [2, 4, 4, 4, 5, 5, 7, 9];
    const { total, low, high } = estimateTotal(sumsOf(values), 100);
    const half = 1.959964 * 100 * Math.sqrt((sampleVariance(values) / 8) * (1 - 8 / 100));
    expect(total).toBeCloseTo(500, 9);
    expect(high - total).toBeCloseTo(half, 3);
    expect(total - low).toBeCloseTo(half, 3);
  });

  it("covers the true total in about 95 of 100 samples of 400 from 4,000 lopsided rebates", () => {
    const random = xoroshiro128plus(7);
    const unit = () => (random.next() >>> 0) / 2 ** 32;
    const rebates = Array.from({ length: 4000 }, () => (unit() < 0.3 ? 0 : Math.round(50_000 * unit() ** 2)));
    const truth = rebates.reduce((sum, value) => sum + value, 0);
    let covered = 0;
    for (let k = 0; k < 400; k++) {
      const left = [...rebates];
      const drawn = Array.from({ length: 400 }, () => left.splice(Math.floor(unit() * left.length), 1)[0]!);
      const { low, high } = estimateTotal(sumsOf(drawn), rebates.length);
      if (low <= truth && truth <= high) covered++;
    }
    expect(covered).toBeGreaterThan(400 * 0.92);
    expect(covered).toBeLessThan(400 * 0.98);
  });
});
