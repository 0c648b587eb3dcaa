import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { readDailyTemperatures, withMeanOutdoor } from "#lib/exchange/bills/daily-temperatures-csv.ts";

const DAYS = Array.from({ length: 31 }, (_, k) => `2026-01-${String(k + 1).padStart(2, "0")}`);
const csv = (head: string, row: (date: string, k: number) => string) => [head, ...DAYS.map(row)].join("\n");
const BILL = { startDate: "2026-01-01", endDate: "2026-01-31", electricityKWh: 900 };

describe("daily temperatures from a file", () => {
  it("tell each bill the mean of its days, in °F or °C (derived)", () => {
    const inF = readDailyTemperatures(csv("date,meanF", (date, k) => `${date},${20 + k}`));
    expect(withMeanOutdoor([BILL], inF)).toEqual({ bills: [{ ...BILL, meanOutdoorF: 35 }], toldCount: 1 });
    const inC = readDailyTemperatures(csv("station,Date,meanC", (date) => `ORD,${date},-10`));
    expect(withMeanOutdoor([BILL], inC).bills[0]!.meanOutdoorF).toBeCloseTo(14, 12);
  });

  it("leave a bill alone whose days are not nine tenths known", () => {
    const with28 = readDailyTemperatures(csv("date,meanF", (date, k) => `${date},${k < 28 ? 30 : ""}`));
    expect(withMeanOutdoor([BILL], with28).toldCount).toBe(1);
    const with27 = readDailyTemperatures(csv("date,meanF", (date, k) => `${date},${k < 27 ? 30 : ""}`));
    expect(withMeanOutdoor([BILL], with27)).toEqual({ bills: [BILL], toldCount: 0 });
  });

  it("name the line and column of each fault, and take nothing", () => {
    const faulty = "date,meanF\n2026-01-01,31\nyesterday,30\n2026-01-01,32\n2026-01-03,999";
    const problems = (() => {
      try {
        readDailyTemperatures(faulty);
      } catch (thrown) {
        return (thrown as InputProblem).errors.map(({ detail }) => detail);
      }
      return [];
    })();
    expect(problems).toEqual([
      expect.stringContaining("Line 3, column date"),
      expect.stringContaining("Line 4, column date"),
      expect.stringContaining("Line 5, column mean"),
    ]);
    expect(() => readDailyTemperatures("")).toThrow(InputProblem);
    expect(() => readDailyTemperatures("day,warmth\n2026-01-01,3")).toThrow(/meanF/);
  });
});
