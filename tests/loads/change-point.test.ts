import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changePointDoubt } from "#lib/loads/change-point-doubt.ts";
import { fitChangePoint, seasonalUse } from "#lib/loads/change-point-fit.ts";
import type { BillPeriod } from "#lib/loads/change-point-model.ts";
import { chooseChangePointModel } from "#lib/loads/choose-change-point-model.ts";
import { expectClose } from "#tests/expect-close.ts";

const MEANS_F = [24, 28, 38, 49, 59, 69, 74, 72, 65, 52, 40, 28];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

interface Truth {
  base: number;
  heatingSlope: number;
  heatingF: number;
  coolingSlope: number;
  coolingF: number;
}

/** Bills of a house whose truth is known, over days that spread about the month's mean. */
function bills({ base, heatingSlope, heatingF, coolingSlope, coolingF }: Truth, spreadF = 8): BillPeriod[] {
  return MEANS_F.map((meanF, month) => {
    const days = DAYS[month]!;
    const dailyTemperaturesF = Array.from({ length: days }, (_, day) => meanF + spreadF * Math.sin(day * 1.7 + month));
    const use = dailyTemperaturesF.reduce(
      (sum, dayF) =>
        sum + base + heatingSlope * Math.max(0, heatingF - dayF) + coolingSlope * Math.max(0, dayF - coolingF),
      0,
    );
    return { days, use, dailyTemperaturesF };
  });
}

/** Misses that follow no rule, always the same ones: 3 % of each bill, up or down. */
const NOISE = [0.5, -1, 0.9, 0.2, -0.7, 1, -0.3, 0.6, -0.9, 0.1, 0.8, -0.6];
const withNoise = (periods: readonly BillPeriod[], share: number) =>
  periods.map((period, index) => ({ ...period, use: period.use * (1 + share * NOISE[index]!) }));

const truths = fc.record({
  base: fc.double({ min: 1, max: 40, noNaN: true }),
  heatingSlope: fc.double({ min: 0.1, max: 3, noNaN: true }),
  heatingF: fc.double({ min: 45, max: 62, noNaN: true }),
  coolingSlope: fc.double({ min: 0.1, max: 3, noNaN: true }),
  coolingF: fc.double({ min: 63, max: 70, noNaN: true }),
});

describe("a change-point fit", () => {
  it("derived: returns what made the bills, days known, for any house", () => {
    fc.assert(
      fc.property(truths, (truth) => {
        const fit = fitChangePoint({ periods: bills(truth), model: "both" });
        const exact = { relativeTolerance: 1e-6, reason: "bills without noise" };
        expectClose({ actual: fit.baseUsePerDay, expected: truth.base, ...exact });
        expectClose({ actual: fit.heatingSlope, expected: truth.heatingSlope, ...exact });
        expectClose({ actual: fit.balanceHeatingF!, expected: truth.heatingF, ...exact });
        expectClose({ actual: fit.coolingSlope, expected: truth.coolingSlope, ...exact });
        expectClose({ actual: fit.balanceCoolingF!, expected: truth.coolingF, ...exact });
      }),
      { numRuns: 40, endOnFailure: true },
    );
  });

  it("scales with its bills: twice the use gives twice the base, slopes and seasons, the same balance and statistics", () => {
    const periods = withNoise(bills({ base: 2, heatingSlope: 0.2, heatingF: 58, coolingSlope: 0, coolingF: 99 }), 0.05);
    const one = fitChangePoint({ periods, model: "heating" });
    for (const factor of [2, 29.3, 0.01]) {
      const scaled = fitChangePoint({
        periods: periods.map((each) => ({ ...each, use: each.use * factor })),
        model: "heating",
      });
      const same = { relativeTolerance: 1e-6, reason: "the least squares are homogeneous" };
      expectClose({ actual: scaled.baseUsePerDay, expected: one.baseUsePerDay * factor, ...same });
      expectClose({ actual: scaled.heatingUse, expected: one.heatingUse * factor, ...same });
      expectClose({ actual: scaled.balanceHeatingF!, expected: one.balanceHeatingF!, ...same });
      expectClose({ actual: scaled.cvRmse, expected: one.cvRmse, ...same });
    }
  });

  it("derived: cvRmse divides by n − p; twelve bills, three parameters, by hand", () => {
    const truth = { base: 2, heatingSlope: 0.2, heatingF: 58, coolingSlope: 0, coolingF: 99 };
    const periods = withNoise(bills(truth), 0.05);
    const fit = fitChangePoint({ periods, model: "heating" });
    const totalDays = 365;
    const meanPerDay = periods.reduce((sum, each) => sum + each.use, 0) / totalDays;
    const squares = periods.reduce((sum, each) => {
      const { heatingUse } = seasonalUse([each], fit);
      const missPerDay = (each.use - fit.baseUsePerDay * each.days - heatingUse) / each.days;
      return sum + missPerDay ** 2 * ((each.days * 12) / totalDays);
    }, 0);
    expectClose({
      actual: fit.cvRmse,
      expected: Math.sqrt(squares / 9) / meanPerDay,
      relativeTolerance: 1e-9,
      reason: "the definition written out",
    });
    expect(Math.abs(fit.nmbe)).toBeLessThan(1e-12);
    expect(fit.rSquared).toBeGreaterThan(0.9);
    expect(fit.rSquared).toBeLessThan(1);
  });

  it("uses the days, not their mean: a month whose mean is at the balance still heats on its cold days", () => {
    const truth = { base: 2, heatingSlope: 0.2, heatingF: 60, coolingSlope: 0, coolingF: 99 };
    const byMean = bills(truth).map(({ dailyTemperaturesF, ...period }) => ({
      ...period,
      meanTemperatureF: dailyTemperaturesF!.reduce((sum, each) => sum + each, 0) / period.days,
    }));
    const fitOfMeans = fitChangePoint({ periods: byMean, model: "heating" });
    const fitOfDays = fitChangePoint({ periods: bills(truth), model: "heating" });
    expect(fitOfDays.cvRmse).toBeLessThan(1e-9);
    expect(fitOfMeans.cvRmse).toBeGreaterThan(1e-3);
  });

  it("never lets a slope go below zero: bills that fall with cold have no heating", () => {
    const upsideDown = bills({ base: 10, heatingSlope: 0, heatingF: 0, coolingSlope: 1, coolingF: 40 });
    const fit = fitChangePoint({ periods: upsideDown, model: "heating" });
    expect(fit.heatingSlope).toBe(0);
    expect(fit.heatingUse).toBe(0);
  });

  it("says when the bills cannot tell the balance temperature", () => {
    const alwaysCold = bills({ base: 5, heatingSlope: 1, heatingF: 90, coolingSlope: 0, coolingF: 99 });
    expect(fitChangePoint({ periods: alwaysCold, model: "heating" }).isBalanceAtLimit).toBe(true);
  });

  it("refuses too few bills, bills without temperature, days that do not match, zero use", () => {
    const some = bills({ base: 2, heatingSlope: 0.2, heatingF: 58, coolingSlope: 0, coolingF: 99 });
    expect(() => fitChangePoint({ periods: some.slice(0, 3), model: "heating" })).toThrow("at least 4 periods, not 3");
    expect(() => fitChangePoint({ periods: some.slice(0, 5), model: "both" })).toThrow("at least 6 periods, not 5");
    const bare = some.map(({ days, use }) => ({ days, use }));
    expect(() => fitChangePoint({ periods: bare, model: "heating" })).toThrow("#/periods/0/meanTemperatureF");
    const wrong = [{ ...some[0]!, days: 30 }, ...some.slice(1)];
    expect(() => fitChangePoint({ periods: wrong, model: "heating" })).toThrow("as many daily temperatures, not 31");
    const none = some.map((each) => ({ ...each, use: 0 }));
    expect(() => fitChangePoint({ periods: none, model: "heating" })).toThrow("zero");
  });
});

describe("the doubt of a fit", () => {
  const truth = { base: 2, heatingSlope: 0.2, heatingF: 58, coolingSlope: 0, coolingF: 99 };

  it("grows with the scatter of the bills and holds the truth", () => {
    const doubtAt = (share: number) => {
      const periods = withNoise(bills(truth), share);
      const fit = fitChangePoint({ periods, model: "heating" });
      return changePointDoubt({ periods, model: "heating", fit });
    };
    const small = doubtAt(0.02);
    const large = doubtAt(0.1);
    const width = (doubt: typeof small) => doubt.balanceHeatingF!.highF - doubt.balanceHeatingF!.lowF;
    expect(width(large)).toBeGreaterThan(width(small));
    expect(large.relativeUncertaintyOfHeatingUse!).toBeGreaterThan(small.relativeUncertaintyOfHeatingUse!);
    for (const doubt of [small, large]) {
      expect(doubt.balanceHeatingF!.lowF).toBeLessThanOrEqual(58);
      expect(doubt.balanceHeatingF!.highF).toBeGreaterThanOrEqual(58);
      expect(doubt.relativeUncertaintyOfCoolingUse).toBeNull();
    }
    // 10 % noise on twelve bills: the season is known to some 3 to 15 %.
    expect(large.relativeUncertaintyOfHeatingUse!).toBeGreaterThan(0.01);
    expect(large.relativeUncertaintyOfHeatingUse!).toBeLessThan(0.2);
  });

  it("covers both balances of a combined fit", () => {
    const both = { base: 15, heatingSlope: 0.8, heatingF: 57, coolingSlope: 1.9, coolingF: 67 };
    const periods = withNoise(bills(both), 0.02);
    const fit = fitChangePoint({ periods, model: "both" });
    const doubt = changePointDoubt({ periods, model: "both", fit });
    expect(doubt.balanceHeatingF!.lowF).toBeLessThanOrEqual(57);
    expect(doubt.balanceHeatingF!.highF).toBeGreaterThanOrEqual(57);
    expect(doubt.balanceCoolingF!.lowF).toBeLessThanOrEqual(67);
    expect(doubt.balanceCoolingF!.highF).toBeGreaterThanOrEqual(67);
  });
});

describe("the choice of a model", () => {
  const gas = { base: 1.2, heatingSlope: 0.15, heatingF: 61, coolingSlope: 0, coolingF: 99 };
  const electric = { base: 20, heatingSlope: 0, heatingF: 0, coolingSlope: 2.2, coolingF: 66 };
  const heatPump = { base: 15, heatingSlope: 0.8, heatingF: 57, coolingSlope: 1.9, coolingF: 67 };

  it.each([
    ["heating", gas],
    ["cooling", electric],
    ["both", heatPump],
  ] as const)("finds %s in such bills, with and without noise", (model, truth) => {
    for (const share of [0, 0.04]) {
      expect(chooseChangePointModel(withNoise(bills(truth), share)).model).toBe(model);
    }
  });

  it("finds no season in bills that only scatter", () => {
    const flat = withNoise(bills({ base: 20, heatingSlope: 0, heatingF: 0, coolingSlope: 0, coolingF: 99 }), 0.05);
    const choice = chooseChangePointModel(flat);
    expect(choice.model).toBe("base-only");
    expect(choice.fit).toBeNull();
    expect(choice.reason.length).toBeGreaterThan(20);
  });

  it("asks for more bills when there are too few for any model", () => {
    expect(() => chooseChangePointModel(bills(gas).slice(0, 4))).toThrow("from 5 usable bills or more, not from 4");
  });
});
