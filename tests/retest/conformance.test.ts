import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beforeAfterDifference } from "#lib/retest/before-after-difference.ts";
import { conformanceProbability } from "#lib/retest/conformance-probability.ts";
import { guardBand } from "#lib/retest/guard-band.ts";
import { judgeTarget } from "#lib/retest/judge-target.ts";
import { expectClose } from "#tests/expect-close.ts";

const limits = fc.double({ min: 1, max: 1000, noNaN: true });
const doubts = fc.double({ min: 0.001, max: 50, noNaN: true });
const ratios = fc.double({ min: 0.001, max: 0.3, noNaN: true });
const confidences = fc.double({ min: 0.5, max: 0.99, noNaN: true });

describe("probability of meeting a limit", () => {
  it("derived: a value at its limit meets it with one half", () => {
    expect(conformanceProbability({ value: 80, standardUncertainty: 6, upperLimit: 80 }).probability).toBe(0.5);
    expect(conformanceProbability({ value: 80, standardUncertainty: 6, lowerLimit: 80 }).probability).toBe(0.5);
  });

  it("derived: meeting below and not meeting above are all there is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 1100, noNaN: true }),
        doubts,
        limits,
        (value, standardUncertainty, limit) => {
          const below = conformanceProbability({ value, standardUncertainty, upperLimit: limit }).probability;
          const above = conformanceProbability({ value, standardUncertainty, lowerLimit: limit }).probability;
          expect(Math.abs(below + above - 1)).toBeLessThan(1e-12);
          expect(below).toBeGreaterThanOrEqual(0);
          expect(below).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it("falls as an upper limit is approached and passed", () => {
    const at = (value: number) => conformanceProbability({ value, standardUncertainty: 6, upperLimit: 80 }).probability;
    const values = [50, 60, 70, 80, 90, 100].map(at);
    expect([...values].sort((a, b) => b - a)).toEqual(values);
    expect(new Set(values).size).toBe(values.length);
  });

  it("answers 1 or 0 where nothing is in doubt", () => {
    expect(conformanceProbability({ value: 80, standardUncertainty: 0, upperLimit: 80 }).probability).toBe(1);
    expect(conformanceProbability({ value: 80.001, standardUncertainty: 0, upperLimit: 80 }).probability).toBe(0);
    expect(
      conformanceProbability({ value: 5, standardUncertainty: 0, lowerLimit: 6, upperLimit: 80 }).probability,
    ).toBe(0);
  });

  it("refuses no limit, crossed limits, a negative uncertainty", () => {
    expect(() => conformanceProbability({ value: 1, standardUncertainty: 1 })).toThrow("no limit");
    expect(() => conformanceProbability({ value: 1, standardUncertainty: 1, lowerLimit: 5, upperLimit: 2 })).toThrow(
      "below",
    );
    expect(() => conformanceProbability({ value: 1, standardUncertainty: -1, upperLimit: 2 })).toThrow(
      "#/standardUncertainty",
    );
  });
});

describe("guard band", () => {
  it("jcgm-106 §8.3: a reading at the acceptance limit meets the limit with the confidence asked for", () => {
    fc.assert(
      fc.property(
        limits,
        doubts,
        ratios,
        confidences,
        (limit, standardUncertainty, relativeStandardUncertainty, confidence) => {
          const reason = "the definition of the acceptance limit";
          const absolute = guardBand({ upperLimit: limit, standardUncertainty, confidence }).acceptanceLimit;
          expectClose({
            actual: conformanceProbability({ value: absolute, standardUncertainty, upperLimit: limit }).probability,
            expected: confidence,
            relativeTolerance: 1e-6,
            reason,
          });
          const relative = guardBand({ upperLimit: limit, relativeStandardUncertainty, confidence }).acceptanceLimit;
          expectClose({
            actual: conformanceProbability({
              value: relative,
              standardUncertainty: relativeStandardUncertainty * relative,
              upperLimit: limit,
            }).probability,
            expected: confidence,
            relativeTolerance: 1e-6,
            reason,
          });
        },
      ),
    );
  });

  it("lies on the safe side of the limit, the farther the more doubt and the more confidence", () => {
    fc.assert(
      fc.property(limits, ratios, confidences, (limit, ratio, confidence) => {
        const upper = (r: number, c: number) =>
          guardBand({ upperLimit: limit, relativeStandardUncertainty: r, confidence: c }).acceptanceLimit;
        const lower = (r: number, c: number) =>
          guardBand({ lowerLimit: limit, relativeStandardUncertainty: r, confidence: c }).acceptanceLimit;
        expect(upper(ratio, confidence)).toBeLessThanOrEqual(limit);
        expect(lower(ratio, confidence)).toBeGreaterThanOrEqual(limit);
        expect(upper(ratio * 1.1, confidence)).toBeLessThanOrEqual(upper(ratio, confidence));
        expect(upper(ratio, confidence + 0.005)).toBeLessThan(upper(ratio, confidence));
        expect(lower(ratio, confidence + 0.005)).toBeGreaterThan(lower(ratio, confidence));
      }),
    );
    expect(guardBand({ upperLimit: 80, standardUncertainty: 6, confidence: 0.5 }).acceptanceLimit).toBe(80);
    expect(guardBand({ upperLimit: 80, standardUncertainty: 0 }).acceptanceLimit).toBe(80);
  });

  it("refuses two limits, none, two uncertainties, certainty, and a lower limit that no reading meets", () => {
    expect(() => guardBand({ upperLimit: 80, lowerLimit: 10, standardUncertainty: 6 })).toThrow("Exactly one limit");
    expect(() => guardBand({ standardUncertainty: 6 })).toThrow("not none");
    expect(() => guardBand({ upperLimit: 80 })).toThrow("Exactly one uncertainty");
    expect(() => guardBand({ upperLimit: 80, standardUncertainty: 6, relativeStandardUncertainty: 0.1 })).toThrow(
      "Exactly one",
    );
    expect(() => guardBand({ upperLimit: 80, standardUncertainty: 6, confidence: 1 })).toThrow("#/confidence");
    expect(() => guardBand({ lowerLimit: 80, relativeStandardUncertainty: 0.7 })).toThrow("no reading meets");
    expect(() => guardBand({ upperLimit: -5, relativeStandardUncertainty: 0.1 })).toThrow("0 or more");
  });
});

describe("the two statements about a target", () => {
  it("derived: confidence is met exactly when the probability reaches it, and never without the rule", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        doubts,
        limits,
        confidences,
        (valueCfm25, standardUncertaintyCfm25, limitCfm25, confidence) => {
          const judgment = judgeTarget({ valueCfm25, standardUncertaintyCfm25, limitCfm25, confidence });
          fc.pre(Math.abs(judgment.probability - confidence) > 1e-9);
          expect(judgment.meetsWithConfidence).toBe(judgment.probability > confidence);
          expect(judgment.meetsRule).toBe(valueCfm25 <= limitCfm25);
          if (judgment.meetsWithConfidence) expect(judgment.meetsRule).toBe(true);
        },
      ),
    );
  });

  it("tells a bare pass from a sure one", () => {
    const at = (valueCfm25: number) =>
      judgeTarget({ valueCfm25, standardUncertaintyCfm25: 0.075 * valueCfm25, limitCfm25: 80, confidence: 0.95 });
    expect(at(75)).toMatchObject({ meetsRule: true, meetsWithConfidence: false });
    expect(at(70)).toMatchObject({ meetsRule: true, meetsWithConfidence: true });
    expect(at(81)).toMatchObject({ meetsRule: false, meetsWithConfidence: false });
  });
});

describe("difference of two readings", () => {
  const readings = fc.record({
    before: fc.double({ min: 10, max: 1000, noNaN: true }),
    after: fc.double({ min: 0, max: 1000, noNaN: true }),
    randomRelativeBefore: ratios,
    randomRelativeAfter: ratios,
    sharedRelative: ratios,
  });

  it("is never less sure with the same fan and restrictor than with another", () => {
    fc.assert(
      fc.property(readings, (input) => {
        const same = beforeAfterDifference({ ...input, sameInstrumentAndRestrictor: true });
        const other = beforeAfterDifference(input);
        expect(same.standardUncertainty).toBeLessThanOrEqual(other.standardUncertainty);
        expect(same.reductionStandardUncertainty).toBeLessThanOrEqual(other.reductionStandardUncertainty);
        expect(same.difference).toBe(other.difference);
      }),
    );
  });

  it("scales with its readings; the share does not", () => {
    fc.assert(
      fc.property(readings, fc.double({ min: 0.1, max: 10, noNaN: true }), (input, factor) => {
        const one = beforeAfterDifference(input);
        const scaled = beforeAfterDifference({ ...input, before: input.before * factor, after: input.after * factor });
        const reason = "both readings in another unit";
        expectClose({
          actual: scaled.standardUncertainty,
          expected: one.standardUncertainty * factor,
          relativeTolerance: 1e-9,
          reason,
        });
        expect(Math.abs(scaled.reductionShare - one.reductionShare)).toBeLessThan(1e-9);
      }),
    );
  });

  it("derived: agrees with ten thousand simulated pairs of readings, shared and not", () => {
    // Sums of twelve evenly spread numbers stand for normal ones; a fixed sequence, so the same each time.
    let state = 12345;
    const uniform = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const normal = () => Array.from({ length: 12 }, uniform).reduce((sum, each) => sum + each, -6);
    for (const sameInstrumentAndRestrictor of [true, false]) {
      const differences = Array.from({ length: 10_000 }, () => {
        const first = normal();
        const second = sameInstrumentAndRestrictor ? first : normal();
        return 320 * (1 + 0.03 * normal() + 0.05 * first) - 110 * (1 + 0.03 * normal() + 0.05 * second);
      });
      const mean = differences.reduce((sum, each) => sum + each, 0) / differences.length;
      const spread = Math.sqrt(differences.reduce((sum, each) => sum + (each - mean) ** 2, 0) / differences.length);
      const { standardUncertainty } = beforeAfterDifference({
        before: 320,
        after: 110,
        randomRelativeBefore: 0.03,
        randomRelativeAfter: 0.03,
        sharedRelative: 0.05,
        sameInstrumentAndRestrictor,
      });
      expectClose({ actual: spread, expected: standardUncertainty, relativeTolerance: 0.03, reason: "10,000 draws" });
    }
  });

  it("says when before and after cannot be told apart", () => {
    const noisy = { randomRelativeBefore: 0.1, randomRelativeAfter: 0.1 };
    expect(beforeAfterDifference({ before: 320, after: 300, ...noisy }).isDifferenceClear).toBe(false);
    expect(beforeAfterDifference({ before: 320, after: 100, ...noisy }).isDifferenceClear).toBe(true);
  });

  it("refuses nothing before and a negative reading after", () => {
    const good = { before: 320, after: 110, randomRelativeBefore: 0.05, randomRelativeAfter: 0.05 };
    expect(() => beforeAfterDifference({ ...good, before: 0 })).toThrow("Value before");
    expect(() => beforeAfterDifference({ ...good, after: -1 })).toThrow("Value after");
    expect(() => beforeAfterDifference({ ...good, randomRelativeAfter: Number.NaN })).toThrow("#/randomRelativeAfter");
  });
});
