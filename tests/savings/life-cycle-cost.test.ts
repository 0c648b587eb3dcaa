import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lifeCycleCost } from "#lib/savings/life-cycle-cost.ts";
import { modifiedUniformPresentValueFactor, singlePresentValueFactor } from "#lib/savings/present-value-factors.ts";
import { expectClose } from "#tests/expect-close.ts";

const rates = fc.double({ min: -0.05, max: 0.12, noNaN: true });
const years = fc.integer({ min: 1, max: 40 });
const cases = fc.record({
  costUsd: fc.double({ min: 50, max: 20000, noNaN: true }),
  years,
  discountRate: rates,
  savings: fc.array(
    fc.record({ annualAtBaseDateUsd: fc.double({ min: 1, max: 3000, noNaN: true }), escalationRate: rates }),
    { minLength: 1, maxLength: 4 },
  ),
  reinvestmentRate: rates,
});

describe("present value factors", () => {
  it("nist-hb-135 SPV: 3 %, 15 years is 0.642", () => {
    const actual = singlePresentValueFactor({ discountRate: 0.03, years: 15 });
    expectClose({ actual, expected: 0.642, relativeTolerance: 8e-4, reason: "printed to three figures" });
  });

  it("nist-hb-135 UPV*: the sum equals the closed form, and the number of years where the rates are the same", () => {
    fc.assert(
      fc.property(rates, rates, years, (discountRate, escalationRate, count) => {
        fc.pre(Math.abs(discountRate - escalationRate) > 1e-3);
        const ratio = (1 + escalationRate) / (1 + discountRate);
        expectClose({
          actual: modifiedUniformPresentValueFactor({ discountRate, escalationRate, years: count }),
          expected: ((1 + escalationRate) / (discountRate - escalationRate)) * (1 - ratio ** count),
          relativeTolerance: 1e-9,
          reason: "the handbook's closed form; it loses digits where the rates are near",
        });
      }),
    );
    expect(modifiedUniformPresentValueFactor({ discountRate: 0.03, escalationRate: 0.03, years: 17 })).toBe(17);
  });
});

describe("life-cycle cost", () => {
  it("holds its identities: NS = PV − C, SIR = PV/C, and the AIRR turns the cost into what the savings grow to", () => {
    fc.assert(
      fc.property(cases, (input) => {
        const result = lifeCycleCost(input);
        const rounding = { relativeTolerance: 1e-9, reason: "an identity up to rounding" };
        expectClose({
          actual: result.netSavings,
          expected: result.presentValueSavings - input.costUsd,
          scale: result.presentValueSavings + input.costUsd,
          relativeTolerance: 1e-12,
          reason: "a difference of the two",
        });
        expectClose({
          actual: result.savingsToInvestmentRatio * input.costUsd,
          expected: result.presentValueSavings,
          ...rounding,
        });
        expectClose({
          actual: input.costUsd * (1 + result.adjustedInternalRateOfReturn!) ** input.years,
          expected: result.presentValueSavings * (1 + input.reinvestmentRate) ** input.years,
          ...rounding,
        });
      }),
    );
  });

  it("pays back within the years exactly when the savings are worth the cost", () => {
    fc.assert(
      fc.property(cases, (input) => {
        const { discountedPaybackYears, netSavings } = lifeCycleCost(input);
        expect(discountedPaybackYears !== null).toBe(netSavings >= 0);
        if (discountedPaybackYears !== null && discountedPaybackYears > 1) {
          expect(lifeCycleCost({ ...input, years: discountedPaybackYears - 1 }).netSavings).toBeLessThan(0);
        }
      }),
    );
  });

  it("is additive over savings and does not depend on their order", () => {
    fc.assert(
      fc.property(cases, (input) => {
        const whole = lifeCycleCost(input).presentValueSavings;
        const parts = input.savings.reduce(
          (sum, each) => sum + lifeCycleCost({ ...input, savings: [each] }).presentValueSavings,
          0,
        );
        const turned = lifeCycleCost({ ...input, savings: [...input.savings].reverse() }).presentValueSavings;
        const reason = "a sum in another order";
        expectClose({ actual: parts, expected: whole, relativeTolerance: 1e-12, reason });
        expectClose({ actual: turned, expected: whole, relativeTolerance: 1e-12, reason });
      }),
    );
  });

  it("says null, not infinity, where nothing is saved", () => {
    const nothing = lifeCycleCost({
      costUsd: 500,
      years: 10,
      discountRate: 0.03,
      savings: [{ annualAtBaseDateUsd: 0 }],
    });
    expect(nothing).toMatchObject({
      netSavings: -500,
      adjustedInternalRateOfReturn: null,
      simplePaybackYears: null,
      discountedPaybackYears: null,
    });
  });

  it("refuses a cost of zero, half a year, and a rate above 100 %", () => {
    const good = { costUsd: 500, years: 10, discountRate: 0.03, savings: [{ annualAtBaseDateUsd: 60 }] };
    expect(() => lifeCycleCost({ ...good, costUsd: 0 })).toThrow("Cost must be above 0");
    expect(() => lifeCycleCost({ ...good, years: 7.5 })).toThrow("#/years");
    expect(() => lifeCycleCost({ ...good, discountRate: 3 })).toThrow("Discount rate");
    expect(() => lifeCycleCost({ ...good, savings: [{ annualAtBaseDateUsd: Number.NaN }] })).toThrow("#/savings");
  });
});
