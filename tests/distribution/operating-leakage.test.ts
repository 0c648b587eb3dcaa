import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OPERATING_PRESSURE_FRACTIONS, operatingLeakage } from "#lib/distribution/operating-leakage.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("operatingLeakage", () => {
  it("is the size at 25 Pa where the leak sees 25 Pa, whichever sign the plenum has", () => {
    for (const plenumStaticPa of [50, -50]) {
      expect(operatingLeakage({ leakageCfm25: 80, plenumStaticPa }).leakageCfm).toBe(80);
    }
    expect(operatingLeakage({ leakageCfm25: 80, plenumStaticPa: 0 }).leakageCfm).toBe(0);
  });

  it("goes with the leak in proportion and with the pressure by its exponent", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 250, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (pressurePa, exponent) => {
          const at = (leakageCfm25: number, plenumStaticPa: number) =>
            operatingLeakage({ leakageCfm25, plenumStaticPa, pressureFraction: 1, exponent }).leakageCfm;
          const reason = "powers of a ratio";
          expectClose({
            actual: at(30, pressurePa),
            expected: 3 * at(10, pressurePa),
            relativeTolerance: 1e-12,
            reason,
          });
          expectClose({
            actual: at(10, 2 * pressurePa),
            expected: 2 ** exponent * at(10, pressurePa),
            relativeTolerance: 1e-12,
            reason,
          });
        },
      ),
    );
  });

  it("falls along the duct: cabinet, trunk, take-off, boot", () => {
    const { cabinet, plenum, trunk, boot } = OPERATING_PRESSURE_FRACTIONS;
    const flows = [cabinet, trunk, OPERATING_PRESSURE_FRACTIONS["take-off"], boot].map(
      ({ value }) => operatingLeakage({ leakageCfm25: 60, plenumStaticPa: 120, pressureFraction: value }).leakageCfm,
    );
    expect([...flows].sort((a, b) => b - a)).toEqual(flows);
    expect(plenum.value).toBe(cabinet.value);
  });

  it("refuses what is no leak or pressure, by field", () => {
    expect(() => operatingLeakage({ leakageCfm25: -1, plenumStaticPa: 60 })).toThrow("#/leakageCfm25");
    expect(() => operatingLeakage({ leakageCfm25: 1, plenumStaticPa: Number.NaN })).toThrow("#/plenumStaticPa");
    expect(() => operatingLeakage({ leakageCfm25: 1, plenumStaticPa: 60, pressureFraction: 2 })).toThrow(
      "#/pressureFraction",
    );
    expect(() => operatingLeakage({ leakageCfm25: 1, plenumStaticPa: 60, exponent: 2 })).toThrow("#/exponent");
  });
});
