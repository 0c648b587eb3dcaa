import { typicalDays } from "#lib/climate/typical-days.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { billDays, usableBills } from "#lib/loads/bills.ts";
import { type YearlyUse, yearlyUseFromBills } from "#lib/loads/yearly-use-from-bills.ts";
import { DAYS_PER_YEAR } from "#lib/units/conversions.ts";
import { FUEL_LABELS, FUELS, type Fuel } from "../fuels.ts";
import type { BuildingModel } from "./complete-building.ts";
import type { HouseModelInput } from "./complete-house.ts";
import { seasonPrior } from "./season-prior.ts";
import { billField, billsOfFuel, type GivenBill, splitAtWork } from "./split-bills.ts";

/** What the bills of one fuel say of a typical year. */
export interface BilledFuel {
  fuel: Fuel;
  periodsCount: number;
  billedDays: number;
  /** Each bill tells how warm its days were. */
  knowsWeather: boolean;
  yearly: YearlyUse;
  /** Everything on these bills, a year of 365 days at their own mean rate. */
  totalUsePerYear: number;
}

/** What the meter of a fuel serves. */
export interface MeterUse {
  heats: boolean;
  cools: boolean;
}

type Input = HouseModelInput & { building: BuildingModel; serves: (fuel: Fuel) => MeterUse };

function readFuel(input: Input, fuel: Fuel, given: readonly GivenBill[]): BilledFuel | null {
  const { climate, ledger, job, building, serves } = input;
  const bills = given.map(({ bill }) => bill);
  try {
    const yearly = yearlyUseFromBills(
      bills,
      typicalDays(climate),
      seasonPrior({ fuel, meter: serves(fuel), building, told: job.energy?.baseUse, ledger }),
    );
    for (const { index, note } of yearly.remarks) {
      const { at } = given.find(({ bill }) => bill === bills[index])!;
      ledger.warn({ ...note, path: `#/energy/bills/${at}/${billField(fuel)}` });
    }
    const used = usableBills(bills);
    const billedDays = used.reduce((sum, bill) => sum + billDays(bill), 0);
    const use = used.reduce((sum, bill) => sum + bill.use, 0);
    return {
      fuel,
      periodsCount: used.length,
      billedDays,
      knowsWeather: used.every(({ meanOutdoorF }) => meanOutdoorF !== undefined),
      yearly,
      totalUsePerYear: (DAYS_PER_YEAR * use) / billedDays,
    };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    const [problem] = thrown.errors;
    ledger.warn({
      code: "bills-not-used",
      path: "#/energy/bills",
      severity: "doubt",
      what: `The ${FUEL_LABELS[fuel]} bills are not used: ${problem!.detail}.`,
      why: "A season is told from how bills follow the weather; these do not show it.",
      nextMove: problem!.fix,
    });
    return null;
  }
}

/**
 * Reads the bills of each fuel: change-point model, normal year, base use apart; each odd bill becomes a warning that
 * points at it. Heating and cooling are looked for where the equipment on the meter has them. Once the day of the work is told, of the bills before it. Source: ashrae-guideline-14 (form of).
 * Left out: the weather of the billed year where the bills do not tell it.
 */
export function readBills(input: Input): BilledFuel[] {
  const bills = input.job.energy?.bills ?? [];
  return FUELS.flatMap((fuel) => {
    const given = splitAtWork(billsOfFuel(bills, fuel), input.job.plan?.workDoneDate).before;
    const read = given.length > 0 ? readFuel(input, fuel, given) : null;
    return read ? [read] : [];
  });
}
