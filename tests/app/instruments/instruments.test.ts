import { describe, expect, it } from "vitest";
import { calibrationState, spanWords } from "#app/instruments/instrument-words.ts";
import { newJobDocument } from "#app/jobs/new-job-document.ts";
import type { Draft } from "#app/jobs/trip/draft.ts";
import { offeredInstruments } from "#app/jobs/trip/steps/own-instruments.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";

const fan = JSON.parse(JSON.stringify(DEMO_FAN)) as Draft;
const other: Draft = { ...fan, id: "other", name: "Another fan" };
const gauge: Draft = { id: "gauge", name: "Gauge" };

describe("instruments that a job may take in", () => {
  it("are offered when the job has none of them, or holds an older state of one", () => {
    const own = { fans: [fan], gauges: [gauge] };
    expect(offeredInstruments(own, {}).map(({ list, isNewer }) => [list, isNewer])).toEqual([
      ["fans", false],
      ["gauges", false],
    ]);
    const taken = { instruments: { fans: [fan], gauges: [gauge] } };
    expect(offeredInstruments(own, taken)).toEqual([]);
    const recalibrated = { ...fan, calibrationDueDate: "2029-03-02" };
    expect(offeredInstruments({ ...own, fans: [recalibrated] }, taken)).toEqual([
      { list: "fans", instrument: recalibrated, isNewer: true },
    ]);
  });

  it("are the same whatever the order of their keys", () => {
    const turned = Object.fromEntries(Object.entries(fan).reverse()) as Draft;
    expect(offeredInstruments({ fans: [turned], gauges: [] }, { instruments: { fans: [fan] } })).toEqual([]);
  });

  it("come with a new job where there is one of a kind only", () => {
    const start = (fans: readonly Draft[]) =>
      newJobDocument({ label: "A", date: "2026-11-25", instruments: { fans, gauges: [gauge] } }).instruments;
    expect(start([fan])).toEqual({ fans: [fan], gauges: [gauge] });
    expect(start([fan, other])).toEqual({ fans: [], gauges: [gauge] });
    expect(newJobDocument({ label: "A", date: "2026-11-25" }).instruments).toBeUndefined();
  });
});

describe("an instrument in words", () => {
  it("says the flows that its restrictors span", () => {
    // The least is 3.5 × .96 × √25 = 16.8 cfm when pulling; the most 100 × √250 = 1,581 when pushing.
    expect(spanWords(DEMO_FAN)).toBe("16.8 to 1,581 cfm, 5 restrictors");
  });

  it("says whether its calibration is due, that day included in what is good, and that it is invented", () => {
    const due = { calibrationDueDate: "2026-11-25" };
    expect(calibrationState(due, "2026-11-25")).toBe("due on 2026-11-25");
    expect(calibrationState(due, "2026-11-26")).toBe("was due on 2026-11-25");
    expect(calibrationState({}, "2026-11-26")).toBe("no date entered");
    expect(calibrationState({ ...due, isInvented: true }, "2026-11-01")).toContain("invented");
  });
});
