import type { Bill } from "#lib/job/energy-use.ts";
import { billDays, type UtilityBill } from "#lib/loads/bills.ts";
import type { Fuel } from "../fuels.ts";

const FIELDS = {
  electricity: "electricityKWh",
  naturalGas: "naturalGasTherms",
  propane: "propaneGallons",
  fuelOil: "fuelOilGallons",
} as const satisfies Record<Fuel, keyof Bill>;

/** A bill longer than a year tells no season at all. */
const LONGEST_DAYS = 400;

export const billField = (fuel: Fuel): (typeof FIELDS)[Fuel] => FIELDS[fuel];

/** A bill of one fuel and its place in the job's list. */
export interface GivenBill {
  bill: UtilityBill;
  at: number;
}

/** The bills that hold a fuel, in the order of the job; those of more than a year left out. */
export function billsOfFuel(bills: readonly Bill[], fuel: Fuel): GivenBill[] {
  return bills.flatMap((given, at) => {
    const { startDate, endDate, isEstimated, meanOutdoorF } = given;
    const use = given[FIELDS[fuel]];
    const bill = { startDate, endDate, use: use ?? 0, isEstimated, meanOutdoorF };
    return use === undefined || billDays(bill) > LONGEST_DAYS ? [] : [{ bill, at }];
  });
}

/**
 * Bills that ended before the last day of the work, and those that began after it; one that holds that day tells
 * neither, nor does one that makes up for an estimate of the time before. Without a date all are from before.
 */
export function splitAtWork(
  given: readonly GivenBill[],
  workDoneDate: string | undefined,
): { before: GivenBill[]; after: GivenBill[] } {
  if (workDoneDate === undefined) return { before: [...given], after: [] };
  const inOrder = [...given].sort((a, b) => (a.bill.startDate < b.bill.startDate ? -1 : 1));
  const after = inOrder.filter(({ bill }) => bill.startDate > workDoneDate);
  const lastNotAfter = inOrder.at(-after.length - 1);
  const firstRead = after.findIndex(({ bill }) => !bill.isEstimated);
  return {
    before: given.filter(({ bill }) => bill.endDate < workDoneDate),
    after: after.length < inOrder.length && lastNotAfter?.bill.isEstimated ? after.slice(firstRead + 1) : after,
  };
}
