import { quantile as independentQuantile } from "d3-array";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { quantilesInPlace } from "#lib/numeric/quantiles-in-place.ts";

const shares = [0, 0.1, 0.5, 0.9, 1] as const;

describe("quantiles of a sample in place", () => {
  it("are those of a general library for any sample, many equal values too (d3-array, type 7)", () => {
    const value = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer({ min: -2, max: 2 }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 300 }), (values) => {
        const expected = shares.map((share) => independentQuantile(values, share)! + 0);
        expect(quantilesInPlace(Float64Array.from(values), shares).map((each) => each + 0)).toEqual(expected);
      }),
    );
  });

  it.each([
    ["rising", (k: number) => k],
    ["falling", (k: number) => -k],
    ["all equal", () => 7],
    ["like an organ pipe", (k: number) => Math.min(k, 9999 - k)],
  ])("hold for 10,000 values %s", (_, make) => {
    const values = Array.from({ length: 10_000 }, (__, k) => make(k));
    const expected = shares.map((share) => independentQuantile(values, share));
    expect(quantilesInPlace(Float64Array.from(values), shares)).toEqual(expected);
  });

  it("keep every value of the sample", () => {
    const values = Float64Array.from({ length: 999 }, (_, k) => (k * 7919) % 1000);
    const sorted = values.slice().sort();
    quantilesInPlace(values, [0.1, 0.5, 0.9]);
    expect(values.sort()).toEqual(sorted);
  });
});
