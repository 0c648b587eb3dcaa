import type { Fahrenheit, Ratio } from "#lib/units/quantity.ts";
import { billPeriods, winternessOf } from "./bill-periods.ts";
import { type BillRemark, remarksOnBills, type UtilityBill, usableBills } from "./bills.ts";
import { chooseChangePointModel, type ModelChoice } from "./choose-change-point-model.ts";
import { typicalYear } from "./normal-year-use.ts";
import { type SeasonPrior, weighSeasons } from "./weigh-seasons.ts";

export interface YearlyUse {
  /** In the bills' own unit, over a typical year; 0 where the bills show no such season. */
  heatingUse: number;
  coolingUse: number;
  /** Use a day that does not follow the weather; null where no season could be told from the bills. */
  baseUsePerDay: number | null;
  /** Of the scatter of the bills and of what they cannot tell apart; null where the use is zero. */
  relativeUncertaintyOfHeatingUse: Ratio | null;
  relativeUncertaintyOfCoolingUse: Ratio | null;
  heatingBalanceF: Fahrenheit | null;
  coolingBalanceF: Fahrenheit | null;
  /** The line that the bills alone would choose, with its statistics. */
  choice: ModelChoice;
  remarks: readonly BillRemark[];
}

/**
 * Heating and cooling use of a typical year from the bills of one fuel: remarks, repair, the change-point line that the
 * bills alone would choose, and the seasons weighed with what is known of the household, run over the typical year.
 * `temperaturesOf(month, days)` answers with that many daily temperatures of a month (1 to 12) of the typical year; it
 * also stands in for the weather of billed days that do not tell theirs, which adds to their scatter and so to the uncertainty.
 * Source: ashrae-guideline-14 (form of), own-method (weighing). Left out: the true weather of the billed
 * year where its bills do not tell how warm it was.
 * @throws InputProblem when fewer than five usable bills remain.
 */
export function yearlyUseFromBills(
  bills: readonly UtilityBill[],
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[],
  prior: SeasonPrior,
): YearlyUse {
  const usable = usableBills(bills);
  const periods = billPeriods(usable, temperaturesOf);
  const choice = chooseChangePointModel(periods);
  const remarks = remarksOnBills(bills);
  const weighed = weighSeasons({
    periods: periods.map((period, index) => ({ ...period, winterness: winternessOf(usable[index]!) })),
    prior,
    year: typicalYear(temperaturesOf),
  });
  if (weighed === null) {
    return {
      heatingUse: 0,
      coolingUse: 0,
      baseUsePerDay: null,
      relativeUncertaintyOfHeatingUse: null,
      relativeUncertaintyOfCoolingUse: null,
      heatingBalanceF: null,
      coolingBalanceF: null,
      choice,
      remarks,
    };
  }
  const { heatingUse, coolingUse, heatingStandardUncertainty, coolingStandardUncertainty } = weighed;
  return {
    heatingUse,
    coolingUse,
    baseUsePerDay: weighed.baseUsePerDay,
    relativeUncertaintyOfHeatingUse: heatingUse > 0 ? heatingStandardUncertainty / heatingUse : null,
    relativeUncertaintyOfCoolingUse: coolingUse > 0 ? coolingStandardUncertainty / coolingUse : null,
    heatingBalanceF: weighed.heatingBalanceF,
    coolingBalanceF: weighed.coolingBalanceF,
    choice,
    remarks,
  };
}
