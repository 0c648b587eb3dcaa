import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findRoot, RootNotFound } from "#lib/numeric/find-root.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("findRoot", () => {
  it.each([
    ["x² = 2", (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ["cos x = x", (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ["x^0.6 = 7, steep near 0", (x: number) => x ** 0.6 - 7, 0, 1e4, 7 ** (1 / 0.6)],
    ["a step", (x: number) => (x < 3 ? -1 : 1e9), 0, 10, 3],
  ])("finds %s", (_, valueAt, low, high, expected) => {
    const actual = findRoot({ valueAt, low, high, tolerance: 1e-12 });
    expectClose({ actual, expected, relativeTolerance: 1e-10, reason: "closed form, interval of 1e-12" });
  });

  it("finds the crossing of any rising cubic, with few evaluations", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (root, slope) => {
          let evaluations = 0;
          const valueAt = (x: number) => {
            evaluations += 1;
            return (x - root) ** 3 + slope * (x - root);
          };
          const found = findRoot({ valueAt, low: -100, high: 100, tolerance: 1e-9 });
          expect(Math.abs(found - root)).toBeLessThan(1e-8);
          expect(evaluations).toBeLessThan(120);
        },
      ),
    );
  });

  it("refuses ends without a crossing, and values that are none", () => {
    expect(() => findRoot({ valueAt: () => 1, low: 0, high: 1, tolerance: 1e-9 })).toThrow(RootNotFound);
    expect(() => findRoot({ valueAt: () => Number.NaN, low: 0, high: 1, tolerance: 1e-9 })).toThrow(RootNotFound);
    const hole = (x: number) => (x === 0 ? -1 : x === 1 ? 1 : Number.NaN);
    expect(() => findRoot({ valueAt: hole, low: 0, high: 1, tolerance: 1e-9 })).toThrow(RootNotFound);
  });
});
