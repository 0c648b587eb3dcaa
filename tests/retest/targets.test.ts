import { describe, expect, it } from "vitest";
import { limitOf, targetRuleById, targetsFor } from "#lib/retest/find-targets.ts";
import { planRetest } from "#lib/retest/plan-retest.ts";
import { stagedChecks } from "#lib/retest/staged-checks.ts";
import { TARGET_RULES } from "#lib/retest/targets.ts";
import { expectClose } from "#tests/expect-close.ts";

const HOUSE = {
  stage: "finished",
  hasAirHandler: true,
  ductsWhollyInside: false,
  conditionedFloorAreaFt2: 2000,
} as const;
const idsAndLimits = (part: Partial<Parameters<typeof targetsFor>[0]>) =>
  targetsFor({ edition: "2021", ...HOUSE, ...part }).map(({ rule, limitCfm25 }) => [rule.measure, limitCfm25]);

describe("limits by edition [iecc, second-hand]", () => {
  it.each([
    [
      "2009",
      "finished",
      true,
      [
        ["total", 240],
        ["to-outside", 160],
      ],
    ],
    ["2009", "rough-in", true, [["total", 120]]],
    ["2009", "rough-in", false, [["total", 80]]],
    ["2012", "finished", true, [["total", 80]]],
    ["2015", "rough-in", true, [["total", 80]]],
    ["2018", "rough-in", false, [["total", 60]]],
    ["2021", "finished", true, [["total", 80]]],
    ["2024", "rough-in", false, [["total", 60]]],
  ] as const)("%s %s, air handler %s, 2,000 ft²", (edition, stage, hasAirHandler, expected) => {
    expect(idsAndLimits({ edition, stage, hasAirHandler })).toEqual(expected);
  });

  it("ducts wholly inside: 8 per 100 ft² from 2021, no test asked for before", () => {
    expect(idsAndLimits({ ductsWhollyInside: true })).toEqual([["total", 160]]);
    expect(idsAndLimits({ ductsWhollyInside: true, edition: "2018" })).toEqual([]);
  });

  it("altered ducts: 15 % and 10 % of the airflow, or 60 % less; what is not known leaves its rule out", () => {
    const altered = { family: "altered-ducts", edition: "2008" } as const;
    expect(idsAndLimits(altered)).toEqual([]);
    const known = { ...altered, fanFlowCfm: 1200, leakageBeforeCfm25: { total: 300 } };
    expect(idsAndLimits(known)).toEqual([
      ["total", 180],
      ["to-outside", 120],
      ["total", 120],
    ]);
  });

  it("gives alternatives one group: 2009 total or to outside", () => {
    const groups = targetsFor({ edition: "2009", ...HOUSE }).map(({ rule }) => rule.alternativesGroup);
    expect(new Set(groups).size).toBe(1);
  });

  it("refuses an unknown edition, an unknown id with the one meant, and a house without floor", () => {
    expect(() => idsAndLimits({ edition: "1999" })).toThrow("No limits are kept");
    expect(() => targetRuleById("iecc-2021-totall")).toThrow('did you mean "iecc-2021-total"');
    expect(() => limitOf(targetRuleById("iecc-2021-total"), { conditionedFloorAreaFt2: 0 })).toThrow("floor area");
  });

  it("has ids of its own and a source for each rule", () => {
    expect(new Set(TARGET_RULES.map((rule) => rule.id)).size).toBe(TARGET_RULES.length);
    for (const rule of TARGET_RULES) {
      expect(rule.id).toMatch(/^[a-z0-9-]+$/);
      expect(rule.note).toContain("local text governs");
    }
  });
});

describe("the plan of a retest", () => {
  // An invented fan: 25·P^0.5 open, 5·P^0.5 with its restrictor.
  const restrictors = [
    {
      restrictorId: "open",
      restrictorLabel: "Open fan",
      coefficient: 25,
      exponent: 0.5,
      minFanPressurePa: 25,
      maxFanPressurePa: 300,
    },
    {
      restrictorId: "small",
      restrictorLabel: "Small restrictor",
      coefficient: 5,
      exponent: 0.5,
      minFanPressurePa: 25,
      maxFanPressurePa: 300,
    },
  ];
  const plan = planRetest({ limitCfm25: 80, relativeStandardUncertainty: 0.075, confidence: 0.95, restrictors });

  it("derived: 80 cfm through 5·P^0.5 stands at 256 Pa, the guarded 71.21 at 202.9 Pa", () => {
    expect(plan.readings).toHaveLength(1);
    const [reading] = plan.readings;
    expect(reading!.title).toBe("Small restrictor");
    expectClose({
      actual: reading!.fanPressureAtLimitPa,
      expected: 256,
      relativeTolerance: 1e-9,
      reason: "(80/5)², exact",
    });
    expectClose({
      actual: reading!.fanPressureAtAcceptancePa,
      expected: 202.86,
      relativeTolerance: 1e-4,
      reason: "(71.214/5)² to five figures",
    });
    expectClose({
      actual: plan.acceptanceCfm25,
      expected: 71.21,
      relativeTolerance: 1e-4,
      reason: "given to four figures",
    });
  });

  it("lists no restrictor that would read outside its calibration, and none without a calibration", () => {
    const large = planRetest({ limitCfm25: 300, relativeStandardUncertainty: 0.05, confidence: 0.95, restrictors });
    expect(large.readings.map((reading) => reading.restrictorId)).toEqual(["open"]);
    const none = planRetest({ limitCfm25: 5, relativeStandardUncertainty: 0.05, confidence: 0.95, restrictors });
    expect(none.readings).toEqual([]);
    expect(
      planRetest({ limitCfm25: 80, relativeStandardUncertainty: 0.05, confidence: 0.95, restrictors: [] }).readings,
    ).toEqual([]);
  });

  it("reads less fan pressure in thinner air's stead: √(ρcal/ρ) at a mile high", () => {
    const high = planRetest({
      limitCfm25: 80,
      relativeStandardUncertainty: 0.075,
      confidence: 0.95,
      restrictors,
      fanAirDensityLbPerFt3: 0.0617,
    });
    expectClose({
      actual: high.readings[0]!.fanPressureAtLimitPa,
      expected: (256 * 0.0617) / 0.075,
      relativeTolerance: 1e-9,
      reason: "derived: the same flow of thinner air shows less pressure",
    });
  });

  it("refuses a limit of zero", () => {
    expect(() =>
      planRetest({ limitCfm25: 0, relativeStandardUncertainty: 0.05, confidence: 0.95, restrictors }),
    ).toThrow("Limit");
  });
});

describe("checks along the work", () => {
  const stages = [
    { siteIds: ["a", "b"], title: "the attic", removesCfm25: 120, standardUncertaintyCfm25: 10 },
    { siteIds: ["c"], title: "the crawlspace", removesCfm25: 60, standardUncertaintyCfm25: 8 },
    { siteIds: ["d"], title: "the air handler", removesCfm25: 30, standardUncertaintyCfm25: 6 },
  ];

  it("derived: what is left to do, less its doubt, on top of the acceptance", () => {
    const checks = stagedChecks({ stages, acceptanceCfm25: 71, confidence: 0.95 });
    // 71 + 90 − 1.645·10 and 71 + 30 − 1.645·6
    expectClose({
      actual: checks[0]!.stopBelowCfm25,
      expected: 144.55,
      relativeTolerance: 1e-4,
      reason: "by hand to four figures",
    });
    expectClose({
      actual: checks[1]!.stopBelowCfm25,
      expected: 91.13,
      relativeTolerance: 1e-4,
      reason: "by hand to four figures",
    });
    expect(checks[2]!.stopBelowCfm25).toBe(71);
    expect(checks[0]!.say).toContain("144 cfm or less");
    expect(checks[2]!.say).toContain("done when");
  });

  it("falls from stage to stage, and never below the acceptance however doubtful the rest", () => {
    const doubtful = stages.map((stage) => ({ ...stage, standardUncertaintyCfm25: 500 }));
    const unevenly = stages.map((stage, index) => ({ ...stage, standardUncertaintyCfm25: index === 1 ? 70 : 1 }));
    for (const each of [stages, doubtful, unevenly]) {
      const limits = stagedChecks({ stages: each, acceptanceCfm25: 71, confidence: 0.9 }).map(
        (check) => check.stopBelowCfm25,
      );
      expect([...limits].sort((a, b) => b - a)).toEqual(limits);
      expect(Math.min(...limits)).toBe(71);
    }
    expect(stagedChecks({ stages: [], acceptanceCfm25: 71, confidence: 0.9 })).toEqual([]);
  });
});
