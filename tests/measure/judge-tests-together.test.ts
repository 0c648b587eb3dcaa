import { describe, expect, it } from "vitest";
import { judgeTestsTogether, type ReadTest, type TestSetUp } from "#lib/measure/judge-tests-together.ts";

const FIRST: TestSetUp = {
  kind: "total-leakage",
  direction: "pushing",
  fanId: "fan",
  gaugeId: "g1",
  restrictorIds: ["medium"],
};

describe("judgeTestsTogether", () => {
  const read = (change: Partial<ReadTest>): ReadTest => ({
    testId: "a",
    systemId: "s",
    stage: "existing",
    measure: "total",
    cfm25: 200,
    standardUncertaintyCfm25: 6,
    steps: [{ pressurePa: 25.1, flowCfm: 200.3 }],
    setUp: FIRST,
    ...change,
  });
  const outside = (cfm25: number, change: Partial<ReadTest> = {}) =>
    read({ testId: "b", measure: "toOutside", cfm25, steps: [{ pressurePa: 25, flowCfm: cfm25 }], ...change });
  const codes = (...tests: ReadTest[]) => judgeTestsTogether(tests).map((note) => note.code);

  it("finds more leakage to outside than in total, beyond their doubt, in either order", () => {
    expect(codes(read({}), outside(220))).toEqual(["to-outside-above-total"]);
    expect(codes(outside(220), read({}))).toEqual(["to-outside-above-total"]);
    expect(codes(read({}), outside(205))).toEqual([]);
  });

  it("compares tests of one system and one stage only", () => {
    expect(codes(read({}), outside(220, { systemId: "other" }))).toEqual([]);
    expect(codes(read({}), outside(220, { stage: "retest" }))).not.toContain("to-outside-above-total");
  });

  it("finds copied numbers", () => {
    expect(codes(read({}), read({ testId: "b", stage: "retest" }))).toEqual(["reading-repeated"]);
  });

  const retest = (setUp: Partial<TestSetUp>, change: Partial<ReadTest> = {}) =>
    read({
      testId: "b",
      stage: "retest",
      cfm25: 60,
      steps: [{ pressurePa: 25.4, flowCfm: 60.2 }],
      setUp: { ...FIRST, ...setUp },
      ...change,
    });

  it.each<[string, Partial<TestSetUp>, string[]]>([
    ["the same way", {}, []],
    ["by another method", { kind: "blower-door-subtraction", fanId: "door" }, ["retest-other-method"]],
    ["with another fan", { fanId: "other", restrictorIds: ["big"] }, ["retest-other-fan"]],
    ["in the other direction", { direction: "pulling" }, ["retest-other-direction"]],
    ["with another flow restrictor", { restrictorIds: ["small"] }, ["retest-other-restrictor"]],
    ["with another gauge", { gaugeId: "g2" }, ["retest-other-gauge"]],
    ["with a gauge that nobody named", { gaugeId: undefined, restrictorIds: [] }, []],
  ])("a retest made %s: its gravest difference speaks", (_how, setUp, expected) => {
    const notes = judgeTestsTogether([read({}), retest(setUp)]);
    expect(notes.map(({ code }) => code)).toEqual(expected);
    for (const note of notes) expect(note.testId).toBe("b");
  });

  it("says so when the retest measures the other leakage, unless that was measured before as well", () => {
    const again = retest({ kind: "leakage-to-outside" }, { measure: "toOutside" });
    expect(codes(read({}), again)).toEqual(["retest-other-method"]);
    const before = outside(150, { testId: "c", setUp: { ...FIRST, kind: "leakage-to-outside" } });
    expect(codes(read({}), before, again)).toEqual([]);
    expect(codes(read({ measure: "supply" }), again)).toEqual([]);
    expect(codes(read({}), retest({}, { testId: "d" }), again)).not.toContain("retest-other-method");
  });

  it("compares a retest with what was before the work, of the same part only", () => {
    expect(codes(read({ stage: "retest" }), retest({ fanId: "other" }))).toEqual([]);
    expect(codes(read({}), retest({ fanId: "other" }, { measure: "supply" }))).toEqual([]);
    expect(codes(read({}), retest({ fanId: "other" }, { systemId: "other" }))).toEqual([]);
  });
});
