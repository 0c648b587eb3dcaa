import { describe, expect, it } from "vitest";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { typicalDays } from "#lib/climate/typical-days.ts";
import type { UtilityBill } from "#lib/loads/bills.ts";
import type { SeasonPrior } from "#lib/loads/weigh-seasons.ts";
import { yearlyUseFromBills } from "#lib/loads/yearly-use-from-bills.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";
import { expectClose } from "#tests/expect-close.ts";

const temperaturesOf = typicalDays(OHARE);
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (value: number) => String(value).padStart(2, "0");

/** Gas bills of a house at O'Hare: 0.8 therms a day, 0.12 therms per degree below 62 °F. */
const gasBills = (wobble = 0): UtilityBill[] =>
  DAYS.map((days, month) => {
    const degrees = temperaturesOf(month + 1, days).reduce((sum, dayF) => sum + Math.max(0, 62 - dayF), 0);
    const use = (0.8 * days + 0.12 * degrees) * (1 + wobble * Math.sin(7 * month));
    return { startDate: `2025-${two(month + 1)}-01`, endDate: `2025-${two(month + 1)}-${days}`, use };
  });

/** A household of which little is known before its bills are read. */
const PRIOR: SeasonPrior = {
  baseUsePerDay: 0.7,
  baseStandardUncertainty: 0.3,
  winterSwingShare: 0,
  winterSwingDoubt: 0.02,
  heatingBalanceF: 59,
  coolingBalanceF: null,
  balanceStandardUncertaintyF: 5,
};

describe("yearly use from bills", () => {
  it("derived: heating use is slope times the degree days of the typical year, base left out", () => {
    const { heatingUse, coolingUse, baseUsePerDay, choice, remarks } = yearlyUseFromBills(
      gasBills(),
      temperaturesOf,
      PRIOR,
    );
    expect(choice.model).toBe("heating");
    expect(remarks).toEqual([]);
    expect(coolingUse).toBe(0);
    expectClose({
      actual: baseUsePerDay!,
      expected: 0.8,
      relativeTolerance: 0.05,
      reason: "bills without noise, yet taken to scatter as bills do, and days to have a cool and a warm part",
    });
    expectClose({
      actual: heatingUse,
      expected: 0.12 * degreeDaysByMonth({ climate: OHARE, baseTemperatureF: 62 }).heatingDegreeDays,
      relativeTolerance: 0.02,
      reason: "quantiles of the month's days stand for its bins; as above",
    });
  });

  it("holds with a missing bill, an estimate and 5 % of scatter, and says how sure it is", () => {
    const bills = gasBills(0.05)
      .filter((_, month) => month !== 3)
      .map((bill, index) => (index === 8 ? { ...bill, isEstimated: true, use: bill.use * 0.7 } : bill))
      .map((bill, index, all) => (index === 9 ? { ...bill, use: bill.use + (all[8]!.use / 0.7) * 0.3 } : bill));
    const clean = yearlyUseFromBills(gasBills(), temperaturesOf, PRIOR);
    const rough = yearlyUseFromBills(bills, temperaturesOf, PRIOR);
    expect(rough.remarks.map((each) => each.note.code)).toEqual(["bill-missing", "bill-estimated"]);
    expectClose({
      actual: rough.heatingUse,
      expected: clean.heatingUse,
      relativeTolerance: 0.08,
      reason: "5 % of scatter a bill",
    });
    expect(rough.relativeUncertaintyOfHeatingUse!).toBeGreaterThan(0.005);
    expect(rough.relativeUncertaintyOfHeatingUse!).toBeLessThan(0.2);
  });

  it("is so unsure of a season that is not there that nobody goes by it, and asks for more bills when there are too few", () => {
    const flat = gasBills().map((bill, month) => ({ ...bill, use: DAYS[month]! * (1 + 0.05 * Math.sin(7 * month)) }));
    const { heatingUse, coolingUse, relativeUncertaintyOfHeatingUse, choice } = yearlyUseFromBills(
      flat,
      temperaturesOf,
      PRIOR,
    );
    expect(choice.model).toBe("base-only");
    expect(heatingUse).toBeLessThan(0.1 * 365);
    expect(heatingUse === 0 || relativeUncertaintyOfHeatingUse! > 0.5).toBe(true);
    expect(coolingUse).toBe(0);
    expect(() => yearlyUseFromBills(gasBills().slice(0, 3), temperaturesOf, PRIOR)).toThrow("not from 3");
  });
});
