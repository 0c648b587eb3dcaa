import { describe, expect, it } from "vitest";
import type { Draft, Json } from "#app/jobs/trip/draft.ts";
import { readLiveTests } from "#app/jobs/trip/live-readings.ts";
import { nextPressurePa } from "#app/jobs/trip/steps/next-pressure.ts";
import { averageOfSeries } from "#app/jobs/trip/steps/series.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { expectClose } from "#tests/expect-close.ts";

const instruments = JSON.parse(JSON.stringify({ fans: [DEMO_FAN], gauges: [DEMO_GAUGE] })) as Json;
const test = (points: readonly Draft[], others: Draft = {}): Draft => ({
  id: "t",
  kind: "total-leakage",
  stage: "existing",
  direction: "pulling",
  fanId: DEMO_FAN.id,
  gaugeId: DEMO_GAUGE.id,
  indoorTemperatureF: 70,
  points,
  ...others,
});
const read = (one: Draft) => readLiveTests({ instruments, tests: [one] }, 0).t;

describe("a series typed at the gauge", () => {
  it("is averaged as by hand, with how far it lies apart", () => {
    // (24.8 + 25.1 + 25.4 + 24.9) / 4 = 25.05
    expect(averageOfSeries("24.8 25.1\n25.4; 24.9")).toEqual({
      count: 4,
      mean: 25.05,
      lowest: 24.8,
      highest: 25.4,
      hasBothSigns: false,
      unread: [],
    });
  });
  it("keeps the sign, says which words are no numbers, and notices a minus left out", () => {
    expect(averageOfSeries("-25.0 −24.6 abc")).toMatchObject({
      count: 2,
      mean: -24.8,
      unread: ["abc"],
      hasBothSigns: false,
    });
    expect(averageOfSeries("-35.1 -34.8 35.3")?.hasBothSigns).toBe(true);
  });
  it("has nothing to say to nothing, nor to words alone", () => {
    expect(averageOfSeries("")).toBeUndefined();
    expect(averageOfSeries("  gusty ")).toBeUndefined();
  });
});

describe("the next pressure", () => {
  it("is 25 Pa first, then from the highest down, whatever the sign, until the usual ones are there", () => {
    const steps = (...pressures: number[]) => pressures.map((ductPressurePa) => ({ ductPressurePa }));
    expect(nextPressurePa([])).toBe(25);
    expect(nextPressurePa(steps(-25.3))).toBe(50);
    expect(nextPressurePa(steps(25, 48))).toBe(35);
    expect(nextPressurePa(steps(25, 50, 35, 18, 12))).toBeUndefined();
  });
});

describe("a test read while it is typed", () => {
  it("gives the flow of the calibration and carries it to 25 Pa", () => {
    // The calibration says 19 × .96 × √100 = 182.4 cfm at the density it was made at; 25 Pa itself carries nothing.
    const reading = read(test([{ ductPressurePa: -25, fanPressurePa: 100, restrictorId: "middle" }]))!;
    expectClose({
      actual: reading.steps[0]!.flowCfm,
      expected: 182.4,
      relativeTolerance: 0.01,
      reason: "room air at 70 °F is within 1 % of the density of standard air",
    });
    expect(reading.result!.cfm25).toBeCloseTo(reading.steps[0]!.flowCfm, 9);
    expect(reading.result!.lowCfm25).toBeLessThan(reading.result!.cfm25);
    expect([...new Set(reading.notes.map(({ code }) => code))]).toEqual(["invented-instrument"]);
  });

  it("leaves steps out that are not complete, and names the others by their place in the form", () => {
    const reading = read(
      test([
        { ductPressurePa: -25 },
        { ductPressurePa: 30, fanPressurePa: 120, restrictorId: "middle" },
        { ductPressurePa: -40, fanPressurePa: 400, restrictorId: "middle" },
      ]),
    )!;
    expect(reading.steps.map((step) => step !== null)).toEqual([false, true, true]);
    const stepsOf = (code: string) => reading.notes.find((note) => note.code === code)?.steps;
    expect(stepsOf("wrong-sign")).toEqual([1]);
    expect(stepsOf("fan-pressure-outside-span")).toEqual([2]);
  });

  it("shows how far each step lies from the line, and points at the one that scatters most", () => {
    // Exact power law 40·P^.6 but for the third step, which is 15 % above.
    const flows = [12, 18, 25, 35, 50].map((pressurePa, i) => ({
      ductPressurePa: -pressurePa,
      flowCfm: 40 * pressurePa ** 0.6 * (i === 2 ? 1.15 : 1),
    }));
    const reading = read(test(flows))!;
    const above = reading.steps.map((step) => step!.aboveLineCfm! / step!.flowCfm);
    expect(above.indexOf(Math.max(...above))).toBe(2);
    expect(above.filter((share) => share < 0)).toHaveLength(4);
    expect(reading.notes.find((note) => note.code === "fit-scatters")?.steps).toEqual([2]);
    expect(reading.picture).toBeDefined();
  });

  it("says what to do with a fan pressure as the gauge shows it, with a minus", () => {
    const reading = read(test([{ ductPressurePa: -25, fanPressurePa: -120, restrictorId: "middle" }]))!;
    expect(reading.result).toBeUndefined();
    expect(reading.notes.map(({ code, steps }) => [code, steps])).toEqual([["fan-pressure-below-zero", [0]]]);
    expect(reading.notes[0]!.nextMove).toBe("Type it without the minus.");
  });

  it("reads nothing before there is a whole step, and says already what is wrong with the instruments", () => {
    for (const points of [[{}], [{ ductPressurePa: -25, fanPressurePa: 100 }]]) {
      const reading = read(test(points));
      expect(reading?.steps).toEqual([null]);
      expect(reading?.result).toBeUndefined();
      const whole = read(test([{ ductPressurePa: 25.2, flowCfm: 290 }]));
      const ofInstruments = whole?.notes.filter(({ code }) => /calibration-expired|invented-instrument/.test(code));
      expect(ofInstruments?.length).toBeGreaterThan(0);
      expect(reading?.notes).toEqual(ofInstruments);
    }
  });
});
