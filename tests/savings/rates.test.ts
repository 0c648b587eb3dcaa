import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type EnergyRate, energyCharge, type MonthlyUse, moneySaved } from "#lib/savings/rates.ts";
import { expectClose } from "#tests/expect-close.ts";

const even = (unitsAMonth: number): MonthlyUse =>
  Array.from({ length: 12 }, () => [unitsAMonth / 3, unitsAMonth / 3, unitsAMonth / 3]);
const byHand = { relativeTolerance: 1e-9, reason: "by hand, exact" };
const TIERED: EnergyRate = {
  kind: "tiered",
  steps: [
    { upToUnits: 300, usdPerUnit: 0.1 },
    { upToUnits: 500, usdPerUnit: 0.2 },
    { upToUnits: null, usdPerUnit: 0.3 },
  ],
};

describe("energy rates", () => {
  it("derived: a flat rate is units times price", () => {
    expectClose({
      actual: energyCharge({ rate: { kind: "flat", usdPerUnit: 0.15 }, use: even(600) }).chargeUsd,
      expected: 1080,
      ...byHand,
    });
  });

  it("derived: 600 units a month over steps at 300 and 500 cost 30 + 40 + 30 dollars, and savings come off the top", () => {
    expectClose({ actual: energyCharge({ rate: TIERED, use: even(600) }).chargeUsd, expected: 1200, ...byHand });
    // 600 → 450: 100 at 0.3 and 50 at 0.2 a month.
    expectClose({
      actual: moneySaved({ rate: TIERED, before: even(600), after: even(450) }).savedUsd,
      expected: 480,
      ...byHand,
    });
  });

  it("derived: time of use counts each shift at its own price, by month where it says so", () => {
    const rate: EnergyRate = { kind: "time-of-use", usdPerUnitByShift: [[0.1, 0.2, 0.4]] };
    const use: MonthlyUse = Array.from({ length: 12 }, () => [100, 50, 25]);
    expectClose({ actual: energyCharge({ rate, use }).chargeUsd, expected: 360, ...byHand });
    const seasonal: EnergyRate = {
      kind: "time-of-use",
      usdPerUnitByShift: Array.from({ length: 12 }, (_, month) => (month === 6 ? [0.1, 0.2, 0.8] : [0.1, 0.2, 0.4])),
    };
    expectClose({ actual: energyCharge({ rate: seasonal, use }).chargeUsd, expected: 370, ...byHand });
  });

  it("never saves more than the bill, and never less by saving more", () => {
    const units = fc.double({ min: 0, max: 2000, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(units, share, share, (use, a, b) => {
        const saved = (kept: number) =>
          moneySaved({ rate: TIERED, before: even(use), after: even(use * kept) }).savedUsd;
        expect(saved(Math.min(a, b))).toBeGreaterThanOrEqual(saved(Math.max(a, b)) - 1e-9);
        expect(saved(0)).toBeLessThanOrEqual(energyCharge({ rate: TIERED, use: even(use) }).chargeUsd + 1e-9);
      }),
    );
  });

  it("refuses eleven months, negative use, free energy, steps out of order, a rate of two rows", () => {
    const flat: EnergyRate = { kind: "flat", usdPerUnit: 0.1 };
    expect(() => energyCharge({ rate: flat, use: even(1).slice(1) })).toThrow("twelve months");
    expect(() => energyCharge({ rate: flat, use: even(-1) })).toThrow("none below zero");
    expect(() => energyCharge({ rate: { kind: "flat", usdPerUnit: 0 }, use: even(1) })).toThrow("above 0");
    expect(() =>
      energyCharge({ rate: { kind: "tiered", steps: [{ upToUnits: 300, usdPerUnit: 0.1 }] }, use: even(1) }),
    ).toThrow("must rise");
    expect(() => energyCharge({ rate: { kind: "tiered", steps: [] }, use: even(1) })).toThrow();
    const row = [0.1, 0.1, 0.1] as const;
    expect(() => energyCharge({ rate: { kind: "time-of-use", usdPerUnitByShift: [row, row] }, use: even(1) })).toThrow(
      "1 row or 12",
    );
  });
});
