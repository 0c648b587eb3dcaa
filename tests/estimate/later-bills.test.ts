import { describe, expect, it } from "vitest";
import { typicalDays } from "#lib/climate/typical-days.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (value: number) => String(value).padStart(2, "0");
const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
const temperaturesOf = typicalDays(reference.climate);

/** Gas bills of a calendar year `shiftF` warmer than the typical one: .6 therms a day, more below 61 °F. */
function yearOfBills({ year, perF, shiftF = 0 }: { year: number; perF: number; shiftF?: number }): Bill[] {
  return DAYS.map((days, month) => {
    const daysF = temperaturesOf(month + 1, days).map((dayF) => dayF + shiftF);
    const degrees = daysF.reduce((sum, dayF) => sum + Math.max(0, 61 - dayF), 0);
    return {
      startDate: `${year}-${two(month + 1)}-01`,
      endDate: `${year}-${two(month + 1)}-${days}`,
      naturalGasTherms: 0.6 * days + perF * degrees,
      meanOutdoorF: daysF.reduce((sum, dayF) => sum + dayF, 0) / days,
    };
  });
}

const BEFORE = yearOfBills({ year: 2024, perF: 0.11 });
const AFTER = yearOfBills({ year: 2026, perF: 0.09, shiftF: -3 });
const estimated = (bills: Bill[], workDoneDate?: string) => {
  const chosenMeasures = job.sites.slice(0, 1).map(({ id }) => ({ siteId: id, repairId: "patch-and-mastic" }));
  const billed: Job = { ...job, plan: { ...job.plan, chosenMeasures, workDoneDate }, energy: { bills } };
  return estimate(billed, reference, { draws: 50 });
};

describe("bills from after the work (synthetic, derived)", () => {
  it("leaves the estimate to the bills before the work, and gives the saving of a normal year beside it", async () => {
    const alone = await estimated(BEFORE);
    const result = await estimated([...BEFORE, ...AFTER], "2025-06-15");
    expect(resultSchema.safeParse(result).error).toBeUndefined();
    expect(result.energy).toEqual(alone.energy);
    expect(result.savings).toEqual(alone.savings);
    const [gas] = result.laterBills!;
    expect(result.laterBills).toHaveLength(1);
    expect(gas).toMatchObject({
      fuel: "naturalGas",
      unit: "therm",
      isTold: true,
      estimated: result.savings.naturalGasTherms,
    });
    const degreesOfTypicalYear = DAYS.flatMap((days, month) => [...temperaturesOf(month + 1, days)]).reduce(
      (sum, dayF) => sum + Math.max(0, 61 - dayF),
      0,
    );
    expectClose({
      actual: gas!.saved!.value,
      expected: 0.02 * degreesOfTypicalYear,
      relativeTolerance: 1e-4,
      reason: "bills without scatter, fitted by search",
    });
  });

  it("says whether the bills agree with the estimate", async () => {
    const agreementAt = async (perF: number) => {
      const after = yearOfBills({ year: 2026, perF, shiftF: -3 });
      return (await estimated([...BEFORE, ...after], "2025-06-15")).laterBills![0]!;
    };
    const { savings } = await estimated(BEFORE);
    const { p10, p90 } = savings.naturalGasTherms;
    const much = await agreementAt(0.05);
    expect(much.saved!.p10).toBeGreaterThan(p90!);
    expect(much).toMatchObject({ isTold: true, agreement: "bills-show-more" });
    const none = await agreementAt(0.115);
    expect(none.saved!.p90).toBeLessThan(p10!);
    expect(none).toMatchObject({ isTold: true, agreement: "bills-show-less" });
    expect(none.explanation[0]).toContain("more gas");
    expect((await agreementAt(0.09)).agreement).toBe("agree");
  });

  it("has no such name without the day of the work, or without bills from after it", async () => {
    expect(await estimated(BEFORE)).not.toHaveProperty("laterBills");
    expect(await estimated([...BEFORE, ...AFTER])).not.toHaveProperty("laterBills");
    expect(await estimated(BEFORE, "2025-06-15")).not.toHaveProperty("laterBills");
  });

  it("takes a bill that holds the day of the work, or makes up for an estimate before it, for neither", async () => {
    const changed = [...BEFORE, ...AFTER].map((bill) =>
      bill.startDate === "2026-01-01" ? { ...bill, isEstimated: true } : bill,
    );
    const [gas] = (await estimated(changed, "2026-01-20")).laterBills!;
    // January holds the day and is an estimate, February makes up for it: ten are left, less than a year.
    expect(gas).toMatchObject({ saved: null, isTold: false, agreement: null, after: null });
    expect(gas!.explanation[0]).toContain("after the work cover 306 days");
  });

  it("cannot tell where nothing was saved and the weather is not known", async () => {
    const plain = ({ meanOutdoorF: _, ...bill }: Bill): Bill => bill;
    const same = yearOfBills({ year: 2026, perF: 0.11 });
    const [gas] = (await estimated([...BEFORE, ...same].map(plain), "2025-06-15")).laterBills!;
    expect(gas!.isTold).toBe(false);
    expect(gas!.explanation[0]).toMatch(/^The gas bills cannot tell: /);
    expect(gas!.explanation.join(" ")).toContain("typical weather stands in");
  });
});
