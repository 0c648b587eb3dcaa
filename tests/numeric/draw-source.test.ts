import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { normalCdf } from "#lib/numeric/distributions.ts";

const numbersOf = (seed: number, draw: number, count: number) => {
  const out = new Float64Array(count);
  createDrawSource(seed).fillNormals(draw, out);
  return [...out];
};

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  const product = (f: (i: number) => number) => a.reduce((sum, _, i) => sum + f(i), 0);
  const covariance = product((i) => (a[i]! - meanA) * (b[i]! - meanB));
  return covariance / Math.sqrt(product((i) => (a[i]! - meanA) ** 2) * product((i) => (b[i]! - meanB) ** 2));
}

/** Largest gap between the sample's distribution and the normal one (Kolmogorov and Smirnov). */
function largestGap(sample: readonly number[]): number {
  const sorted = [...sample].sort((a, b) => a - b);
  return Math.max(...sorted.map((value, i) => Math.abs(normalCdf(value) - (i + 0.5) / sorted.length)));
}

describe("createDrawSource", () => {
  it("gives draw k the same numbers whoever makes it, in whatever order, with however many asked for", () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(1_000_000), fc.integer({ min: 1, max: 40 }), (seed, draw, count) => {
        const alone = numbersOf(seed, draw, count);
        const source = createDrawSource(seed);
        const out = new Float64Array(count + 7);
        source.fillNormals(draw + 1, out);
        source.fillUniforms(draw, out);
        source.fillNormals(draw, out);
        expect([...out.subarray(0, count)]).toEqual(alone);
        expect(alone.every(Number.isFinite)).toBe(true);
      }),
    );
  });

  it("gives other numbers to another seed or draw", () => {
    const seen = new Set<number>();
    for (let seed = 0; seed < 100; seed += 1)
      for (let draw = 0; draw < 100; draw += 1) seen.add(numbersOf(seed, draw, 1)[0]!);
    expect(seen.size).toBe(10_000);
  });

  // Kolmogorov and Smirnov: a normal sample of n exceeds 1.95/√n once in 1,000.
  it.each([0, 1, 17, 63])("is normal across draws at place %i", (place) => {
    const sample = Array.from({ length: 20_000 }, (_, draw) => numbersOf(7, draw, place + 1)[place]!);
    expect(largestGap(sample)).toBeLessThan(1.95 / Math.sqrt(sample.length));
    expect(largestGap(sample.map((value) => value * 1.1))).toBeGreaterThan(1.95 / Math.sqrt(sample.length));
  });

  it("is normal within one draw, across seeds too", () => {
    expect(largestGap(numbersOf(3, 5, 20_000))).toBeLessThan(1.95 / Math.sqrt(20_000));
    const acrossSeeds = Array.from({ length: 20_000 }, (_, seed) => numbersOf(seed, 0, 1)[0]!);
    expect(largestGap(acrossSeeds)).toBeLessThan(1.95 / Math.sqrt(20_000));
  });

  it("does not tie places, neighboring draws or neighboring seeds to each other", () => {
    const count = 20_000;
    const column = (seed: number, place: number, shift: number) =>
      Array.from({ length: count }, (_, draw) => numbersOf(seed, draw + shift, place + 1)[place]!);
    const first = column(1, 0, 0);
    // Independent columns stay within 3.3/√n but once in 1,000.
    const bound = 3.3 / Math.sqrt(count);
    for (const other of [column(1, 1, 0), column(1, 2, 0), column(1, 9, 0), column(1, 0, 1), column(2, 0, 0)]) {
      expect(Math.abs(correlation(first, other))).toBeLessThan(bound);
      const squares = (values: readonly number[]) => values.map((value) => value * value);
      expect(Math.abs(correlation(squares(first), squares(other)))).toBeLessThan(bound);
    }
  });

  it("keeps uniform numbers inside 0 and 1 and evenly spread", () => {
    const out = new Float64Array(50_000);
    createDrawSource(11).fillUniforms(0, out);
    expect(Math.min(...out.subarray(0, 10_000))).toBeGreaterThan(0);
    expect(out.every((value) => value > 0 && value < 1)).toBe(true);
    const counts = new Array<number>(50).fill(0);
    for (const value of out) counts[Math.floor(value * 50)]! += 1;
    // Chi-square with 49 degrees of freedom exceeds 85.4 once in 1,000.
    expect(counts.reduce((sum, each) => sum + (each - 1000) ** 2 / 1000, 0)).toBeLessThan(85.4);
  });

  it("refuses a seed that is no whole number", () => {
    for (const seed of [-1, 1.5, Number.NaN, 2 ** 53]) expect(() => createDrawSource(seed)).toThrow("whole number");
  });
});
