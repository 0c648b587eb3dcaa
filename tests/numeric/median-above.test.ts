import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { medianAbove } from "#lib/numeric/median-above.ts";

describe("a mean told only above a threshold", () => {
  it("is as often too high as too low, whatever it is [Monte Carlo of its own definition]", () => {
    const normals = new Float64Array(1);
    for (const [k, mean] of [0.5, 1, 2, 3, 6].entries()) {
      const source = createDrawSource(100 + k);
      const found: number[] = [];
      for (let draw = 0; found.length < 4000; draw += 1) {
        source.fillNormals(draw, normals);
        const value = mean + normals[0]!;
        if (value > 2) found.push(medianAbove({ value, standardUncertainty: 1, threshold: 2 }));
      }
      const tooHigh = found.filter((each) => each > mean).length / found.length;
      // Four standard deviations of a share of 4,000.
      expect(Math.abs(tooHigh - 0.5), `mean ${mean}`).toBeLessThan(0.032);
    }
  });

  it("never exceeds what came out, rises with it, and is the same far above the threshold", () => {
    fc.assert(
      fc.property(fc.double({ min: 2.001, max: 12, noNaN: true }), (value) => {
        const at = (told: number) => medianAbove({ value: told, standardUncertainty: 1, threshold: 2 });
        expect(at(value)).toBeLessThanOrEqual(value);
        expect(at(value + 0.01)).toBeGreaterThanOrEqual(at(value) - 1e-8);
      }),
    );
    expect(medianAbove({ value: 8, standardUncertainty: 1, threshold: 2 })).toBeCloseTo(8, 6);
    expect(medianAbove({ value: 3, standardUncertainty: 0, threshold: 0 })).toBe(3);
  });
});
