import { describe, expect, it } from "vitest";
import type { FanTest } from "#lib/job/duct-test.ts";
import { judgeInstruments } from "#lib/measure/judge-instruments.ts";
import { readFanTest } from "#lib/measure/read-fan-test.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { expectClose } from "#tests/expect-close.ts";

describe("judgeInstruments", () => {
  const own = { name: "My fan", calibrationDueDate: "2026-06-30" };
  const codes = (onDate: string | undefined, ...instruments: Parameters<typeof judgeInstruments>[0]["instruments"]) =>
    judgeInstruments({ instruments, onDate }).map(({ code }) => code);

  it("doubts a test made after the last day of a calibration, not on it, for each instrument used", () => {
    expect(codes("2026-06-30", own)).toEqual([]);
    expect(codes("2026-07-01", own)).toEqual(["calibration-expired"]);
    expect(codes("2026-07-01", own, { ...own, name: "My gauge" })).toHaveLength(2);
    const [note] = judgeInstruments({ instruments: [own], onDate: "2026-07-01" });
    expect(note).toMatchObject({ severity: "doubt" });
    expect(note!.what).toContain("My fan");
    expect(note!.what).toContain("2026-06-30");
  });

  it("says nothing where no date or no instrument is named, and says of an invented one that it is", () => {
    expect(codes(undefined, own)).toEqual([]);
    expect(codes("2026-07-01", null, undefined, { name: "No papers" })).toEqual([]);
    expect(codes("2026-03-03", DEMO_FAN, DEMO_GAUGE)).toEqual(["invented-instrument", "invented-instrument"]);
  });
});

describe("a fan pressure outside the span of its restrictor", () => {
  const reading = (fanPressurePa: number, points = 1): FanTest => ({
    id: "t",
    kind: "total-leakage",
    stage: "existing",
    direction: "pushing",
    points: Array.from({ length: points }, (_, i) => ({
      ductPressurePa: 25 + 5 * i,
      fanPressurePa: fanPressurePa * ((25 + 5 * i) / 25) ** 1.2,
      restrictorId: "middle",
    })),
  });
  const read = (test: FanTest) => readFanTest({ test, testIndex: 0, fan: DEMO_FAN, gauge: DEMO_GAUGE, elevationFt: 0 });

  it("keeps the value of the calibration and adds a tenth, as a bound, to its doubt", () => {
    const [inside, outside] = [read(reading(25)), read(reading(24.9))];
    expect(outside.cfm25).toBeGreaterThan(0.99 * inside.cfm25);
    // A bound of 10 % read as a rectangle (GUM 4.3.7): 0.1/√3 = 5.8 %.
    const added = Math.sqrt(outside.randomRelativeUncertainty ** 2 - inside.randomRelativeUncertainty ** 2);
    expectClose({
      actual: added,
      expected: 0.05774,
      relativeTolerance: 0.001,
      reason: "the two readings themselves differ by 0.4 % of a pascal",
    });
    expect(outside.notes.map(({ code }) => code)).toEqual(["fan-pressure-outside-span"]);
  });

  it("counts for a line too, where one of its steps lies outside", () => {
    const [inside, outside] = [read(reading(100, 5)), read(reading(200, 5))];
    expect(inside.notes.map(({ code }) => code)).toEqual([]);
    expect(outside.notes.map(({ code }) => code)).toEqual(["fan-pressure-outside-span"]);
    expect(outside.randomRelativeUncertainty).toBeGreaterThan(inside.randomRelativeUncertainty + 0.04);
  });
});
