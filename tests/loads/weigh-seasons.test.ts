import { describe, expect, it } from "vitest";
import { typicalDays } from "#lib/climate/typical-days.ts";
import { billPeriods, winternessOf } from "#lib/loads/bill-periods.ts";
import { chooseChangePointModel } from "#lib/loads/choose-change-point-model.ts";
import { typicalYear } from "#lib/loads/normal-year-use.ts";
import { type SeasonPrior, weighSeasons } from "#lib/loads/weigh-seasons.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";
import { expectClose } from "#tests/expect-close.ts";

const temperaturesOf = typicalDays(OHARE);
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (value: number) => String(value).padStart(2, "0");
const DATES = DAYS.map((days, month) => ({
  startDate: `2025-${two(month + 1)}-01`,
  endDate: `2025-${two(month + 1)}-${days}`,
}));

const PRIOR: SeasonPrior = {
  baseUsePerDay: 20,
  baseStandardUncertainty: 8,
  winterSwingShare: 0.07,
  winterSwingDoubt: 0.08,
  heatingBalanceF: 59,
  coolingBalanceF: 67,
  balanceStandardUncertaintyF: 5,
};

/** An all-electric household hour by hour: a sine of a day's temperature, heat below 60 °F, cold above 68 °F, 7 % of swing. */
function household({ basePerDay = 18, heatingPerF = 1.6, coolingPerF = 0.9, halfSwingF = 5.6 } = {}) {
  const truth = { base: 0, heating: 0, cooling: 0 };
  const bills = DATES.map((dates, month) => {
    let heating = 0;
    let cooling = 0;
    for (const dayF of temperaturesOf(month + 1, DAYS[month]!)) {
      for (let hour = 0; hour < 24; hour++) {
        const nowF = dayF + halfSwingF * Math.cos((2 * Math.PI * (hour - 15)) / 24);
        heating += (heatingPerF * Math.max(0, 60 - nowF)) / 24;
        cooling += (coolingPerF * Math.max(0, nowF - 68)) / 24;
      }
    }
    const base = DAYS[month]! * basePerDay * (1 + 0.07 * winternessOf({ ...dates, use: 0 }));
    truth.base += base;
    truth.heating += heating;
    truth.cooling += cooling;
    return { ...dates, use: base + heating + cooling };
  });
  return { bills, truth };
}

function weighed(bills: ReturnType<typeof household>["bills"], prior = PRIOR) {
  const periods = billPeriods(bills, temperaturesOf);
  return {
    periods,
    seasons: weighSeasons({
      periods: periods.map((period, i) => ({ ...period, winterness: winternessOf(bills[i]!) })),
      prior,
      year: typicalYear(temperaturesOf),
    })!,
  };
}

describe("seasons weighed with what is known of a household (synthetic bills, derived)", () => {
  it("winterness is 1 in January, −1 in July, and adds up to nothing over a year", () => {
    const each = DATES.map((dates) => winternessOf({ ...dates, use: 0 }));
    expect(each[0]).toBeGreaterThan(0.98);
    expect(each[6]).toBeLessThan(-0.98);
    expect(Math.abs(each.reduce((sum, value, i) => sum + value * DAYS[i]!, 0))).toBeLessThan(0.3);
  });

  it("tells a small cooling season beside a large heating season, which bills alone put into base use", () => {
    const { bills, truth } = household();
    const { periods, seasons } = weighed(bills);
    expect(chooseChangePointModel(periods).model).toBe("heating");
    for (const season of ["heating", "cooling"] as const) {
      const use = season === "heating" ? seasons.heatingUse : seasons.coolingUse;
      const doubt = season === "heating" ? seasons.heatingStandardUncertainty : seasons.coolingStandardUncertainty;
      expect(Math.abs(use - truth[season]), season).toBeLessThan(1.3 * doubt);
    }
    expectClose({
      actual: seasons.heatingUse,
      expected: truth.heating,
      relativeTolerance: 0.05,
      reason: "no scatter but what is taken for it",
    });
  });

  it("with no bill of a season the prior speaks, and says how little it knows", () => {
    const { bills } = household();
    const whole = weighed(bills).seasons;
    const winter = weighed(bills.filter((_, month) => month < 3 || month > 9)).seasons;
    expect(winter.coolingStandardUncertainty).toBeGreaterThan(3 * whole.coolingStandardUncertainty);
  });

  it("what the meter does not serve is no season, and no slope is negative", () => {
    const { bills } = household({ coolingPerF: 0 });
    const { seasons } = weighed(bills, { ...PRIOR, coolingBalanceF: null });
    expect(seasons).toMatchObject({ coolingUse: 0, coolingBalanceF: null });
    const upsideDown = bills.map((bill, month) => ({ ...bill, use: DAYS[month]! * (20 + 5 * Math.cos(month - 6)) }));
    expect(weighed(upsideDown).seasons.heatingUse).toBeGreaterThanOrEqual(0);
  });

  it("a base use that is told moves the answer toward it", () => {
    const { bills: whole } = household({ basePerDay: 26 });
    // Half a year of winter bills leaves base use and heating open.
    const bills = whole.filter((_, month) => month < 3 || month > 9);
    const usual = weighed(bills).seasons.baseUsePerDay;
    const told = weighed(bills, { ...PRIOR, baseUsePerDay: 26, baseStandardUncertainty: 0.5 }).seasons.baseUsePerDay;
    expect(Math.abs(told - 26)).toBeLessThan(Math.abs(usual - 26));
  });
});
