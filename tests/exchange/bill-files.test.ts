import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { clockOfFile, clockOfZone } from "#lib/exchange/bills/local-days.ts";
import { readBillFile } from "#lib/exchange/bills/read-bill-file.ts";
import { parseXml } from "#lib/exchange/hpxml/xml-node.ts";
import { energyUseSchema } from "#lib/job/energy-use.ts";
import { usableBills } from "#lib/loads/bills.ts";
import { feedOf, localTime, meter, readingsFrom, summary } from "./espi-text.ts";

const HOUR = 3600;
const DAY = 24 * HOUR;
const read = (text: string) => readBillFile(text, { timeZone: "America/Chicago" });
const refusal = (text: string): string => {
  try {
    read(text);
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown.errors.map(({ detail, fix }) => `${detail} ${fix}`).join("\n");
    throw thrown;
  }
  throw new Error("The file was taken");
};
const csv = (...lines: string[]) => ["start,end,amount,unit,estimated", ...lines].join("\n");

// Element names, uom 72 = Wh, 169 = therm, commodity 1 = electricity, 7 = natural gas: NAESB REQ.21 ESPI, as the schema's
// annotations list them. Quality 8 = estimated and the widths of the bits of a clock rule: the same, from memory.
describe("bills from a Green Button file", () => {
  it("sums readings to the billing periods, in the place's own days through both changes of the clock", () => {
    // 2025-03-09 and 2025-11-02 are the changes in North America (15 U.S.C. 260a, from memory).
    const hours = (Date.parse("2025-12-01T00:00-06:00") - Date.parse("2025-03-01T00:00-06:00")) / 1000 / HOUR;
    const { bills, notes } = read(
      feedOf([
        localTime(),
        ...meter(readingsFrom("2025-03-01T00:00-06:00", HOUR, Array<number>(hours).fill(1000))),
        summary("2025-03-01T00:00-06:00", "2025-04-01T00:00-05:00"),
        summary("2025-04-01T00:00-05:00", "2025-11-01T00:00-05:00"),
        summary("2025-11-01T00:00-05:00", "2025-12-01T00:00-06:00"),
      ]),
    );
    expect(bills).toEqual([
      { startDate: "2025-03-01", endDate: "2025-03-31", electricityKWh: 31 * 24 - 1 },
      { startDate: "2025-04-01", endDate: "2025-10-31", electricityKWh: 214 * 24 },
      { startDate: "2025-11-01", endDate: "2025-11-30", electricityKWh: 30 * 24 + 1 },
    ]);
    expect(notes).toEqual([]);
  });

  it("has each hour of 2007 to 2030 as the time zone database has it", () => {
    const entry = parseXml(feedOf([localTime()]), "feed").root.child("entry")!;
    const [ofFile, ofZone] = [clockOfFile(entry.at("content", "LocalTimeParameters")!), clockOfZone("America/Chicago")];
    const differs: string[] = [];
    for (let time = Date.UTC(2007, 0, 1, 6) / 1000; time < Date.UTC(2030, 11, 31) / 1000; time += HOUR)
      if (ofFile(time) !== ofZone(time)) differs.push(new Date(time * 1000).toISOString());
    expect(differs).toEqual([]);
  });

  it("puts a reading into its local day, by the clock of the file and by a zone", () => {
    const zone = clockOfZone("America/Chicago");
    fc.assert(
      fc.property(fc.integer({ min: 1_200_000_000, max: 1_900_000_000 }), (start) => {
        const reading = { start, durationSeconds: HOUR, value: 5 };
        const local = new Date((start + zone(start)) * 1000).toISOString().slice(0, 10);
        for (const time of [[localTime()], []])
          expect(read(feedOf([...time, ...meter([reading])])).bills).toMatchObject([
            { startDate: local, endDate: local },
          ]);
      }),
      { numRuns: 200 },
    );
  });

  it("keeps the sum of the readings, whatever the periods, the gaps and the multiplier, and no day twice", () => {
    const made = fc.record({
      readings: fc.array(fc.record({ value: fc.integer({ min: 0, max: 9000 }), isMissing: fc.boolean() }), {
        minLength: 1,
        maxLength: 120,
      }),
      stepHours: fc.constantFrom(0.25, 1, 6, 24, 24 * 5),
      power: fc.constantFrom(-3, 0, 1),
      periodDays: fc.array(fc.integer({ min: 3, max: 40 }), { maxLength: 4 }),
      startHour: fc.integer({ min: 0, max: 24 * 365 }),
    });
    fc.assert(
      fc.property(made, ({ readings, stepHours, power, periodDays, startHour }) => {
        const start = Date.parse("2025-01-01T00:00-06:00") + startHour * HOUR * 1000;
        const all = readingsFrom(
          new Date(start).toISOString(),
          stepHours * HOUR,
          readings.map(({ value }) => value),
        );
        const there = all.filter((_, index) => index === 0 || !readings[index]!.isMissing);
        let from = start;
        const summaries = periodDays.map((days) => {
          const [begin, end] = [from, from + days * DAY * 1000];
          from = end;
          return summary(new Date(begin).toISOString(), new Date(end).toISOString());
        });
        const { bills } = read(feedOf([localTime(), ...meter(there, { power }), ...summaries]));
        const given = there.reduce((sum, { value }) => sum + value, 0) * 10 ** (power - 3);
        expect(bills.reduce((sum, { electricityKWh }) => sum + electricityKWh!, 0)).toBeCloseTo(given, 6);
        const asUsed = bills.map((bill) => ({ ...bill, use: bill.electricityKWh! }));
        expect(usableBills(asUsed)).toHaveLength(bills.length);
        expect(energyUseSchema.safeParse({ bills }).success).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it("sums to calendar months without billing periods, and says so", () => {
    const { bills, notes } = read(
      feedOf([localTime(), ...meter(readingsFrom("2026-01-30T00:00-06:00", DAY, [10, 20, 30, 40]), { power: 3 })]),
    );
    expect(bills).toEqual([
      { startDate: "2026-01-30", endDate: "2026-01-31", electricityKWh: 30 },
      { startDate: "2026-02-01", endDate: "2026-02-02", electricityKWh: 70 },
    ]);
    expect(notes.join()).toContain("summed to calendar months");
  });

  it("reads bills alone, joins the fuels of the same days, marks estimates", () => {
    const [from, to] = ["2026-01-01T00:00-06:00", "2026-02-01T00:00-06:00"];
    const { bills } = read(
      feedOf([
        localTime(),
        summary(from, to, { value: 812_400 }),
        summary(from, to, { value: 964, uom: 169, power: -1 }),
      ]),
    );
    expect(bills).toEqual([
      { startDate: "2026-01-01", endDate: "2026-01-31", electricityKWh: 812.4, naturalGasTherms: 96.4 },
    ]);
    const estimated = read(feedOf([localTime(), summary(from, to, { value: 1000, quality: 8 })]));
    expect(estimated.bills).toMatchObject([{ electricityKWh: 1, isEstimated: true }]);
  });

  it("takes what was billed where readings are missing, and says which hours have none where nothing was billed", () => {
    const [from, to] = ["2026-01-01T00:00-06:00", "2026-01-06T00:00-06:00"];
    const readings = readingsFrom(from, DAY, [1, 1, 1, 1, 1]).filter((_, index) => index !== 2);
    const billed = read(feedOf([localTime(), ...meter(readings, { power: 3 }), summary(from, to, { value: 7000 })]));
    expect(billed.bills).toEqual([{ startDate: "2026-01-01", endDate: "2026-01-05", electricityKWh: 7 }]);
    expect(billed.notes.join()).toContain("what the utility billed was taken, 7 kWh");
    const cut = read(feedOf([localTime(), ...meter(readings, { power: 3 }), summary(from, to)]));
    expect(cut.bills.map(({ startDate, endDate }) => [startDate, endDate])).toEqual([
      ["2026-01-01", "2026-01-02"],
      ["2026-01-04", "2026-01-05"],
    ]);
    const hours = readingsFrom(from, HOUR, Array<number>(24).fill(1)).filter((_, index) => index < 9 || index > 11);
    expect(read(feedOf([localTime(), ...meter(hours)])).notes.join()).toContain(
      "3 hours of electricity without a reading",
    );
  });

  it("misses no hour in days of 24 hours across the change of the clock", () => {
    const days = readingsFrom("2025-10-30T00:00-05:00", DAY, [1, 1, 1, 1, 1, 1]);
    const { bills, notes } = read(feedOf([localTime(), ...meter(days, { power: 3 })]));
    expect(bills.map(({ startDate, endDate }) => [startDate, endDate])).toEqual([
      ["2025-10-30", "2025-10-31"],
      ["2025-11-01", "2025-11-04"],
    ]);
    expect(notes.join()).not.toContain("hour");
  });

  it("names what was left out: energy fed back, gas by volume", () => {
    const readings = readingsFrom("2026-01-01T00:00-06:00", DAY, [1]);
    const { bills, notes } = read(
      feedOf([
        localTime(),
        ...meter(readings, { power: 3 }),
        ...meter(readings, { id: "02", direction: 19 }),
        ...meter(readings, { id: "03", commodity: 7, uom: 119 }),
      ]),
    );
    expect(bills).toEqual([{ startDate: "2026-01-01", endDate: "2026-01-01", electricityKWh: 1 }]);
    expect(notes.join()).toMatch(/flowDirection 19.*uom 119/s);
    expect(read(feedOf(meter(readings))).notes.join()).toContain("days are those of America/Chicago");
  });

  const good = readingsFrom("2026-01-01T00:00-06:00", DAY, [1, 2, 3]);
  it.each([
    ["a document type", `<!DOCTYPE feed [<!ENTITY a "b">]>${feedOf([])}`, "document type definition"],
    ["broken XML", "<feed><entry></feed>", "not XML at line 1"],
    ["another root", "<html></html>", "outermost element is not feed"],
    ["nothing in it", feedOf([localTime()]), "no IntervalReading and no UsageSummary"],
    ["demand alone", feedOf(meter(good, { uom: 38 })), "72 (Wh) for electricity"],
    ["a register", feedOf(meter(good, { behavior: 1 })), "accumulationBehaviour 1"],
    ["no number", feedOf(meter(good)).replace("<value>2<", "<value>2.5 kWh<"), "IntervalReading[2]/value: “2.5 kWh”"],
    ["below zero", feedOf(meter(good)).replace("<value>2<", "<value>-2<"), "whole number of 0 or more"],
    ["no time", feedOf(meter(good)).replace(/<timePeriod>.*?<\/timePeriod>/, ""), "timePeriod: it is missing"],
    ["a wild multiplier", feedOf(meter(good, { power: 40 })), "between -12 and 12"],
    ["readings twice", feedOf([localTime(), ...meter([...good, good[1]!])]), "two readings overlap at 2026-01-02"],
    ["a meter twice", feedOf([...meter(good), ...meter(good, { id: "02" })]), "a second series of electricity"],
    [
      "lost links",
      feedOf([...meter(good), ...meter(good, { id: "02" })]).replaceAll('rel="related"', 'rel="x"'),
      "0 of the file's 2",
    ],
    ["a broken clock", feedOf([localTime(), ...meter(good)]).replace("360E2000", "0000ZZZZ"), "360E2000"],
    ["too much for a bill", feedOf(meter(good, { power: 9 })), "electricityKWh"],
    [
      "periods that overlap",
      feedOf([
        localTime(),
        summary("2026-01-01T00:00-06:00", "2026-02-01T00:00-06:00", { value: 1 }),
        summary("2026-01-20T00:00-06:00", "2026-02-20T00:00-06:00", { value: 1 }),
      ]),
      "begins within the period",
    ],
  ])("refuses %s", (_, text, words) => {
    expect(refusal(text)).toContain(words);
  });
});

describe("bills from a spreadsheet", () => {
  it("takes them as a job does: fuels of the same days in one, either way of writing dates", () => {
    const { bills, notes } = read(
      csv(
        '1/15/2026,2/14/2026,"1,012.5",kWh,',
        "2026-01-15,2026-02-14,96.4,therms,no",
        "2/15/2026,3/14/2026,8,gal oil,yes",
      ),
    );
    expect(bills).toEqual([
      { startDate: "2026-01-15", endDate: "2026-02-14", electricityKWh: 1012.5, naturalGasTherms: 96.4 },
      { startDate: "2026-02-15", endDate: "2026-03-14", fuelOilGallons: 8, isEstimated: true },
    ]);
    expect(notes).toEqual(["Dates with slashes were read as month/day/year."]);
  });

  it.each([
    ["nothing", "", "Line 1: The file is empty"],
    ["no rows", csv(), "There is no bill"],
    ["no unit column", "start,end,amount\n2026-01-01,2026-01-31,4", "column unit: the column is missing"],
    ["an unknown column", "start,end,amount,unit,color\n2026-01-01,2026-01-31,4,kWh,red", "column color"],
    ["a day that is none", csv("2026-02-01,2026-02-30,4,kWh,"), "Line 2, column end"],
    ["day before month", csv("15/1/2026,2/14/2026,4,kWh,"), "2026-01-15 or 1/15/2026"],
    ["gas by volume", csv("2026-01-01,2026-01-31,4,ccf,"), "multiply by the therm factor"],
    ["an amount with its unit", csv("2026-01-01,2026-01-31,4 kWh,kWh,"), "without its unit"],
    ["below zero", csv("2026-01-01,2026-01-31,-4,kWh,"), "0 or more"],
    ["a doubtful mark", csv("2026-01-01,2026-01-31,4,kWh,maybe"), "Write yes or no"],
    ["an end before the start", csv("2026-02-01,2026-01-31,4,kWh,"), "before the first"],
    [
      "the same days twice",
      csv("2026-01-01,2026-01-31,4,kWh,", "2026-01-31,2026-02-27,4,kWh,"),
      "line 2 that ends on 2026-01-31",
    ],
    ["too much for a bill", csv("2026-01-01,2026-01-31,100001,kWh,"), "electricityKWh is 100001"],
  ])("refuses %s", (_, text, words) => {
    expect(refusal(text)).toContain(words);
  });

  it("takes nothing when one line is wrong, and names each", () => {
    const told = refusal(csv("2026-01-01,2026-01-31,4,kWh,", "x,2026-02-27,4,kWh,", "2026-03-01,2026-03-31,,kWh,"));
    expect(told).toMatch(/Line 3, column start.*\n.*Line 4, column amount: the cell is empty/);
  });
});
