import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deemedEfficiencySavings } from "#lib/savings/deemed-efficiency-savings.ts";
import { deemedLeakageSavings } from "#lib/savings/deemed-leakage-savings.ts";
import { DEEMED_RULES, deemedRuleById, roundByRule } from "#lib/savings/deemed-rules.ts";
import { blowerSavings, fixedLoadSavings } from "#lib/savings/fixed-load-savings.ts";
import { expectClose } from "#tests/expect-close.ts";

const efficiency = fc.double({ min: 0.2, max: 1, noNaN: true });
const HOUSE = {
  coolingCapacityBtuPerH: 36000,
  coolingFullLoadHours: 730,
  seer: 11,
  heatingCapacityBtuPerH: 105000,
  heatingFullLoadHours: 1754,
  heatingEfficiency: 0.8,
};

describe("savings at a fixed load", () => {
  it("derived: 1,000 therms at 0.70, ducts brought to 0.80, saves an eighth", () => {
    const { energySaved } = fixedLoadSavings({ energyBefore: 1000, efficiencyBefore: 0.7, efficiencyAfter: 0.8 });
    expectClose({ actual: energySaved, expected: 125, relativeTolerance: 1e-9, reason: "by hand, exact" });
  });

  it("never exceeds the use it comes from, and has the sign of the change", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        efficiency,
        efficiency,
        (energyBefore, efficiencyBefore, efficiencyAfter) => {
          const { energySaved } = fixedLoadSavings({ energyBefore, efficiencyBefore, efficiencyAfter });
          expect(energySaved).toBeLessThanOrEqual(energyBefore);
          if (energyBefore > 1e-6) expect(Math.sign(energySaved)).toBe(Math.sign(efficiencyAfter - efficiencyBefore));
        },
      ),
    );
  });

  it("derived: a blower of 500 W for 1,200 h, then 520 W for 1,000 h, saves 80 kWh; it may also use more", () => {
    const before = { powerBeforeW: 500, runBeforeHours: 1200 };
    expect(blowerSavings({ ...before, powerAfterW: 520, runAfterHours: 1000 }).savedKWh).toBe(80);
    expect(blowerSavings({ ...before, powerAfterW: 600, runAfterHours: 1190 }).savedKWh).toBeLessThan(0);
    expect(() => blowerSavings({ ...before, powerAfterW: Number.NaN, runAfterHours: 1 })).toThrow("#/powerAfterW");
  });
});

describe("deemed savings by leakage", () => {
  it("are proportional to the reduction, and do not depend on the equipment's size", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (reduction, factor) => {
          const one = deemedLeakageSavings({ ...HOUSE, leakageReductionCfm25: reduction });
          const more = deemedLeakageSavings({ ...HOUSE, leakageReductionCfm25: reduction * factor });
          const larger = deemedLeakageSavings({
            ...HOUSE,
            leakageReductionCfm25: reduction,
            coolingCapacityBtuPerH: 60000,
            heatingCapacityBtuPerH: 140000,
          });
          const reason = "linear in the reduction; capacity cancels";
          for (const name of ["coolingKWh", "heatingTherms", "blowerKWh"] as const) {
            expectClose({ actual: more[name], expected: one[name] * factor, relativeTolerance: 1e-9, reason });
            expectClose({ actual: larger[name], expected: one[name], relativeTolerance: 1e-9, reason });
          }
        },
      ),
    );
  });

  it("never credit more than the season's use by the rule's own full-load hours", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1600, noNaN: true }), (leakageReductionCfm25) => {
        const { coolingKWh, heatingTherms } = deemedLeakageSavings({ ...HOUSE, leakageReductionCfm25 });
        expect(coolingKWh).toBeLessThanOrEqual((730 * 36000) / 11000 + 1e-9);
        expect(heatingTherms).toBeLessThanOrEqual((1754 * 105000) / 80000 + 1e-9);
      }),
    );
    expect(() => deemedLeakageSavings({ ...HOUSE, leakageReductionCfm25: 1700 })).toThrow("more air than");
  });

  it("refuse shares above one, no capacity, a negative reduction", () => {
    const good = { ...HOUSE, leakageReductionCfm25: 100 };
    expect(() => deemedLeakageSavings({ ...good, supplyShare: 0.7 })).toThrow("together");
    expect(() => deemedLeakageSavings({ ...good, coolingCapacityBtuPerH: 0 })).toThrow("Cooling capacity");
    expect(() => deemedLeakageSavings({ ...good, leakageReductionCfm25: -1 })).toThrow("Leakage reduction");
  });
});

describe("deemed savings by efficiency", () => {
  it("never exceed the season's use", () => {
    fc.assert(
      fc.property(efficiency, efficiency, (efficiencyBefore, efficiencyAfter) => {
        const { coolingKWh, heatingTherms } = deemedEfficiencySavings({ ...HOUSE, efficiencyBefore, efficiencyAfter });
        expect(coolingKWh).toBeLessThanOrEqual((730 * 36000) / 11000);
        expect(heatingTherms).toBeLessThanOrEqual((1754 * 105000) / 80000);
      }),
    );
  });

  it("take a season whole or not at all", () => {
    const change = { efficiencyBefore: 0.7, efficiencyAfter: 0.8 };
    expect(() => deemedEfficiencySavings({ ...change, coolingCapacityBtuPerH: 36000, seer: 11 })).toThrow(
      "coolingFullLoadHours is missing",
    );
    expect(() => deemedEfficiencySavings(change)).toThrow("Neither cooling nor heating");
    expect(() => deemedEfficiencySavings({ ...HOUSE, efficiencyBefore: 0.7, efficiencyAfter: 1.2 })).toThrow(
      "#/efficiencyAfter",
    );
  });
});

describe("deemed rules as data", () => {
  it("il-trm: the example of the first editions, rounded as the rule rounds", () => {
    const rule = deemedRuleById("il-trm-method-1");
    const leakageReductionCfm25 = (387 - 139) * rule.cfm25PerCfm50Factor;
    const savings = deemedLeakageSavings({ ...HOUSE, ...rule.constants, leakageReductionCfm25 });
    expect(roundByRule(rule, savings)).toEqual({ coolingKWh: 237, heatingTherms: 212, blowerKWh: 195 });
  });

  it("have an id each, a source, and are found by id only", () => {
    expect(new Set(DEEMED_RULES.map((rule) => rule.id)).size).toBe(DEEMED_RULES.length);
    expect(() => deemedRuleById("nothing")).toThrow("No deemed rule");
  });
});
