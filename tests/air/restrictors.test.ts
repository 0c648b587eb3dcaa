import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rankRestrictors } from "#lib/air/choose-restrictor.ts";
import { fanPressureOnCurve, flowOnFanCurve } from "#lib/air/fan-curve.ts";
import { INVENTED_RESTRICTORS } from "#tests/air/invented-fan.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("rankRestrictors", () => {
  // Worked by hand: spans of 500-1500, 200-600 and 50-150 cfm; P = (Q/C)².
  it.each([
    [400, "medium", 100],
    [100, "small", 100],
    [1000, "open", 100],
    [500, "medium", 156.25],
    [590, "open", 34.81],
  ])("at %i cfm takes %s, which reads %f Pa", (flowCfm, restrictorId, fanPressurePa) => {
    const best = rankRestrictors({ restrictors: INVENTED_RESTRICTORS, flowCfm })[0]!;
    expect(best.restrictorId).toBe(restrictorId);
    expectClose({
      actual: best.fanPressurePa,
      expected: fanPressurePa,
      relativeTolerance: 1e-12,
      reason: "exact squares",
    });
    expect(best.marginRatio).toBeGreaterThan(1);
  });

  it("says by a margin below 1 that no restrictor reads the flow inside its span", () => {
    for (const flowCfm of [10, 170, 3000]) {
      expect(rankRestrictors({ restrictors: INVENTED_RESTRICTORS, flowCfm })[0]!.marginRatio).toBeLessThan(1);
    }
  });

  it("does not depend on the order of the list", () => {
    const backwards = [...INVENTED_RESTRICTORS].reverse();
    for (const flowCfm of [60, 300, 550, 1400]) {
      expect(rankRestrictors({ restrictors: backwards, flowCfm })).toEqual(
        rankRestrictors({ restrictors: INVENTED_RESTRICTORS, flowCfm }),
      );
    }
  });

  it("refuses an empty list and no flow", () => {
    expect(() => rankRestrictors({ restrictors: [], flowCfm: 100 })).toThrow("#/restrictors");
    expect(() => rankRestrictors({ restrictors: INVENTED_RESTRICTORS, flowCfm: 0 })).toThrow("#/flowCfm");
  });
});

describe("the fan curve", () => {
  it("goes from pressure to flow and back, in thin air too", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 500, noNaN: true }),
        fc.double({ min: 0.05, max: 0.09, noNaN: true }),
        (pressurePa, density) => {
          const curve = { coefficient: 31, exponent: 0.49 };
          expectClose({
            actual: fanPressureOnCurve(curve, flowOnFanCurve(curve, pressurePa, density, 0.075), density, 0.075),
            expected: pressurePa,
            relativeTolerance: 1e-11,
            reason: "a round trip",
          });
          expect(
            flowOnFanCurve(curve, pressurePa, density, 0.075) > flowOnFanCurve(curve, pressurePa, 0.075, 0.075),
          ).toBe(density < 0.075);
        },
      ),
    );
  });
});
