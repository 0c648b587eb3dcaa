import { describe, expect, it } from "vitest";
import { typicalDays } from "#lib/climate/typical-days.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

const COLD = "cold-attic-furnace.json";
const CRAWL = "mixed-crawlspace-heat-pump.json";
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (value: number) => String(value).padStart(2, "0");

/** What a household uses a day, by the day's temperature: the truth behind the bills. */
interface Household {
  basePerDay: number;
  heatingPerF?: number;
  heatingBalanceF?: number;
  coolingPerF?: number;
  coolingBalanceF?: number;
}

type UseField = "naturalGasTherms" | "electricityKWh";

/** Twelve bills of the typical year of the house's own station, with the heating and cooling use that is in them. */
function billsOf(reference: ReferenceData, field: UseField, household: Household, wobble = 0) {
  const temperaturesOf = typicalDays(reference.climate);
  let heating = 0;
  let cooling = 0;
  const bills = DAYS.map((days, month): Bill => {
    let warm = 0;
    let cold = 0;
    for (const dayF of temperaturesOf(month + 1, days)) {
      warm += (household.heatingPerF ?? 0) * Math.max(0, (household.heatingBalanceF ?? 0) - dayF);
      cold += (household.coolingPerF ?? 0) * Math.max(0, dayF - (household.coolingBalanceF ?? 0));
    }
    heating += warm;
    cooling += cold;
    const use = (household.basePerDay * days + warm + cold) * (1 + wobble * Math.sin(7 * month));
    return { startDate: `2025-${two(month + 1)}-01`, endDate: `2025-${two(month + 1)}-${days}`, [field]: use };
  });
  return { bills, heating, cooling };
}

/**
 * Bills without scatter are taken to scatter as bills do, days to have a cool and a warm part, and base use and balance
 * to lie near the usual: what is weighed so comes close to the household's truth, not onto it.
 */
const WEIGHED = { relativeTolerance: 0.04, reason: "weighed with what is known of any household" } as const;
const GAS: Household = { basePerDay: 0.6, heatingPerF: 0.11, heatingBalanceF: 61 };
const ELECTRIC: Household = {
  basePerDay: 18,
  heatingPerF: 0.9,
  heatingBalanceF: 57,
  coolingPerF: 1.4,
  coolingBalanceF: 68,
};

async function withBills(
  file: string,
  field: UseField,
  household: Household,
  { wobble = 0, change = (bills: Bill[]) => bills, energy = {} as Job["energy"], draws = 0 } = {},
) {
  const { job, reference } = await exampleWithReference(file);
  const made = billsOf(reference, field, household, wobble);
  const chosenMeasures = job.sites.slice(0, 1).map(({ id }) => ({ siteId: id, repairId: "patch-and-mastic" }));
  const billed: Job = {
    ...job,
    plan: { ...job.plan, chosenMeasures },
    energy: {
      baseUse: { electricityWinterSwingShare: 0, fuelWinterSwingShare: 0 },
      ...energy,
      bills: change(made.bills),
    },
  };
  return { ...made, result: await estimate(billed, reference, { draws }) };
}

const evidenceOf = (result: Result, mode: "heating" | "cooling") =>
  result.loads.seasons.find((season) => season.mode === mode)!.evidence;
const codes = (result: Result) => result.warnings.map(({ code }) => code);

describe("the need from bills (synthetic bills of the typical year, derived)", () => {
  it("gas: heating of a normal year is what the household burned for it, base use kept apart", async () => {
    const { result, heating } = await withBills(COLD, "naturalGasTherms", GAS);
    expectClose({
      actual: result.energy.naturalGas.beforeTherms.value,
      expected: heating,
      ...WEIGHED,
    });
    const [bills] = result.loads.bills;
    expectClose({ actual: bills!.baseUse!, expected: 219, ...WEIGHED });
    expect(evidenceOf(result, "heating")[0]).toMatchObject({ from: "bills", isUsed: true, unit: "therm" });
    const balance = result.assumptions.find(({ path }) => path === "#/house/heatingBalanceF")!;
    expectClose({
      actual: Number(balance.value),
      expected: 61,
      ...WEIGHED,
    });
    expect(balance.reason).toContain("12 gas bills");
  });

  it("heat pump and cooling on one meter: both seasons told apart, blower within the bills", async () => {
    const { result, heating, cooling } = await withBills(CRAWL, "electricityKWh", ELECTRIC, {
      energy: { baseUse: { electricityPerDayKWh: ELECTRIC.basePerDay, electricityWinterSwingShare: 0 } },
    });
    expect(result.loads.bills[0]).toMatchObject({ fuel: "electricity", model: "both" });
    expectClose({
      actual: result.energy.electricity.beforeKWh.value,
      expected: heating + cooling,
      relativeTolerance: 0.1,
      reason: "as WEIGHED, of a season that is a third of the bills; base use is not among it, the blower is",
    });
    const used = ["heating", "cooling"].map(
      (mode) => evidenceOf(result, mode as "heating").find(({ isUsed }) => isUsed)!,
    );
    expect(used.map(({ from }) => from)).toEqual(["bills", "bills"]);
    // Shown without the blower, so that it compares with a known use.
    expect(used[0]!.value).toBeLessThan(heating);
    expect(used[0]!.value).toBeGreaterThan(0.7 * heating);
  });

  it("electric furnace alone: the winter of the meter is its heat and blower", async () => {
    const { job, reference } = await exampleWithReference(COLD);
    const { bills, heating } = billsOf(reference, "electricityKWh", {
      basePerDay: 15,
      heatingPerF: 2.2,
      heatingBalanceF: 60,
    });
    const electric: Job = {
      ...job,
      systems: job.systems.map((system) => ({
        ...system,
        heating: { kind: "electric-furnace", outputBtuPerH: 64_000 },
        cooling: undefined,
      })),
      energy: { bills },
    };
    const result = await estimate(electric, reference);
    expectClose({
      actual: result.energy.electricity.beforeKWh.value,
      expected: heating,
      ...WEIGHED,
    });
  });

  it("best evidence first, and what is asked for before it", async () => {
    const knownUse = { heatingNaturalGasTherms: 700, coolingElectricityKWh: 1000 };
    const used = async (prefer?: "bills" | "known-use" | "building") => {
      const { result } = await withBills(COLD, "naturalGasTherms", GAS, { energy: { knownUse, prefer } });
      const evidence = evidenceOf(result, "heating");
      expect(evidence.map(({ from }) => from)).toEqual(["bills", "known-use", "building"]);
      return { from: evidence.find(({ isUsed }) => isUsed)!.from, result };
    };
    expect((await used()).from).toBe("bills");
    const known = await used("known-use");
    expect(known.from).toBe("known-use");
    expectClose({
      actual: known.result.energy.naturalGas.beforeTherms.value,
      expected: 700,
      relativeTolerance: 1e-9,
      reason: "told in the job",
    });
    expect((await used("building")).from).toBe("building");
    // No cooling shows in gas bills: there the known use stays the best.
    expect(evidenceOf((await used("bills")).result, "cooling")[0]).toMatchObject({ from: "known-use", isUsed: true });
  });

  it("says what is odd about which bill: missing, estimated, doubled", async () => {
    const { result } = await withBills(COLD, "naturalGasTherms", GAS, {
      change: (bills) =>
        bills
          .filter((_, month) => month !== 4)
          .map((bill, index) =>
            index === 9 ? { ...bill, isEstimated: true } : index === 5 ? { ...bill, naturalGasTherms: 90 } : bill,
          ),
    });
    const pointers = Object.fromEntries(
      result.warnings.filter(({ code }) => code.startsWith("bill-")).map(({ code, path }) => [code, path]),
    );
    expect(pointers).toEqual({
      "bill-missing": "#/energy/bills/4/naturalGasTherms",
      "bill-doubled": "#/energy/bills/5/naturalGasTherms",
      "bill-estimated": "#/energy/bills/9/naturalGasTherms",
    });
  });

  it("never claims more than the bills hold, whatever the building says", async () => {
    const small: Household = { basePerDay: 2 };
    const { result } = await withBills(COLD, "electricityKWh", small, { draws: 300 });
    expect(codes(result)).toContain("bills-show-no-season");
    const { beforeKWh, savedKWh } = result.energy.electricity;
    expect(evidenceOf(result, "cooling").find(({ isUsed }) => isUsed)!.from).toBe("building");
    expect(evidenceOf(result, "cooling").find(({ isUsed }) => isUsed)!.value).toBeLessThanOrEqual(730 * (1 + 1e-9));
    expect(savedKWh.p90!).toBeLessThan(730);
    // The furnace's blower in winter comes on top of the cooling, and that is said.
    if (beforeKWh.value > 1.02 * 730) expect(codes(result)).toContain("more-than-billed");
  });

  it("says what it likely means when bills and building disagree", async () => {
    const tight = await withBills(COLD, "naturalGasTherms", { ...GAS, heatingPerF: 0.04 });
    const warning = tight.result.warnings.find(({ code }) => code === "load-evidence-disagrees")!;
    expect(warning.what).toContain("By the building");
    expect(warning.why).toContain("better insulated");
    const alike = await withBills(COLD, "naturalGasTherms", { ...GAS, heatingPerF: 0.26 });
    expect(codes(alike.result)).not.toContain("load-evidence-disagrees");
  });

  it("carries the doubt of the fit into the range of the saving", async () => {
    const width = async (wobble: number) => {
      const { result } = await withBills(COLD, "naturalGasTherms", GAS, { wobble, draws: 2000 });
      const bills = evidenceOf(result, "heating")[0]!;
      return { doubt: bills.relativeUncertaintyRatio, before: result.energy.naturalGas.beforeTherms };
    };
    const smooth = await width(0);
    const rough = await width(0.5);
    expect(rough.doubt).toBeGreaterThan(1.2 * smooth.doubt);
    const spread = ({ before }: typeof smooth) => (before.p90! - before.p10!) / before.value;
    expect(spread(rough)).toBeGreaterThan(1.15 * spread(smooth));
    expectClose({
      actual: spread(smooth),
      expected: 2 * 1.2816 * smooth.doubt,
      relativeTolerance: 0.08,
      reason: "2,000 draws of a lognormal number",
    });
  });

  it("goes on without bills that cannot be used, and says why", async () => {
    const { result } = await withBills(COLD, "naturalGasTherms", GAS, { change: (bills) => bills.slice(0, 3) });
    expect(codes(result)).toContain("bills-not-used");
    expect(evidenceOf(result, "heating").map(({ from }) => from)).toEqual(["building"]);
  });

  it("follows the bills in proportion", async () => {
    const scaled = (factor: number) =>
      withBills(COLD, "naturalGasTherms", {
        ...GAS,
        basePerDay: factor * GAS.basePerDay,
        heatingPerF: factor * GAS.heatingPerF!,
      });
    const one = await scaled(1);
    const half = await scaled(0.5);
    expectClose({
      actual: one.result.energy.naturalGas.savedTherms.value,
      expected: 2 * half.result.energy.naturalGas.savedTherms.value,
      relativeTolerance: 0.005,
      reason: "a furnace's use is proportional to the need; what is known of a household's base use is not halved",
    });
  });
});
