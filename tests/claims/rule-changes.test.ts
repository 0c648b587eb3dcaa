import { describe, expect, it } from "vitest";
import { DEMO_PROGRAM_RULE } from "#lib/access/demo-program-rule.ts";
import { ruleChanges } from "#lib/claims/rule-changes.ts";

describe("what a new edition makes different", () => {
  it("is nothing when only its title is another", () => {
    expect(ruleChanges(DEMO_PROGRAM_RULE, { ...DEMO_PROGRAM_RULE, title: "Other" })).toEqual([]);
  });

  it("names each thing with what it was and what it is", () => {
    const { rebate, evidence } = DEMO_PROGRAM_RULE;
    const changes = ruleChanges(DEMO_PROGRAM_RULE, {
      ...DEMO_PROGRAM_RULE,
      houseKinds: ["site-built"],
      deemedRuleId: "il-trm-method-1",
      evidence: { ...evidence, photosPerRepairCount: 2 },
      rebate: {
        ...rebate,
        pays: { by: "flat", flatUsdCents: 40_000 },
        conditions: { measure: "to-outside", leastRemovedShare: 0.4, mostLeftCfm25: 120 },
      },
    });
    expect(changes).toEqual([
      { what: "It pays", was: "$2.50 for each cfm at 25 Pa removed", is: "$400 for each house" },
      { what: "Leakage that counts", was: "total", is: "to outside" },
      { what: "Share removed, at least", was: "30 %", is: "40 %" },
      { what: "Left, at most", was: "no limit", is: "120 cfm at 25 Pa" },
      { what: "Houses that may take part", was: "manufactured, site-built", is: "site-built" },
      { what: "Photos of each repair", was: "1", is: "2" },
      {
        what: "Deemed savings",
        was: "none named",
        is: "Residential duct insulation and sealing, by measured leakage, first editions",
      },
    ]);
  });

  it("tells every field of a rule that is not its title: whatever is changed shows", () => {
    const changed = {
      ...DEMO_PROGRAM_RULE,
      testKinds: ["total-leakage" as const],
      measureLifeYears: 10,
      netToGrossRatio: 0.8,
      evidence: { ...DEMO_PROGRAM_RULE.evidence, needsInstruments: false, needsNames: false },
      inspection: { confidenceProbability: 0.95, precisionShare: 0.05 },
    };
    expect(ruleChanges(DEMO_PROGRAM_RULE, changed)).toHaveLength(7);
  });
});
