import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Days, Fahrenheit } from "#lib/units/quantity.ts";

/** One bill of one fuel: first and last day, both counted. Dates as YYYY-MM-DD. */
export interface UtilityBill {
  startDate: string;
  endDate: string;
  use: number;
  isEstimated?: boolean;
  /** Mean outdoor temperature over its days, where the bill or a weather record tells it. */
  meanOutdoorF?: Fahrenheit;
}

/** A remark about one bill, by its place in the list as given. */
export interface BillRemark {
  index: number;
  note: ValidityNote;
}

export const MILLISECONDS_PER_DAY = 86_400_000;
/** Longer bills hide the season: two months in one. Source: practice. */
const LONGEST_USUAL_DAYS = 45;
/** A bill this many times both its neighbors, day for day, is more than a season turning. Source: practice. */
const STANDS_OUT_RATIO = 1.8;
/** A year less this many days still shows both seasons. Source: practice. */
export const LEAST_DAYS_FOR_A_YEAR = 330;

/** Days from first to last, both counted. */
export function billDays({ startDate, endDate }: UtilityBill): Days {
  return dayNumber(endDate) - dayNumber(startDate) + 1;
}

/**
 * What is odd about a list of bills: reversed dates, overlaps, gaps, estimates, two months in one, a bill that stands
 * out from both its neighbors, less than a year. Source: practice.
 */
export function remarksOnBills(bills: readonly UtilityBill[]): BillRemark[] {
  const sorted = bills.map((bill, index) => ({ bill, index })).sort((a, b) => startOf(a.bill) - startOf(b.bill));
  const remarks = sorted.flatMap(({ bill, index }, place) => [
    ...ownRemarks(bill).map((note) => ({ index, note })),
    ...neighborRemarks(bill, sorted[place - 1]?.bill, sorted[place + 1]?.bill).map((note) => ({ index, note })),
  ]);
  const totalDays = bills.reduce((sum, bill) => sum + Math.max(0, billDays(bill)), 0);
  if (bills.length > 0 && totalDays < LEAST_DAYS_FOR_A_YEAR) {
    remarks.push({
      index: bills.length - 1,
      note: {
        code: "bills-less-than-a-year",
        severity: "doubt",
        what: `The bills cover ${totalDays} days.`,
        why: "Heating and cooling cannot both be told from base use without a whole year.",
        nextMove: "Add the missing bills.",
      },
    });
  }
  return remarks;
}

function ownRemarks(bill: UtilityBill): ValidityNote[] {
  const days = billDays(bill);
  const notes: ValidityNote[] = [];
  if (!(days >= 1)) {
    notes.push({
      code: "bill-reversed",
      severity: "problem",
      what: `The bill ends on ${bill.endDate}, before it starts on ${bill.startDate}.`,
      why: "It has no days, so its use belongs nowhere.",
      nextMove: "Correct its dates; it is left out until then.",
    });
  }
  if (days > LONGEST_USUAL_DAYS) {
    notes.push({
      code: "bill-long",
      severity: "doubt",
      what: `The bill covers ${days} days.`,
      why: "Long periods mix cold and mild weather and blur the balance temperature.",
      nextMove: "Enter it month by month if the meter was read in between.",
    });
  }
  if (bill.isEstimated) {
    notes.push({
      code: "bill-estimated",
      severity: "doubt",
      what: `The bill from ${bill.startDate} is an estimate of the utility.`,
      why: "Only the sum with the next read bill is right.",
      nextMove: "It is joined with the next bill that was read.",
    });
  }
  return notes;
}

function neighborRemarks(bill: UtilityBill, before?: UtilityBill, after?: UtilityBill): ValidityNote[] {
  const notes: ValidityNote[] = [];
  const daysBetween = before === undefined ? 0 : startOf(bill) - dayNumber(before.endDate) - 1;
  if (daysBetween < 0) {
    notes.push({
      code: "bill-overlap",
      severity: "problem",
      what: `The bill from ${bill.startDate} overlaps the one before by ${-daysBetween} days.`,
      why: "Those days would count twice.",
      nextMove: "Correct the dates, or remove the bill entered twice; it is left out until then.",
    });
  }
  if (daysBetween > 0) {
    notes.push({
      code: "bill-missing",
      severity: "note",
      what: `${daysBetween} days before ${bill.startDate} have no bill.`,
      why: "What is missing is filled by the model, not by a reading.",
      nextMove: "Add the missing bill.",
    });
  }
  if (before !== undefined && after !== undefined && standsOut(bill, before, after)) {
    notes.push({
      code: "bill-doubled",
      severity: "doubt",
      what: `The use of the bill from ${bill.startDate} is far above both bills beside it.`,
      why: "It may hold two months, or make up for an estimate.",
      nextMove: "Check the reading; join it with the bill that is too low.",
    });
  }
  return notes;
}

function standsOut(bill: UtilityBill, before: UtilityBill, after: UtilityBill): boolean {
  const perDay = (each: UtilityBill) => each.use / billDays(each);
  return perDay(bill) > STANDS_OUT_RATIO * Math.max(perDay(before), perDay(after)) && perDay(bill) > 0;
}

/**
 * The bills that a fit can use, in order of time: reversed and overlapping ones left out, an estimate joined with the
 * bills that follow until one was read.
 */
export function usableBills(bills: readonly UtilityBill[]): UtilityBill[] {
  const inOrder = bills.filter((bill) => billDays(bill) >= 1).sort((a, b) => startOf(a) - startOf(b));
  const usable: UtilityBill[] = [];
  for (const bill of inOrder) {
    const last = usable.at(-1);
    if (last !== undefined && startOf(bill) <= dayNumber(last.endDate)) continue;
    const followsEstimate = last?.isEstimated && startOf(bill) === dayNumber(last.endDate) + 1;
    if (last !== undefined && followsEstimate) {
      usable[usable.length - 1] = joined(last, bill);
    } else {
      usable.push(bill);
    }
  }
  // An estimate at the end has no reading after it.
  return usable.filter((bill) => !bill.isEstimated);
}

function joined(estimate: UtilityBill, next: UtilityBill): UtilityBill {
  const { meanOutdoorF: _, ...bill } = next;
  const both = { ...bill, startDate: estimate.startDate, use: estimate.use + next.use };
  if (estimate.meanOutdoorF === undefined || next.meanOutdoorF === undefined) return both;
  const [firstDays, nextDays] = [billDays(estimate), billDays(next)];
  const sum = firstDays * estimate.meanOutdoorF + nextDays * next.meanOutdoorF;
  return { ...both, meanOutdoorF: sum / (firstDays + nextDays) };
}

const dayNumber = (isoDate: string): number => Date.parse(`${isoDate}T00:00:00Z`) / MILLISECONDS_PER_DAY;
const startOf = (bill: UtilityBill): number => dayNumber(bill.startDate);
