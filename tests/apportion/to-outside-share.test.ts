import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toOutsideShare } from "#lib/apportion/to-outside-share.ts";
import { findRoot } from "#lib/numeric/find-root.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("toOutsideShare", () => {
  it("is 0 for a zone at the house's pressure, 1 for one at the outside's, and rises between", () => {
    expect(toOutsideShare({ houseToZonePressurePa: 0 }).share).toBe(0);
    expect(toOutsideShare({ houseToZonePressurePa: 50 }).share).toBe(1);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 49, noNaN: true }), (zonePa) => {
        const at = (houseToZonePressurePa: number) => toOutsideShare({ houseToZonePressurePa }).share;
        expect(at(zonePa + 1)).toBeGreaterThan(at(zonePa));
      }),
    );
  });

  it("agrees with two leaks in series solved as a network [derived]", () => {
    // A duct leak of 10 cfm/Pa^0.6 into a zone that leaks c cfm/Pa^0.6 to outside; the house stands at 50 Pa.
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 200, noNaN: true }), (zoneLeak) => {
        const balance = (houseToZonePa: number) => 10 * houseToZonePa ** 0.6 - zoneLeak * (50 - houseToZonePa) ** 0.6;
        const houseToZonePressurePa = findRoot({ valueAt: balance, low: 0, high: 50, tolerance: 1e-12 });
        const throughBoth = 10 * houseToZonePressurePa ** 0.6;
        expectClose({
          actual: toOutsideShare({ houseToZonePressurePa }).share,
          expected: throughBoth / (10 * 50 ** 0.6),
          relativeTolerance: 1e-9,
          reason: "the network's root is found to 1e-12 Pa",
        });
      }),
    );
  });

  it("refuses a zone beyond the outside, a sign, and what is no number", () => {
    for (const houseToZonePressurePa of [-1, 50.1, Number.NaN]) {
      expect(() => toOutsideShare({ houseToZonePressurePa })).toThrow("#/houseToZonePressurePa");
    }
    expect(() => toOutsideShare({ houseToZonePressurePa: 0, houseToOutsidePressurePa: 0 })).toThrow(
      "#/houseToOutsidePressurePa",
    );
  });
});
