import { describe, expect, it } from "vitest";
import { DEMO_PROGRAM_RULE } from "#lib/access/demo-program-rule.ts";
import { deemedUnderRules } from "#lib/claims/deemed-under-rule.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { claimUnderRule, replayRule } from "#lib/claims/replay-rule.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
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

  it("shows deemed figures of both rules, by hand: .0123 against .0136 cfm a Btu/h, rounded as the rules report", async () => {
    const job = { ...exampleJob("mixed-crawlspace-retest.json") };
    const naming = (deemedRuleId: string) => rule({ deemedRuleId });
    const load = (of: Job) => loadReferenceData(of);
    const [first, later] = [naming("il-trm-method-1"), naming("il-trm-method-1-later")];
    const gas: Job = {
      ...job,
      systems: job.systems.map((system) => ({
        ...system,
        heating: { kind: "gas-furnace", outputBtuPerH: 60_000, annualEfficiency: 0.8 },
        cooling: { kind: "air-conditioner", capacityBtuPerH: 36_000, seer: 13 },
      })),
    };
    const { before, after } = await deemedUnderRules({ job: gas, deemed: null }, { from: first, to: later }, load);
    // The same air counts as less of a furnace's flow: therms by .0123 / .0136, cooling as before, blower with the therms.
    expect(before!.heatingTherms).toBeGreaterThan(10);
    expect(after!.heatingTherms / before!.heatingTherms).toBeCloseTo(0.0123 / 0.0136, 1);
    expect(after!.coolingKWh).toBe(before!.coolingKWh);
    expect(after!.blowerKWh).toBeLessThan(before!.blowerKWh);
    for (const figure of [...Object.values(before!), ...Object.values(after!)])
      expect(Number.isInteger(figure)).toBe(true);
    const touch = replayRule(claim, first, later, { before, after });
    expect(touch).toMatchObject({ isTouched: true, before: { deemed: before }, after: { deemed: after } });
    expect(touch.before.rebateUsdCents).toBe(touch.after.rebateUsdCents);
  });

  it("leaves the deemed figures of the packet where both rules name the same one, or none", async () => {
    const { job } = claim;
    const never = () => Promise.reject(new Error("nothing is reckoned anew"));
    const deemed = {
      ruleId: "il-trm-method-1",
      edition: "first editions",
      coolingKWh: 237.2,
      heatingTherms: 100.4,
      blowerKWh: 92.4,
      measureLifeYears: 18,
      netToGrossRatio: 1,
    };
    const named = rule({ deemedRuleId: "il-trm-method-1" });
    const kept = await deemedUnderRules({ job, deemed }, { from: named, to: { ...named, title: "Other" } }, never);
    expect(kept.before).toEqual({ coolingKWh: 237, heatingTherms: 100, blowerKWh: 92 });
    expect(kept.after).toEqual(kept.before);
    const none = await deemedUnderRules({ job, deemed: null }, { from: DEMO_PROGRAM_RULE, to: rule({}) }, never);
    expect(none).toEqual({ before: null, after: null });
  });
});
