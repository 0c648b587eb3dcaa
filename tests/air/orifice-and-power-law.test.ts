import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flowAtPressure } from "#lib/air/flow-at-pressure.ts";
import { orificeArea, orificeFlow } from "#lib/air/orifice-area.ts";
import { signedPower } from "#lib/air/signed-power.ts";
import { expectClose } from "#tests/expect-close.ts";

const flow = fc.double({ min: 0.1, max: 5000, noNaN: true });
const pressure = fc.double({ min: 1, max: 250, noNaN: true });
const exponent = fc.double({ min: 0.5, max: 1, noNaN: true });

describe("orificeArea and orificeFlow", () => {
  it("undo each other", () => {
    fc.assert(
      fc.property(flow, pressure, (leakageCfm, pressurePa) => {
        const { areaIn2 } = orificeArea({ leakageCfm, pressurePa });
        expectClose({
          actual: orificeFlow({ areaIn2, pressurePa }).leakageCfm,
          expected: leakageCfm,
          relativeTolerance: 1e-12,
          reason: "a round trip",
        });
      }),
    );
  });

  it("agrees with Bernoulli at a discharge coefficient of 0.6 within 3 % [derived]", () => {
    // Q = C_d·A·√(2P/ρ) at 0.075 lb/ft³, worked in SI: 1 in² = 6.4516e-4 m², 1 m³/s = 2118.88 cfm.
    const bernoulliCfm = 0.6 * 6.4516e-4 * Math.sqrt((2 * 25) / 1.2014) * 2118.88;
    expectClose({
      actual: orificeFlow({ areaIn2: 1, pressurePa: 25 }).leakageCfm,
      expected: bernoulliCfm,
      relativeTolerance: 0.03,
      reason: "the published factor holds a discharge coefficient of about 0.6",
    });
  });

  it("refuses what is no flow, area or pressure", () => {
    expect(() => orificeArea({ leakageCfm: -1, pressurePa: 25 })).toThrow("#/leakageCfm");
    expect(() => orificeArea({ leakageCfm: 100, pressurePa: 0 })).toThrow("#/pressurePa");
    expect(() => orificeFlow({ areaIn2: 0, pressurePa: 25 })).toThrow("#/areaIn2");
    expect(() => orificeFlow({ areaIn2: 1, pressurePa: Number.NaN })).toThrow("#/pressurePa");
  });
});

describe("flowAtPressure", () => {
  it("comes back by the way it went, and may stop on the way", () => {
    fc.assert(
      fc.property(flow, pressure, pressure, pressure, exponent, (start, a, b, c, n) => {
        const reason = "powers of a ratio multiply";
        const there = flowAtPressure(start, a, c, n);
        expectClose({ actual: flowAtPressure(there, c, a, n), expected: start, relativeTolerance: 1e-12, reason });
        const stopped = flowAtPressure(flowAtPressure(start, a, b, n), b, c, n);
        expectClose({ actual: stopped, expected: there, relativeTolerance: 1e-12, reason });
      }),
    );
  });

  it("is the square root at 0.5 and proportional at 1", () => {
    expect(flowAtPressure(100, 4, 16, 0.5)).toBe(200);
    expect(flowAtPressure(100, 4, 16, 1)).toBe(400);
  });
});

describe("signedPower", () => {
  it("is odd, rises, and fixes 0 and 1", () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), exponent, (base, n) => {
        expect(signedPower(-base, n) + signedPower(base, n)).toBe(0);
        expect(signedPower(base + 0.01, n)).toBeGreaterThan(signedPower(base, n));
      }),
    );
    expect(signedPower(0, 0.6)).toBe(0);
    expect(signedPower(-1, 0.6)).toBe(-1);
  });
});
