import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { UtilityBill } from "./bills.ts";
import { billDays, MILLISECONDS_PER_DAY } from "./bills.ts";
import type { BillPeriod } from "./change-point-model.ts";

/**
 * Bills as periods with the temperature of each of their days. `temperaturesOf(month, days)` answers with that many
 * daily temperatures of a month (1 to 12): of the typical year when the weather of the billed year is not at hand. Where a
 * bill tells the mean of its days, they are moved to it as a whole; how far they spread stays that of the typical days.
 */
export function billPeriods(
  bills: readonly UtilityBill[],
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[],
): BillPeriod[] {
  return bills.map((bill) => {
    const typicalF = daysByMonth(bill).flatMap(({ month, days }) => temperaturesOf(month, days));
    return { days: billDays(bill), use: bill.use, dailyTemperaturesF: movedTo(bill.meanOutdoorF, typicalF) };
  });
}

function movedTo(meanF: Fahrenheit | undefined, daysF: readonly Fahrenheit[]): readonly Fahrenheit[] {
  if (meanF === undefined) return daysF;
  const shiftF = meanF - daysF.reduce((sum, dayF) => sum + dayF, 0) / daysF.length;
  return daysF.map((dayF) => dayF + shiftF);
}

const DAYS_IN_YEAR = 365.25;
/** Middle of January. */
const MIDWINTER_DAY = 15;

/** Where in the year a bill lies: the mean over its days of a cosine, 1 in midwinter, −1 in midsummer. Source: derived. */
export function winternessOf(bill: UtilityBill): number {
  const days = billDays(bill);
  const start = Date.parse(`${bill.startDate}T00:00:00Z`);
  const yearStart = Date.UTC(new Date(start).getUTCFullYear(), 0, 1);
  const first = (start - yearStart) / MILLISECONDS_PER_DAY - MIDWINTER_DAY;
  const angle = (day: number) => (2 * Math.PI * day) / DAYS_IN_YEAR;
  return (Math.sin(angle(first + days)) - Math.sin(angle(first))) / angle(days);
}

/** How many days of a bill fall into each calendar month that it touches, in order. */
function daysByMonth(bill: UtilityBill): { month: number; days: number }[] {
  const parts: { month: number; days: number }[] = [];
  let left = billDays(bill);
  let [year, month, day] = bill.startDate.split("-").map(Number) as [number, number, number];
  while (left > 0) {
    const days = Math.min(left, daysInMonth(year, month) - day + 1);
    parts.push({ month, days });
    left -= days;
    day = 1;
    month += 1;
    if (month > 12) {
      month = 1;
      year += 1;
    }
  }
  return parts;
}

/** Days of a calendar month, 1 to 12. */
export const daysInMonth = (year: number, month: number): number =>
  (Date.UTC(year, month, 1) - Date.UTC(year, month - 1, 1)) / MILLISECONDS_PER_DAY;
