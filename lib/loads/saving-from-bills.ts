import { InputProblem } from "#lib/errors/input-problem.ts";
import { studentTQuantile } from "#lib/numeric/distributions.ts";
import { DAYS_PER_YEAR } from "#lib/units/conversions.ts";
import type { Fahrenheit, Ratio, Share } from "#lib/units/quantity.ts";
import { billPeriods } from "./bill-periods.ts";
import { billDays, LEAST_DAYS_FOR_A_YEAR, type UtilityBill, usableBills } from "./bills.ts";
import { chooseChangePointModel } from "./choose-change-point-model.ts";
import { type NormalYearUse, normalYearUse, typicalYear } from "./normal-year-use.ts";

/** Why the bills cannot tell what was saved. */
export type CannotTell =
  | { code: "too-few-bills"; side: "before" | "after"; days: number }
  | { code: "poor-fit"; side: "before" | "after"; reason: string }
  | { code: "within-uncertainty" };

/** One fuel before or after the work, brought to the typical year. */
export interface BilledYear extends NormalYearUse {
  periodsCount: number;
  billedDays: number;
  /** Each bill says how warm its days were; else the typical year's weather stood in. */
  knowsWeather: boolean;
}

export interface SavingFromBills {
  before: BilledYear | null;
  after: BilledYear | null;
  /** Before less after, in a year of the typical weather; below zero where more is used. Null where not both are told. */
  saved: { value: number; p10: number; p90: number; standardUncertainty: number } | null;
  /** Half-width at 68 % confidence over the saving. */
  fractionalUncertainty: Ratio | null;
  /** Use that does not follow the weather changed by more than its own doubt: something else changed, too. */
  hasOtherChange: boolean;
  cannotTell: CannotTell | null;
}

/** The Guideline accepts a saving whose uncertainty at 68 % confidence is below half of it. From memory. */
export const LARGEST_FRACTIONAL_UNCERTAINTY: Ratio = 0.5;
const CONFIDENCE: Share = 0.68;
/**
 * How far the weather of one year lies from the normal, as a share of its use (standard uncertainty). Taken only where
 * the bills do not say how warm it was. Practice: the spread of yearly degree days in the United States, from memory.
 */
const YEAR_TO_YEAR_SHARE = { heating: 0.08, cooling: 0.15 } as const;
const OTHER_CHANGE_UNCERTAINTIES = 2;

/**
 * What bills from before and after a work say was saved in a year of the typical weather: a change-point model of each
 * period, both run over the same normal year, and their difference.
 * saving = E_before − E_after; u² = u²_before + u²_after, each of the scatter of its bills and, where they do not say how
 * warm it was, of the weather from year to year; degrees of freedom by Welch and Satterthwaite; P10 and P90 by Student's t.
 * It cannot tell when a period lacks a year of bills, when the weather does not explain them, or when t·u at 68 % is
 * half of the saving or more.
 * Valid for one fuel, bills of the whole house. Source: ashrae-guideline-14, fractional savings uncertainty, and
 * ipmvp-option-c, normalized savings (form of both, from memory). Left out: changes of the household between the two,
 * which are only pointed at.
 */
export function savingFromBills({
  before,
  after,
  temperaturesOf,
}: {
  before: readonly UtilityBill[];
  after: readonly UtilityBill[];
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[];
}): SavingFromBills {
  const earlier = readYear(before, "before", temperaturesOf);
  const later = readYear(after, "after", temperaturesOf);
  const nothing = { saved: null, fractionalUncertainty: null, hasOtherChange: false };
  if ("code" in earlier || "code" in later) {
    return {
      before: "code" in earlier ? null : earlier,
      after: "code" in later ? null : later,
      ...nothing,
      cannotTell: "code" in earlier ? earlier : (later as CannotTell),
    };
  }
  const value = earlier.totalUse - later.totalUse;
  const { standardUncertainty, degreesOfFreedom } = combine([doubtOf(earlier), doubtOf(later)].flat());
  const half = (probability: number) => studentTQuantile({ probability, degreesOfFreedom }) * standardUncertainty;
  const at68 = half((1 + CONFIDENCE) / 2);
  // Written so that a saving of nothing is not told either.
  const isTold = at68 < LARGEST_FRACTIONAL_UNCERTAINTY * Math.abs(value);
  return {
    before: earlier,
    after: later,
    saved: { value, p10: value - half(0.9), p90: value + half(0.9), standardUncertainty },
    fractionalUncertainty: value === 0 ? null : at68 / Math.abs(value),
    hasOtherChange:
      Math.abs(earlier.baseUse - later.baseUse) >
      OTHER_CHANGE_UNCERTAINTIES * Math.hypot(earlier.baseStandardUncertainty, later.baseStandardUncertainty),
    cannotTell: isTold ? null : { code: "within-uncertainty" },
  };
}

function readYear(
  bills: readonly UtilityBill[],
  side: "before" | "after",
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[],
): BilledYear | CannotTell {
  const used = usableBills(bills);
  const billedDays = used.reduce((sum, bill) => sum + billDays(bill), 0);
  if (!(billedDays >= LEAST_DAYS_FOR_A_YEAR)) return { code: "too-few-bills", side, days: billedDays };
  const periods = billPeriods(used, temperaturesOf);
  try {
    const { model, fit, reason } = chooseChangePointModel(periods);
    if (model === "base-only" || fit === null) return { code: "poor-fit", side, reason };
    const use = normalYearUse({ periods, model, fit, year: typicalYear(temperaturesOf) });
    if (use === null) return { code: "poor-fit", side, reason: "The bills do not tell base use and season apart." };
    const knowsWeather = used.every((bill) => bill.meanOutdoorF !== undefined);
    return { ...use, periodsCount: used.length, billedDays, knowsWeather };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { code: "poor-fit", side, reason: `${thrown.errors[0]!.detail}.` };
  }
}

interface Doubt {
  standardUncertainty: number;
  degreesOfFreedom: number;
}

/** The scatter of the bills, and the weather where it was not told: independent of each other and between years. */
function doubtOf(year: BilledYear): Doubt[] {
  const scatter = { standardUncertainty: year.totalStandardUncertainty, degreesOfFreedom: year.degreesOfFreedom };
  if (year.knowsWeather) return [scatter];
  const oneYear = Math.hypot(
    YEAR_TO_YEAR_SHARE.heating * year.heatingUse,
    YEAR_TO_YEAR_SHARE.cooling * year.coolingUse,
  );
  const years = Math.max(1, year.billedDays / DAYS_PER_YEAR);
  return [scatter, { standardUncertainty: oneYear / Math.sqrt(years), degreesOfFreedom: Number.POSITIVE_INFINITY }];
}

/** Independent doubts together, with their effective degrees of freedom (Welch and Satterthwaite, from memory). */
function combine(doubts: readonly Doubt[]): Doubt {
  const standardUncertainty = Math.hypot(...doubts.map((each) => each.standardUncertainty));
  const fourths = doubts.reduce((sum, each) => sum + each.standardUncertainty ** 4 / each.degreesOfFreedom, 0);
  // Student's t is the normal for practical purposes from here on; bills without any scatter have no fourths.
  const MOST = 1000;
  return {
    standardUncertainty,
    degreesOfFreedom: fourths > 0 ? Math.min(MOST, standardUncertainty ** 4 / fourths) : MOST,
  };
}
