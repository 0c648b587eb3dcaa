import { typicalDays } from "#lib/climate/typical-days.ts";
import type { UtilityBill } from "#lib/loads/bills.ts";
import { savingFromBills } from "#lib/loads/saving-from-bills.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";

export const temperaturesOf = typicalDays(OHARE);
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (value: number) => String(value).padStart(2, "0");

/** The truth behind the bills: gas a day, and more for each degree below 62 °F. */
export const household = (therms: { heatingPerF: number; basePerDay?: number }) => ({ basePerDay: 0.8, ...therms });
export const LEAKY = household({ heatingPerF: 0.12 });
export const SEALED = household({ heatingPerF: 0.1 });

function truthOf({ basePerDay, heatingPerF }: typeof LEAKY): number {
  const degrees = DAYS.flatMap((days, month) => [...temperaturesOf(month + 1, days)]).reduce(
    (sum, dayF) => sum + Math.max(0, 62 - dayF),
    0,
  );
  return 365 * basePerDay + heatingPerF * degrees;
}
/** Of about 2.6 therms a day: what is usual for gas bills with the weather told. */
const SCATTER_PER_DAY = 0.2;
export const SAVED = truthOf(LEAKY) - truthOf(SEALED);

/** Twelve bills of a year whose months are warmer or colder than the typical ones, each with scatter of its own. */
export function billsOf({
  year,
  truth,
  shiftF = () => 0,
  scatter = () => 0,
  tellsWeather = true,
}: {
  year: number;
  truth: typeof LEAKY;
  shiftF?: (month: number) => number;
  scatter?: (month: number) => number;
  tellsWeather?: boolean;
}): UtilityBill[] {
  return DAYS.map((days, month) => {
    const daysF = temperaturesOf(month + 1, days).map((dayF) => dayF + shiftF(month));
    const degrees = daysF.reduce((sum, dayF) => sum + Math.max(0, 62 - dayF), 0);
    return {
      startDate: `${year}-${two(month + 1)}-01`,
      endDate: `${year}-${two(month + 1)}-${days}`,
      use: Math.max(0, truth.basePerDay * days + truth.heatingPerF * degrees + days * scatter(month)),
      ...(tellsWeather ? { meanOutdoorF: daysF.reduce((sum, dayF) => sum + dayF, 0) / days } : {}),
    };
  });
}

/** Pairs of years: weather of their own, month by month, and scatter. */
export function study({ truth, seed, pairs }: { truth: typeof LEAKY; seed: number; pairs: number }) {
  const source = createDrawSource(seed);
  return Array.from({ length: pairs }, (_, pair) => {
    const normals = new Float64Array(50);
    source.fillNormals(pair, normals);
    const one = (year: number, each: typeof LEAKY, from: number) =>
      billsOf({
        year,
        truth: each,
        shiftF: (month) => 2 * normals[from]! + 2 * normals[from + 1 + month]!,
        scatter: (month) => SCATTER_PER_DAY * normals[from + 13 + month]!,
      });
    return savingFromBills({ before: one(2023, LEAKY, 0), after: one(2025, truth, 25), temperaturesOf });
  });
}
