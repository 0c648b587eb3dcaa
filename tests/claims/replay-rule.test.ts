import { describe, expect, it } from "vitest";
import { DEMO_PROGRAM_RULE } from "#lib/access/demo-program-rule.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { claimUnderRule, replayRule } from "#lib/claims/replay-rule.ts";
import { exampleJob } from "#tests/estimate/example-jobs.ts";

/** 300 cfm before, 40 % removed: 120 cfm at $2.50 are $300. */
const claim = {
  job: exampleJob("mixed-crawlspace-retest.json"),
  numbers: { "leakage/totalCfm25": [300], "leakage/toOutsideCfm25": [200], "verified/reductionShare": [0.4] },
};
const rule = (change: Partial<ProgramRule>): ProgramRule => ({ ...DEMO_PROGRAM_RULE, ...change });
const paying = (eachCfm25UsdCents: number, conditions: object = {}): ProgramRule =>
  rule({
    rebate: {
      ...DEMO_PROGRAM_RULE.rebate,
      pays: { by: "cfm25-removed", eachCfm25UsdCents },
      conditions: { measure: "total", ...conditions },
    },
  });

describe("a rule replayed over a claim", () => {
  it("touches nobody when nothing changes", () => {
    expect(replayRule(claim, DEMO_PROGRAM_RULE, rule({ title: "The same by another name" })).isTouched).toBe(false);
    expect(claimUnderRule(claim, DEMO_PROGRAM_RULE).rebateUsdCents).toBe(300_00);
  });

  it("tells what each pays, by hand: $2.50 against $3.00 for each of 120 cfm", () => {
    const { before, after, isTouched } = replayRule(claim, paying(250), paying(300));
    expect([before.rebateUsdCents, after.rebateUsdCents, isTouched]).toEqual([300_00, 360_00, true]);
  });

  it("tells who falls out: by a condition, by the kind of house, by the kind of test", () => {
    expect(replayRule(claim, paying(250), paying(250, { leastRemovedShare: 0.5 })).after.rebateUsdCents).toBe(0);
    const { after } = replayRule(claim, DEMO_PROGRAM_RULE, rule({ houseKinds: ["multifamily"] }));
    expect(after).toMatchObject({ rebateUsdCents: 0, outside: ["A site-built house may not take part"] });
    const other = replayRule(claim, DEMO_PROGRAM_RULE, rule({ testKinds: ["blower-door-subtraction"] }));
    expect(other.after.outside).toEqual(["No test after the work is of a kind that counts"]);
  });

  it("counts evidence that the new rule would miss", () => {
    const none = { ...DEMO_PROGRAM_RULE.evidence, photosPerRepairCount: 0 };
    const { before, after } = replayRule(claim, DEMO_PROGRAM_RULE, rule({ evidence: none }));
    // The example has five repairs and a photo of none of them.
    expect(before.missingEvidenceCount - after.missingEvidenceCount).toBe(5);
  });

  it("tells what is counted over the measure's life, by hand: 1,000 kWh × .9 × 18 years", () => {
    const saving = { ...claim, numbers: { ...claim.numbers, "savings/electricityKWh": [1000] } };
    const { before, after, isTouched } = replayRule(saving, DEMO_PROGRAM_RULE, rule({ measureLifeYears: 10 }));
    expect([before.lifetimeElectricityKWh, after.lifetimeElectricityKWh]).toEqual([16_200, 9_000]);
    // Nothing that a contractor would notice.
    expect(isTouched).toBe(false);
  });
});
