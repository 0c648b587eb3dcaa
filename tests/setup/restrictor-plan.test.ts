import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FanCalibration, fanSchema, gaugeSchema } from "#lib/job/instrument-schema.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { planRestrictor } from "#lib/setup/restrictor-plan.ts";
import { expectClose } from "#tests/expect-close.ts";

const restrictor = (restrictorId: string, coefficient: number): FanCalibration => ({
  restrictorId,
  restrictorLabel: restrictorId,
  direction: "pushing",
  coefficient,
  exponent: 0.5,
  minFanPressurePa: 25,
  maxFanPressurePa: 400,
});
/** Reads 200 to 800, 50 to 200 and 20 to 80 cfm: C·√25 to C·√400. */
const fan = { calibrations: [restrictor("large", 40), restrictor("mid", 10), restrictor("small", 4)] };

describe("worked by hand: P = (Q/C)², span 25 to 400 Pa", () => {
  it.each([
    // (400/40)² = 100 Pa, four times from either end
    [400, "large", 100],
    // mid (100/10)² = 100; small would stand at 625, large at 6.25
    [100, "mid", 100],
    // 60 cfm: mid 36 Pa (margin 1.44), small 225 Pa (margin 1.78)
    [60, "small", 225],
    // 70 cfm: mid 49 Pa (margin 1.96), small 306.25 Pa (margin 1.31)
    [70, "mid", 49],
    // the ends of the spans themselves count as inside
    [800, "large", 400],
    [20, "small", 25],
  ])("%d cfm → %s at %d Pa", (expectedFlowCfm, id, pressurePa) => {
    const { chosen, verdict } = planRestrictor({ fan, direction: "pushing", expectedFlowCfm });
    expect(verdict).toBe("chosen");
    expect(chosen?.calibration.restrictorId).toBe(id);
    expectClose({
      actual: chosen!.expectedFanPressurePa,
      expected: pressurePa,
      relativeTolerance: 1e-12,
      reason: "closed form",
    });
  });

  it.each([
    [900, "fan-too-small"],
    [15, "restrictors-too-large"],
  ] as const)("%d cfm → %s", (expectedFlowCfm, verdict) => {
    const plan = planRestrictor({ fan, direction: "pushing", expectedFlowCfm });
    expect(plan.verdict).toBe(verdict);
    expect(plan.chosen).toBeUndefined();
  });

  it("between two spans that do not meet: says so", () => {
    const gappy = { calibrations: [restrictor("large", 40), restrictor("small", 4)] };
    expect(planRestrictor({ fan: gappy, direction: "pushing", expectedFlowCfm: 120 }).verdict).toBe(
      "gap-between-restrictors",
    );
  });

  it("a direction without calibration has no restrictor to offer", () => {
    expect(planRestrictor({ fan, direction: "pulling", expectedFlowCfm: 100 }).verdict).toBe("no-calibration");
  });

  it("refuses a flow that is no flow", () => {
    expect(() => planRestrictor({ fan, direction: "pushing", expectedFlowCfm: 0 })).toThrow(/above 0/);
    expect(() => planRestrictor({ fan, direction: "pushing", expectedFlowCfm: Number.NaN })).toThrow(/above 0/);
  });
});

describe("the invented demonstration instruments", () => {
  it("pass the schema and say that they are invented", () => {
    expect(fanSchema.parse(DEMO_FAN)).toEqual(DEMO_FAN);
    expect(gaugeSchema.parse(DEMO_GAUGE)).toEqual(DEMO_GAUGE);
    for (const { isInvented, name } of [DEMO_FAN, DEMO_GAUGE]) {
      expect(isInvented).toBe(true);
      expect(name).toMatch(/invented/);
    }
  });

  it("read every flow from 18 to 1500 cfm inside some span, in both directions", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 18, max: 1500, noNaN: true }),
        fc.constantFrom("pushing", "pulling"),
        (flow, direction) => {
          const { chosen } = planRestrictor({ fan: DEMO_FAN, direction, expectedFlowCfm: flow });
          expect(chosen?.reading).toBe("inside-span");
        },
      ),
    );
  });

  it("a larger flow never asks for a smaller opening", () => {
    const at = (expectedFlowCfm: number) =>
      planRestrictor({ fan: DEMO_FAN, direction: "pushing", expectedFlowCfm }).chosen!;
    fc.assert(
      fc.property(
        fc.double({ min: 18, max: 1000, noNaN: true }),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        (flow, factor) => {
          expect(at(flow * factor).calibration.coefficient).toBeGreaterThanOrEqual(at(flow).calibration.coefficient);
        },
      ),
    );
  });
});
