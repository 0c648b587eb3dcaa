import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leakageAtPressure } from "#lib/measure/leakage-at-pressure.ts";
import { expectClose } from "#tests/expect-close.ts";

const pressure = fc.double({ min: 1, max: 250, noNaN: true });

describe("leakageAtPressure", () => {
  it("leaves a reading at the reference pressure as it is, with no doubt of the exponent", () => {
    expect(leakageAtPressure({ flowCfm: 150, ductPressurePa: 25 })).toEqual({
      leakageCfm: 150,
      relativeStandardUncertaintyOfExponent: 0,
    });
  });

  it("states a doubt that a change of the exponent by 0.05 really makes, to first order [derived]", () => {
    fc.assert(
      fc.property(pressure, (ductPressurePa) => {
        fc.pre(Math.abs(Math.log(25 / ductPressurePa)) > 0.1);
        const at = (exponent: number) => leakageAtPressure({ flowCfm: 100, ductPressurePa, exponent }).leakageCfm;
        const { relativeStandardUncertaintyOfExponent } = leakageAtPressure({ flowCfm: 100, ductPressurePa });
        expectClose({
          actual: Math.abs(Math.log(at(0.65) / at(0.55))) / 2,
          expected: relativeStandardUncertaintyOfExponent,
          relativeTolerance: 1e-6,
          reason: "a power law is linear in its exponent on logarithms",
        });
      }),
    );
  });

  it("refuses a sign, a baseline left in, and exponents that no leak has", () => {
    for (const ductPressurePa of [-18, 0, 0.5, 251, Number.NaN]) {
      expect(() => leakageAtPressure({ flowCfm: 150, ductPressurePa })).toThrow("#/ductPressurePa");
    }
    for (const exponent of [0.2, 1.3, Number.NaN]) {
      expect(() => leakageAtPressure({ flowCfm: 150, ductPressurePa: 18, exponent })).toThrow("#/exponent");
    }
    expect(() => leakageAtPressure({ flowCfm: -1, ductPressurePa: 18 })).toThrow("#/flowCfm");
    expect(() => leakageAtPressure({ flowCfm: 1, ductPressurePa: 18, referencePressurePa: 0 })).toThrow(
      "#/referencePressurePa",
    );
  });
});
