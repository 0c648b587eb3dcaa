import { describe, expect, it } from "vitest";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { SETUP_PHASES } from "#lib/setup/rules/rule.ts";
import {
  FAN_CONNECTIONS,
  SETUP_TEST_KINDS,
  type SetupAnswers,
  type SetupTestKind,
  STANDPOINTS,
  setupAnswersSchema,
} from "#lib/setup/setup-answers.ts";
import { type SetupSheet, setupSheet } from "#lib/setup/setup-sheet.ts";
import { TEST_TRAITS } from "#lib/setup/test-traits.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import { auditUnits } from "#tests/units/unit-audit.ts";

const DIRECTIONS = ["pushing", "pulling"] as const;
const answers = (changes: Partial<SetupAnswers> = {}): SetupAnswers => ({
  testKind: "total-leakage",
  stage: "existing",
  hasAirHandler: true,
  side: "supply",
  direction: "pushing",
  fanConnection: "central-return",
  personAt: "house",
  registerCover: "adhesive-film",
  registerCount: 10,
  hasCombustionAppliance: true,
  expectedLeakageCfm: 200,
  fan: DEMO_FAN,
  gauge: DEMO_GAUGE,
  date: "2026-11-25",
  ...changes,
});
const ids = (sheet: SetupSheet) => sheet.steps.map(({ id }) => id);
const codes = (changes: Partial<SetupAnswers>) => setupSheet(answers(changes)).warnings.map(({ code }) => code);
const stepText = (sheet: SetupSheet, id: string) => sheet.steps.find((step) => step.id === id)!.step;

describe.each(SETUP_TEST_KINDS)("sheet of %s", (testKind) => {
  it.each(DIRECTIONS)("%s: ordered steps with reasons, known sources, each id once", (direction) => {
    const { steps } = setupSheet(answers({ testKind, direction }));
    expect(steps.length).toBeGreaterThanOrEqual(6);
    expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
    const order = steps.map(({ phase }) => SETUP_PHASES.indexOf(phase));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (const { step, why, basis } of steps) {
      expect(step).toMatch(/^[A-Z].+[.]$/);
      expect(why).toMatch(/^[A-Z].+[.]$/);
      expect(`${step}${why}`).not.toMatch(/undefined|NaN/);
      expect(SOURCES.map(({ id }) => id)).toContain(basis.sourceId);
    }
  });

  it.each(STANDPOINTS)("standing %s: each hose runs from a drawn tap to a drawn port, one hose a port", (personAt) => {
    for (const direction of DIRECTIONS) {
      const { nodes, hoses, ducts, channels } = setupSheet(answers({ testKind, direction, personAt })).drawing;
      const drawn = new Map(nodes.map((node) => [node.id, node]));
      expect(drawn.size).toBe(nodes.length);
      for (const { from, to, role } of hoses) {
        expect(["tap", "pan"]).toContain(drawn.get(from)!.part);
        expect(drawn.get(to)!.part).toBe(`${role}-port`);
      }
      expect(new Set(hoses.map(({ to }) => to)).size).toBe(hoses.length);
      for (const { from, to } of ducts) {
        for (const end of [from, to]) expect(end === "outside" || drawn.has(end), `${end} is drawn`).toBe(true);
      }
      for (const { x, y } of nodes) {
        for (const place of [x, y]) expect(place >= 0 && place <= 100).toBe(true);
      }
      const openPorts = channels.filter(({ isReferencePortOpen }) => isReferencePortOpen).length;
      expect(hoses.length).toBe(2 * channels.length - openPorts);
    }
  });

  it("asks for safety first when something burns indoors", () => {
    const [first] = setupSheet(answers({ testKind, hasCombustionAppliance: true })).steps;
    expect(first!.phase).toBe("make-safe");
  });
});

describe("what the sheets must say", () => {
  const withDuctFan = SETUP_TEST_KINDS.filter((kind) => TEST_TRAITS[kind].usesDuctFan);
  const toOutside: SetupTestKind[] = ["leakage-to-outside", "side-leakage-to-outside"];

  it("total leakage: a door open; to outside: the house closed, and house to outside on the gauge", () => {
    expect(ids(setupSheet(answers()))).toContain("outside-door-open");
    for (const testKind of toOutside) {
      const sheet = setupSheet(answers({ testKind }));
      expect(ids(sheet)).not.toContain("outside-door-open");
      expect(ids(sheet)).toContain("house-closed");
      expect(sheet.drawing.channels.map(({ signal, reference }) => `${signal} ${reference}`)).toContain(
        "house outside",
      );
    }
  });

  it("filters out, dampers open, air handler off, baselines on either side of the reading", () => {
    const list = ids(setupSheet(answers()));
    for (const id of ["filter-out", "dampers-open", "air-handler-off"]) expect(list).toContain(id);
    expect(list.indexOf("baseline-before")).toBeLessThan(list.indexOf("hold-duct"));
    expect(list.indexOf("hold-duct")).toBeLessThan(list.indexOf("baseline-after"));
    expect(list.indexOf("restrictor-first")).toBeLessThan(list.indexOf("baseline-before"));
  });

  it.each([
    ["pushing", "+25 Pa"],
    ["pulling", "−25 Pa"],
  ] as const)("%s holds %s", (direction, target) => {
    expect(stepText(setupSheet(answers({ direction })), "hold-duct")).toContain(target);
  });

  it("duct pressure is read against the house, wherever the person stands; away from it by a hose", () => {
    for (const testKind of withDuctFan) {
      for (const personAt of STANDPOINTS) {
        const { drawing } = setupSheet(answers({ testKind, personAt }));
        const duct = drawing.channels.find(({ id }) => id === "duct")!;
        expect(duct.reference).toBe("house");
        const hasHose = drawing.hoses.some(({ channelId, role }) => channelId === "duct" && role === "reference");
        expect(hasHose).toBe(personAt !== "house");
      }
    }
  });

  it("a flow straightener and the duct-side reference when pulling, neither when pushing, by the fan's record", () => {
    const pulling = setupSheet(answers({ direction: "pulling" }));
    const pushing = setupSheet(answers({ direction: "pushing" }));
    const parts = (sheet: SetupSheet) => sheet.drawing.nodes.map(({ part }) => part);
    const fanReference = (sheet: SetupSheet) => sheet.drawing.channels.find(({ id }) => id === "fan")!.reference;
    expect(parts(pulling)).toContain("flow-straightener");
    expect(parts(pushing)).not.toContain("flow-straightener");
    expect(fanReference(pulling)).toBe("fan-duct-side");
    expect(fanReference(pushing)).toBe("fan-surroundings");
    const needsNone = {
      ...DEMO_FAN,
      needsFlowStraightenerWhenPulling: false,
      tapReference: { pushing: "air-around-fan", pulling: "air-around-fan" },
    } as const;
    const other = setupSheet(answers({ direction: "pulling", fan: needsNone }));
    expect(parts(other)).not.toContain("flow-straightener");
    expect(fanReference(other)).toBe("fan-surroundings");
    expect(stepText(other, "flow-straightener")).toMatch(/needs none/);
  });

  it("the restrictor is named with the fan pressure to expect: 200 cfm on 19·√P → 110.8 Pa", () => {
    const { restrictorPlan } = setupSheet(answers());
    expect(restrictorPlan?.chosen?.calibration.restrictorId).toBe("middle");
    expect(Math.abs(restrictorPlan!.chosen!.expectedFanPressurePa - 110.803)).toBeLessThan(0.001);
  });

  it("rough-in says which limit counts", () => {
    expect(stepText(setupSheet(answers({ stage: "rough-in" })), "rough-in-scope")).toMatch(/with the air handler/);
    const without = setupSheet(answers({ stage: "rough-in", hasAirHandler: false }));
    expect(stepText(without, "rough-in-scope")).toMatch(/without the air handler/);
    expect(ids(without)).not.toContain("filter-out");
  });
});

describe("warnings", () => {
  it("cling film is a problem when the ducts are pushed, a saving when pulled; ten registers differ by $5.00", () => {
    expect(codes({ registerCover: "cling-film", direction: "pushing" })[0]).toBe("cling-film-pushed-off");
    expect(codes({ registerCover: "cling-film", direction: "pulling" })).toContain("cling-film-saves");
    expect(codes({ registerCover: "adhesive-film", direction: "pushing" })).not.toContain("cling-film-pushed-off");
    expect(setupSheet(answers()).covers?.differenceUsdCents).toBe(10 * (60 - 10));
  });

  it("pulling on the house pushes the film off too", () => {
    const subtraction = { testKind: "blower-door-subtraction", registerCover: "cling-film" } as const;
    expect(codes({ ...subtraction, direction: "pulling" })).toContain("cling-film-pushed-off");
    expect(codes({ ...subtraction, direction: "pushing" })).not.toContain("cling-film-pushed-off");
  });

  it("a fan at the end of a branch, on the other side of the blank, or not at the cabinet", () => {
    expect(codes({ fanConnection: "branch-register" })).toContain("fan-at-branch-end");
    expect(codes({ testKind: "side-leakage", side: "supply" })).toContain("fan-on-other-side");
    expect(codes({ testKind: "side-leakage", side: "return" })).not.toContain("fan-on-other-side");
    expect(codes({ testKind: "matched-pressure" })).toContain("fan-must-feed-cabinet");
    expect(codes({ testKind: "matched-pressure", fanConnection: "air-handler-cabinet" })).not.toContain(
      "fan-must-feed-cabinet",
    );
  });

  it("an expired calibration, from the day after it was due", () => {
    expect(
      setupSheet(answers({ date: "2027-03-02" })).warnings.some(({ code }) => code === "calibration-expired"),
    ).toBe(false);
    expect(codes({ date: "2027-03-03" })).toContain("calibration-expired");
  });

  it("a flow that no restrictor reads", () => {
    expect(codes({ expectedLeakageCfm: 3000 })).toContain("fan-too-small");
    expect(codes({ expectedLeakageCfm: 5 })).toContain("restrictors-too-large");
  });

  it("the reference from the house for who stands in the attic", () => {
    expect(codes({ personAt: "attic" })).toContain("reference-from-house");
    expect(codes({ personAt: "house" })).not.toContain("reference-from-house");
  });
});

describe("the answers' schema", () => {
  it("takes them as they are, and needs a side for a test of one side", () => {
    for (const fanConnection of FAN_CONNECTIONS) {
      expect(setupAnswersSchema.parse(answers({ fanConnection }))).toEqual(answers({ fanConnection }));
    }
    const { side: _, ...sideless } = answers({ testKind: "side-leakage" });
    expect(setupAnswersSchema.safeParse(sideless).success).toBe(false);
  });

  it("states a unit for every number", () => {
    const { faults, numbersSeen } = auditUnits(setupAnswersSchema, ["coefficient"]);
    expect(numbersSeen).toBeGreaterThan(10);
    expect(faults).toEqual([]);
  });
});
