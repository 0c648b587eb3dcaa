import { describe, expect, it } from "vitest";
import { billPeriods } from "#lib/loads/bill-periods.ts";
import { billDays, remarksOnBills, type UtilityBill, usableBills } from "#lib/loads/bills.ts";

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const USES = [120, 105, 90, 55, 30, 15, 14, 14, 18, 45, 80, 110];
const two = (value: number) => String(value).padStart(2, "0");
/** A clean year, month by month. */
const YEAR: UtilityBill[] = DAYS.map((days, month) => ({
  startDate: `2025-${two(month + 1)}-01`,
  endDate: `2025-${two(month + 1)}-${days}`,
  use: USES[month]!,
}));
const codesOf = (bills: readonly UtilityBill[]) => remarksOnBills(bills).map((each) => each.note.code);

describe("remarks on bills", () => {
  it("finds nothing in a clean year", () => expect(codesOf(YEAR)).toEqual([]));

  it("counts both the first and the last day", () => {
    expect(billDays({ startDate: "2024-02-01", endDate: "2024-02-29", use: 1 })).toBe(29);
    expect(billDays({ startDate: "2025-12-20", endDate: "2026-01-19", use: 1 })).toBe(31);
  });

  it("finds a missing month, by the days without a bill", () => {
    const remarks = remarksOnBills(YEAR.filter((_, month) => month !== 4));
    expect(remarks.map((each) => each.note.code)).toEqual(["bill-missing"]);
    expect(remarks[0]!.note.what).toContain("31 days before 2025-06-01");
  });

  it("finds a bill entered twice, and an overlap", () => {
    expect(codesOf([...YEAR, YEAR[3]!])).toContain("bill-overlap");
    expect(codesOf(YEAR.map((bill, month) => (month === 6 ? { ...bill, startDate: "2025-06-20" } : bill)))).toEqual([
      "bill-overlap",
    ]);
  });

  it("finds an estimate, reversed dates, two months in one, a bill that stands out, less than a year", () => {
    const change = (at: number, part: Partial<UtilityBill>) =>
      YEAR.map((bill, month) => (month === at ? { ...bill, ...part } : bill));
    expect(codesOf(change(2, { isEstimated: true }))).toEqual(["bill-estimated"]);
    expect(codesOf(change(2, { endDate: "2025-02-01" }))).toContain("bill-reversed");
    expect(codesOf([{ ...YEAR[0]!, endDate: "2025-02-28", use: 225 }, ...YEAR.slice(2)])).toEqual(["bill-long"]);
    expect(codesOf(change(6, { use: 60 }))).toEqual(["bill-doubled"]);
    expect(codesOf(YEAR.slice(0, 6))).toEqual(["bills-less-than-a-year"]);
  });

  it("keeps the place of each bill as it was given, whatever the order", () => {
    const remarks = remarksOnBills(
      [...YEAR].reverse().map((bill) => (bill.startDate === "2025-01-01" ? { ...bill, isEstimated: true } : bill)),
    );
    expect(remarks).toHaveLength(1);
    expect(remarks[0]!.index).toBe(11);
  });
});

describe("bills that a fit can use", () => {
  it("joins an estimate with the reading after it: the sum is right", () => {
    const usable = usableBills(YEAR.map((bill, month) => (month === 2 ? { ...bill, isEstimated: true } : bill)));
    expect(usable).toHaveLength(11);
    expect(usable[2]).toMatchObject({ startDate: "2025-03-01", endDate: "2025-04-30", use: 145 });
    expect(usable.reduce((sum, bill) => sum + bill.use, 0)).toBe(USES.reduce((sum, use) => sum + use, 0));
  });

  it("leaves out what overlaps, what is reversed, and an estimate that no reading follows", () => {
    expect(usableBills([...YEAR, YEAR[3]!])).toHaveLength(12);
    expect(usableBills([...YEAR.slice(1), { ...YEAR[0]!, endDate: "2024-12-01" }])).toHaveLength(11);
    expect(usableBills(YEAR.map((bill, month) => (month === 11 ? { ...bill, isEstimated: true } : bill)))).toHaveLength(
      11,
    );
    expect(usableBills([])).toEqual([]);
  });
});

describe("bills as periods", () => {
  it("asks for the days of each month that a bill touches, also over the turn of a leap year", () => {
    const asked: [number, number][] = [];
    const [period] = billPeriods([{ startDate: "2023-12-20", endDate: "2024-03-05", use: 300 }], (month, days) => {
      asked.push([month, days]);
      return Array<number>(days).fill(month);
    });
    expect(asked).toEqual([
      [12, 12],
      [1, 31],
      [2, 29],
      [3, 5],
    ]);
    expect(period!.days).toBe(77);
    expect(period!.dailyTemperaturesF).toHaveLength(77);
  });
});
