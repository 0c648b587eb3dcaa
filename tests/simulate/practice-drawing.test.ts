import { describe, expect, it } from "vitest";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { practiceDrawing } from "#lib/simulate/practice-drawing.ts";
import { PRACTICE_SCENARIOS } from "#lib/simulate/practice-scenarios.ts";
import type { PracticeSetup } from "#lib/simulate/practice-setup.ts";

const first = PRACTICE_SCENARIOS[0]!.start;
const draw = (changes: Partial<PracticeSetup> = {}, hasFilmBlownOff = false) =>
  practiceDrawing({ setup: { ...first, ...changes }, fan: DEMO_FAN, hasFilmBlownOff });
const parts = (drawing: ReturnType<typeof draw>) => drawing.nodes.map(({ part }) => part);

describe("the drawing of a practice set-up", () => {
  it("has a hose at each port that the learner put one on, and an open port elsewhere", () => {
    const { hoses, channels } = draw();
    expect(hoses.map(({ id }) => id)).toEqual(["duct-signal-hose", "fan-signal-hose", "house-reference-hose"]);
    const swapped = draw({
      hoses: { ...first.hoses, duct: { signal: "open-port", reference: "supply-plenum" } },
    });
    expect(swapped.hoses.map(({ id }) => id)).toContain("duct-reference-hose");
    expect(swapped.channels.find(({ id }) => id === "duct")?.isSignalPortOpen).toBe(true);
    expect(channels.find(({ id }) => id === "duct")?.isSignalPortOpen).toBe(false);
  });

  it("shows the door, the straightener and a missing cover as they are", () => {
    expect(parts(draw())).toContain("open-door");
    expect(parts(draw({ isOutsideDoorOpen: false }))).not.toContain("open-door");
    const pulling = { direction: "pulling" } as const;
    expect(parts(draw({ ...pulling, hasFlowStraightener: true }))).toContain("flow-straightener");
    expect(parts(draw(pulling))).not.toContain("flow-straightener");
    const stateOf = (drawing: ReturnType<typeof draw>) => drawing.nodes.find(({ id }) => id === "register-2")?.state;
    expect(stateOf(draw())).toBe("covered");
    expect(stateOf(draw({}, true))).toBe("open");
  });
});
