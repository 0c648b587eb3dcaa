import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { fanFlow } from "#lib/measure/fan-flow.ts";
import { flowFromCalibration } from "#lib/measure/flow-from-calibration.ts";
import { INVENTED_RESTRICTORS } from "#tests/air/invented-fan.ts";
import { expectClose } from "#tests/expect-close.ts";

const fixOf = (act: () => unknown): string => {
  try {
    act();
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown.errors[0]!.fix;
    throw thrown;
  }
  throw new Error("accepted");
};

describe("fanFlow", () => {
  it("moves more of thin air, by the root of the densities: a mile up 10 % more [derived]", () => {
    const at = (fanAirDensityLbPerFt3: number) =>
      fanFlow({ coefficient: 30, exponent: 0.5, fanPressurePa: 64, fanAirDensityLbPerFt3 }).flowCfm;
    expectClose({
      actual: at(0.0619) / at(0.075),
      expected: 1.1007,
      relativeTolerance: 1e-4,
      reason: "√(0.075/0.0619) worked by hand to 5 figures",
    });
  });

  it("rises with the fan pressure", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0.4, max: 0.7, noNaN: true }),
        (pressure, exponent) => {
          const at = (fanPressurePa: number) => fanFlow({ coefficient: 30, exponent, fanPressurePa }).flowCfm;
          expect(at(pressure * 1.01)).toBeGreaterThan(at(pressure));
        },
      ),
    );
  });

  it("refuses what no calibration gives, by field", () => {
    const good = { coefficient: 30, exponent: 0.5, fanPressurePa: 100 };
    for (const [field, bad] of [
      ["coefficient", 0],
      ["exponent", 0.9],
      ["fanPressurePa", -5],
      ["fanPressurePa", Number.NaN],
      ["fanAirDensityLbPerFt3", 1.2],
      ["calibrationDensityLbPerFt3", 0],
    ] as const) {
      expect(() => fanFlow({ ...good, [field]: bad })).toThrow(`#/${field}`);
    }
  });
});

describe("flowFromCalibration", () => {
  const from = (restrictorId: string, fanPressurePa: number) =>
    flowFromCalibration({ restrictors: INVENTED_RESTRICTORS, restrictorId, fanPressurePa });

  it("reads inside the span, its ends included", () => {
    expect(from("medium", 100).flowCfm).toBe(400);
    expect(from("medium", 25).flowCfm).toBe(200);
    expect(from("medium", 225).flowCfm).toBe(600);
  });

  // By hand: medium at 9 Pa is 120 cfm, so small reads 144 Pa; medium at 400 Pa is 800 cfm, so open reads 64 Pa.
  it("refuses outside the span and names the restrictor to take, with what it should read", () => {
    expect(fixOf(() => from("medium", 9))).toContain("Small plate: it should read about 144 Pa");
    expect(fixOf(() => from("medium", 400))).toContain("Open fan: it should read about 64 Pa");
    expect(() => from("medium", 9)).toThrow("#/fanPressurePa");
  });

  it("says so when no restrictor of the fan reads so much or so little", () => {
    expect(fixOf(() => from("open", 900))).toContain("larger fan");
    expect(fixOf(() => from("small", 4))).toContain("smaller fan");
  });

  it("refuses a restrictor that the fan does not have, listing those it has", () => {
    expect(fixOf(() => from("tiny", 100))).toContain("open, medium, small");
  });
});
