import { describe, expect, it } from "vitest";
import { draftOfRule, draftOfSearch, ruleOfDraft } from "#app/program/rules/rule-draft.ts";
import { DEMO_PROGRAM_RULE } from "#lib/access/demo-program-rule.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";

const FULL: ProgramRule = {
  ...DEMO_PROGRAM_RULE,
  deemedRuleId: "il-trm-method-1",
  netToGrossRatio: 0.29,
  rebate: {
    ...DEMO_PROGRAM_RULE.rebate,
    conditionText: "The house is heated by its ducts",
    conditions: { measure: "to-outside", leastRemovedShare: 0.07, leastRemovedCfm25: 40, mostLeftCfm25: 120 },
  },
  inspection: { confidenceProbability: 0.95, precisionShare: 0.07 },
};

describe("the form of a rule", () => {
  it("gives every figure back as it was, typed and sent", () => {
    for (const rule of [DEMO_PROGRAM_RULE, FULL]) {
      const sent = draftOfSearch({ ...draftOfRule(rule) });
      expect(ruleOfDraft(DEMO_PROGRAM_RULE, sent)).toEqual({ rule });
    }
  });

  it("holds a figure for every part of the rule, so that each can be tried", () => {
    const shown = JSON.stringify(draftOfRule(FULL));
    for (const text of ["il-trm-method-1", "0.29", "7", "40", "120", "95", "to-outside", "heated by its ducts"])
      expect(shown).toContain(text);
  });

  it("takes a limit away where its field is empty, and a box that is not sent as not ticked", () => {
    const draft = draftOfSearch({ ...draftOfRule(FULL), mostUsd: "", leastPercent: "", needs: undefined });
    const changed = ruleOfDraft(FULL, draft);
    expect("rule" in changed && changed.rule.rebate.atMostUsdCents).toBeUndefined();
    expect("rule" in changed && changed.rule.rebate.conditions).not.toHaveProperty("leastRemovedShare");
    expect("rule" in changed && changed.rule.evidence).toMatchObject({ needsInstruments: false, needsNames: false });
  });

  it("says what is no figure and where, and refuses a rule that nobody meets", () => {
    const problems = (change: object) => {
      const changed = ruleOfDraft(FULL, { ...draftOfRule(FULL), ...change });
      return "problems" in changed ? changed.problems.join() : "";
    };
    expect(problems({ lifeYears: "long" })).toContain("measureLifeYears");
    expect(problems({ eachUsd: "" })).toContain("eachCfm25UsdCents");
    expect(problems({ houseKinds: [] })).toContain("houseKinds");
    expect(problems({ confidencePercent: "100" })).toContain("confidenceProbability");
    expect(problems({ title: "" })).toContain("title");
  });
});
