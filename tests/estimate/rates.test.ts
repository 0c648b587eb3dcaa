import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Rates } from "#lib/job/rates.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleDocument } from "./example-jobs.ts";

const FILE = "hot-humid-two-systems.json";
const rounding = { relativeTolerance: 1e-9, reason: "sums in another order" };

function documentWith(rates: Rates): Record<string, unknown> {
  const document = exampleDocument(FILE);
  const { electricityUsdPerKWh: _, naturalGasUsdPerTherm: __, ...kept } = (document.rates ?? {}) as Rates;
  const chosenMeasures = ["plenum", "up-return-joint", "platform"].map((siteId) => ({
    siteId,
    repairId: "patch-and-mastic",
  }));
  return { ...document, plan: { ...(document.plan as object), chosenMeasures }, rates: { ...kept, ...rates } };
}

async function estimateWith(rates: Rates): Promise<Result> {
  const job = parseJob(documentWith(rates));
  return estimate(job, await loadReferenceData(job));
}

/** A month's bill by hand: what lies in each step, at its price. */
function billUsd(units: number, steps: readonly (readonly [number, number])[]): number {
  let from = 0;
  let usd = 0;
  for (const [upTo, price] of steps) {
    if (units > from) usd += (Math.min(units, upTo) - from) * price;
    from = upTo;
  }
  return usd;
}

const electricityOf = ({ charges }: Result) => charges.find(({ fuel }) => fuel === "electricity")!;

describe("the price of what is saved", () => {
  it("derived: steps and shifts of one price save what the flat price saves", async () => {
    const gas = { naturalGasUsdPerTherm: 1.1 };
    const flat = await estimateWith({ ...gas, electricityUsdPerKWh: 0.14 });
    const tiered = await estimateWith({
      ...gas,
      electricityTiers: [{ upToKWh: 500, usdPerKWh: 0.14 }, { usdPerKWh: 0.14 }],
    });
    const shifts = await estimateWith({
      ...gas,
      electricityByShift: { nightUsdPerKWh: 0.14, dayUsdPerKWh: 0.14, eveningUsdPerKWh: 0.14 },
    });
    const expected = flat.savings.costUsdPerYear.value;
    expect(expected).toBeGreaterThan(50);
    for (const each of [tiered, shifts])
      expectClose({ actual: each.savings.costUsdPerYear.value, expected, ...rounding });
    expect([flat, tiered, shifts].map((each) => electricityOf(each).rateKind)).toEqual([
      "flat",
      "tiered",
      "time-of-use",
    ]);
    expectClose({ actual: flat.charges.reduce((sum, each) => sum + each.savedUsdPerYear, 0), expected, ...rounding });
  });

  it("derived: by hand from the months, the saving comes off the top step that the whole house reaches", async () => {
    const result = await estimateWith({
      otherElectricityKWh: 6000,
      electricityTiers: [{ upToKWh: 600, usdPerKWh: 0.11 }, { upToKWh: 1000, usdPerKWh: 0.17 }, { usdPerKWh: 0.29 }],
    });
    const steps = [
      [600, 0.11],
      [1000, 0.17],
      [Number.POSITIVE_INFINITY, 0.29],
    ] as const;
    const bill = (key: "beforeKWh" | "afterKWh") =>
      result.energyByMonth.reduce((sum, { electricity }) => sum + billUsd(500 + electricity[key].value, steps), 0);
    const electricity = electricityOf(result);
    expectClose({ actual: electricity.beforeUsdPerYear, expected: bill("beforeKWh"), ...rounding });
    expectClose({ actual: electricity.savedUsdPerYear, expected: bill("beforeKWh") - bill("afterKWh"), ...rounding });
    const saved = result.energy.electricity.savedKWh.value;
    const average = bill("beforeKWh") / (6000 + result.energy.electricity.beforeKWh.value);
    expect(electricity.savedUsdPerYear / saved).toBeGreaterThan(average);
    expect(result.trace.find(({ id }) => id === "charge/electricity")?.outputs.savedUsdPerYear).toBe(
      electricity.savedUsdPerYear,
    );
    expect(result.assumptions.map(({ path }) => path)).not.toContain("#/rates/electricityUsdPerKWh");
  });

  it("derived: shifts add up to the year, and in a hot place the day saves more than the night", async () => {
    const savedAt = async (nightUsdPerKWh: number, dayUsdPerKWh: number, eveningUsdPerKWh: number) =>
      electricityOf(await estimateWith({ electricityByShift: { nightUsdPerKWh, dayUsdPerKWh, eveningUsdPerKWh } }))
        .savedUsdPerYear;
    const [all, night, day, evening] = [
      await savedAt(1, 1, 1),
      await savedAt(2, 1, 1),
      await savedAt(1, 2, 1),
      await savedAt(1, 1, 2),
    ].map((usd, index, list) => (index === 0 ? usd : usd - list[0]!));
    expectClose({ actual: night! + day! + evening!, expected: all!, ...rounding });
    expect(day!).toBeGreaterThan(night!);
    const summer = electricityOf(
      await estimateWith({
        electricityByShift: {
          nightUsdPerKWh: 1,
          dayUsdPerKWh: 1,
          eveningUsdPerKWh: 1,
          // A summer over the end of the year leaves April to October out.
          summer: {
            firstMonth: "november",
            lastMonth: "march",
            nightUsdPerKWh: 2,
            dayUsdPerKWh: 2,
            eveningUsdPerKWh: 2,
          },
        },
      }),
    );
    const result = await estimateWith({ electricityUsdPerKWh: 1 });
    const winter = [0, 1, 2, 10, 11].reduce(
      (sum, month) => sum + result.energyByMonth[month]!.electricity.savedKWh.value,
      0,
    );
    expectClose({ actual: summer.savedUsdPerYear, expected: all! + winter, ...rounding });
  });

  it("lists what else the house uses when no bill tells it, and draws around the price", async () => {
    const rates = { electricityTiers: [{ upToKWh: 700, usdPerKWh: 0.12 }, { usdPerKWh: 0.24 }] };
    const job = parseJob(documentWith(rates));
    const { energy: _, ...withoutBills } = job;
    const reference = await loadReferenceData(job);
    const result = await estimate(withoutBills, reference, { draws: 200 });
    expect(result.assumptions.map(({ path }) => path)).toContain("#/rates/otherElectricityKWh");
    const { value, p10, p90 } = result.savings.costUsdPerYear;
    expect(p10!).toBeLessThan(value);
    expect(p90!).toBeGreaterThan(value);
  });

  it("refuses steps that do not rise, a last step that ends, and two prices for one fuel", () => {
    const refused = (rates: Rates) => () => parseJob(documentWith(rates));
    expect(
      refused({
        electricityTiers: [{ upToKWh: 700, usdPerKWh: 0.1 }, { upToKWh: 500, usdPerKWh: 0.2 }, { usdPerKWh: 0.3 }],
      }),
    ).toThrow("must rise");
    expect(refused({ naturalGasTiers: [{ upToTherms: 50, usdPerTherm: 1 }] })).toThrow("ends at 50");
    expect(refused({ electricityUsdPerKWh: 0.1, electricityTiers: [{ usdPerKWh: 0.2 }] })).toThrow("Two prices");
  });
});
