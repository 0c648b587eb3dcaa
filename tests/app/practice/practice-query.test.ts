import { describe, expect, it } from "vitest";
import { readPracticeQuery } from "#app/practice/practice-query.ts";
import { shownPressure } from "#app/practice/practice-words.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { PRACTICE_SCENARIOS } from "#lib/simulate/practice-scenarios.ts";

const read = (id: string, query: Record<string, string> = {}) =>
  readPracticeQuery({ query, scenario: PRACTICE_SCENARIOS.find((each) => each.id === id)!, fan: DEMO_FAN });

describe("a learner's set-up from the fields of the form", () => {
  it.each(PRACTICE_SCENARIOS.map(({ id }) => id))("%s begins as the scenario does", (id) => {
    const { setup, isDone } = read(id);
    expect(setup).toEqual(PRACTICE_SCENARIOS.find((each) => each.id === id)!.start);
    expect(isDone).toBe(false);
  });

  it("each answer changes what it names", () => {
    const { setup } = read("swapped-hoses", {
      walked: "yes",
      direction: "pulling",
      "duct-signal": "return-plenum",
      door: "no",
      filter: "yes",
    });
    expect(setup.forgottenBranchIds).toEqual([]);
    expect(setup.direction).toBe("pulling");
    expect(setup.hoses.duct.signal).toBe("return-plenum");
    expect(setup.isOutsideDoorOpen).toBe(false);
    expect(setup.isFilterIn).toBe(true);
  });

  it("a button turns the dial by its percent, and the dial has two ends", () => {
    const speed = (query: Record<string, string>) => read("first-test", query).setup.ductFanSpeedShare;
    expect(speed({ "duct-fan": "40", "duct-fan-nudge": "-0.5" })).toBe(0.395);
    expect(speed({ "duct-fan": "98", "duct-fan-nudge": "5" })).toBe(1);
    expect(speed({ "duct-fan": "2", "duct-fan-nudge": "-5" })).toBe(0);
    expect(speed({ "duct-fan": "loud" })).toBe(0);
  });

  it("what no field offers is left as it was", () => {
    const { setup } = read("first-test", { restrictor: "homemade", "fan-signal": "chimney", at: "moon" });
    expect(setup).toEqual(PRACTICE_SCENARIOS[0]!.start);
  });
});

it("a pressure is shown to a tenth with a real minus, and never as minus nothing", () => {
  expect([24.96, -24.94, -0.04].map(shownPressure)).toEqual(["25.0", "−24.9", "0.0"]);
});
