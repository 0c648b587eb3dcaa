import { describe, expect, it } from "vitest";
import type { FanTest } from "#lib/job/duct-test.ts";
import type { TestFan } from "#lib/job/instrument-schema.ts";
import { judgeFanTest, judgeFit } from "#lib/measure/judge-reading.ts";
import { noteDensityLeftOut } from "#lib/measure/reading-notes.ts";
import { INVENTED_RESTRICTORS } from "#tests/air/invented-fan.ts";

/** An invented fan. */
const fan: TestFan = {
  id: "fan",
  name: "Invented fan",
  calibrations: INVENTED_RESTRICTORS.map((row) => ({ ...row, direction: "pushing" as const })),
  needsFlowStraightenerWhenPulling: true,
  tapReference: { pushing: "air-around-fan", pulling: "duct-side-air" },
  restrictorSide: "inlet",
  isInvented: true,
};

const total = (change: Partial<FanTest> = {}): FanTest =>
  ({
    id: "t1",
    kind: "total-leakage",
    stage: "existing",
    direction: "pushing",
    points: [{ ductPressurePa: 25.2, fanPressurePa: 103.4, restrictorId: "medium" }],
    ...change,
  }) as FanTest;

const codesOf = (test: FanTest, { baselinePa = 0, elevationFt = 500 } = {}) =>
  judgeFanTest({ test, fan, baselinePa, elevationFt }).map((note) => note.code);

const reading = (ductPressurePa: number, fanPressurePa: number, restrictorId = "medium") => ({
  ductPressurePa,
  fanPressurePa,
  restrictorId,
});

describe("judgeFanTest", () => {
  it("says nothing of a sound reading", () => {
    expect(codesOf(total())).toEqual([]);
    expect(codesOf(total({ direction: "pulling", points: [{ ductPressurePa: -25.1, flowCfm: 180 }] }))).toEqual([]);
  });

  it("carries the mark of whoever read the gauge, with the number of the step", () => {
    const doubted = { ductPressurePa: 20.1, fanPressurePa: 80.2, restrictorId: "medium", isDoubtful: true };
    const notes = judgeFanTest({
      test: total({ points: [reading(25.2, 103.4), doubted] }),
      fan,
      baselinePa: 0,
      elevationFt: 500,
    });
    expect(notes.map(({ code, what }) => `${code}: ${what}`)).toEqual([
      "marked-doubtful: Step 2 is kept but marked doubtful.",
    ]);
  });

  it("records a change of restrictor in mid-test beside the step, without doubting it", () => {
    const [first, second] = INVENTED_RESTRICTORS.map(({ restrictorId }) => restrictorId) as [string, string];
    const points = [
      reading(20, 100, first),
      reading(25, 100, second),
      reading(30, 110, second),
      reading(35, 120, first),
    ];
    const notes = judgeFanTest({ test: total({ points }), fan, baselinePa: 0, elevationFt: 500 });
    const change = notes.find(({ code }) => code === "restrictor-changed");
    expect(change?.severity).toBe("note");
    expect(change?.what).toMatch(/ at step 2 and 1 more\.$/);
    expect(codesOf(total({ points: points.slice(1, 3) }))).not.toContain("restrictor-changed");
  });

  it.each([
    ["pushing", -25, ["wrong-sign"]],
    ["pushing", 25, []],
    ["pulling", 25, ["wrong-sign"]],
    ["pulling", -25, []],
  ] as const)("%s air with a duct pressure of %i Pa: %j", (direction, ductPressurePa, codes) => {
    expect(codesOf(total({ direction, points: [{ ductPressurePa, flowCfm: 180 }] }))).toEqual(codes);
  });

  it("judges a to-outside test by the pressure of the house, and what is left between ducts and house", () => {
    const outside = (houseToOutsidePressurePa: number, ductToHousePressurePa: number) =>
      codesOf(
        total({
          kind: "leakage-to-outside",
          houseToOutsidePressurePa,
          ductToHousePressurePa,
          points: [{ ductPressurePa: 0, flowCfm: 90 }],
        } as Partial<FanTest>),
      );
    expect(outside(25, 0.1)).toEqual([]);
    expect(outside(-25, 0)).toEqual(["wrong-sign"]);
    expect(outside(25, 1.2)).toEqual(["leftover-pressure"]);
    expect(outside(18, 0)).toEqual(["reference-not-reached"]);
  });

  it("names the restrictor to take when the fan pressure is outside its span", () => {
    const [note] = judgeFanTest({ test: total({ points: [reading(25.3, 9)] }), fan, baselinePa: 0, elevationFt: 0 });
    expect(note).toMatchObject({ code: "fan-pressure-outside-span", severity: "doubt" });
    expect(note!.nextMove).toContain("Small plate");
    expect(note!.nextMove).toContain("144 Pa");
    expect(codesOf(total({ points: [reading(25.3, 225)] }))).toEqual([]);
  });

  it("doubts a baseline over a fifth of the reading, and takes it off before it asks for 25 Pa", () => {
    expect(codesOf(total({ points: [reading(30, 100)] }), { baselinePa: 5.9 })).toEqual(["reference-not-reached"]);
    expect(codesOf(total({ points: [reading(30, 100)] }), { baselinePa: 6.1 })).toEqual([
      "baseline-large",
      "reference-not-reached",
    ]);
    expect(codesOf(total({ points: [reading(25, 100)] }), { baselinePa: -4.9 })).toEqual([]);
  });

  it("doubts a flow read at altitude from the gauge, not one that we corrected ourselves", () => {
    const fromGauge = total({ points: [{ ductPressurePa: 25, flowCfm: 180 }] });
    expect(codesOf(fromGauge, { elevationFt: 5280 })).toEqual(["density-not-corrected"]);
    expect(codesOf(fromGauge, { elevationFt: 800 })).toEqual([]);
    expect(codesOf(total(), { elevationFt: 5280 })).toEqual([]);
    // The standard atmosphere at a mile: √(101,325/83,400) = 1.10.
    expect(noteDensityLeftOut({ elevationFt: 5280, isCorrected: false })!.why).toContain("10 %");
  });

  it("doubts two steps that agree to the last digit, once however often", () => {
    const copied = [reading(25, 100), reading(25, 100), reading(25, 100), reading(30, 130)];
    expect(codesOf(total({ points: copied }))).toEqual(["reading-repeated"]);
    expect(codesOf(total({ points: [reading(25, 100), reading(25, 100.1), reading(30, 130)] }))).toEqual([]);
  });

  it("says in each note what was seen, why it matters and what to do", () => {
    const everything = total({ points: [reading(-12, 3), reading(-12, 3)] });
    const notes = judgeFanTest({ test: everything, fan, baselinePa: 4, elevationFt: 0 });
    expect(notes.length).toBeGreaterThan(3);
    for (const note of notes) {
      for (const text of [note.what, note.why, note.nextMove]) expect(text.length).toBeGreaterThan(20);
    }
  });
});

describe("judgeFit", () => {
  it.each([
    [{ exponent: 0.6, rSquared: 0.999, pointCount: 5 }, []],
    [{ exponent: 0.49, rSquared: 0.999, pointCount: 5 }, ["exponent-outside-range"]],
    [{ exponent: 1.01, rSquared: 0.999, pointCount: 5 }, ["exponent-outside-range"]],
    [{ exponent: 0.6, rSquared: 0.979, pointCount: 5 }, ["fit-scatters"]],
    [{ exponent: 0.6, rSquared: 0.98, pointCount: 4 }, ["few-points"]],
    [{ exponent: 0.6, rSquared: 0.999 }, []],
  ])("%j: %j", (fit, codes) => {
    expect(judgeFit(fit).map((note) => note.code)).toEqual(codes);
  });
});
