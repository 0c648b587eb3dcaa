import type { Fahrenheit, Ratio } from "#lib/units/quantity.ts";
import { billPeriods } from "./bill-periods.ts";
import { type BillRemark, remarksOnBills, type UtilityBill, usableBills } from "./bills.ts";
import { changePointDoubt } from "./change-point-doubt.ts";
import { seasonalUse } from "./change-point-fit.ts";
import { chooseChangePointModel, type ModelChoice } from "./choose-change-point-model.ts";
import { typicalYear } from "./normal-year-use.ts";

export interface YearlyUse {
  /** In the bills' own unit, over a typical year; 0 where the bills show no such season. */
  heatingUse: number;
  coolingUse: number;
  /** Use a day that does not follow the weather; null where no season could be told from the bills. */
  baseUsePerDay: number | null;
  relativeUncertaintyOfHeatingUse: Ratio | null;
  relativeUncertaintyOfCoolingUse: Ratio | null;
  choice: ModelChoice;
  remarks: readonly BillRemark[];
}

/**
 * Heating and cooling use of a typical year from the bills of one fuel: remarks, repair, choice of a change-point model,
 * fit, and the fitted model run over the typical year.
 * `temperaturesOf(month, days)` answers with that many daily temperatures of a month (1 to 12) of the typical year; it
 * also stands in for the weather of billed days that do not tell theirs, which adds to their scatter and so to the uncertainty.
 * Source: ashrae-guideline-14 (form of). Left out: the true weather of the billed
 * year where its bills do not tell how warm it was.
 * @throws InputProblem when fewer than five usable bills remain.
 */
export function yearlyUseFromBills(
  bills: readonly UtilityBill[],
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[],
): YearlyUse {
  const periods = billPeriods(usableBills(bills), temperaturesOf);
  const choice = chooseChangePointModel(periods);
  const remarks = remarksOnBills(bills);
  if (choice.model === "base-only" || choice.fit === null) {
    return {
      heatingUse: 0,
      coolingUse: 0,
      baseUsePerDay: null,
      relativeUncertaintyOfHeatingUse: null,
      relativeUncertaintyOfCoolingUse: null,
      choice,
      remarks,
    };
  }
  const doubt = changePointDoubt({ periods, model: choice.model, fit: choice.fit });
  return {
    ...seasonalUse(typicalYear(temperaturesOf), choice.fit),
    baseUsePerDay: choice.fit.baseUsePerDay,
    relativeUncertaintyOfHeatingUse: doubt.relativeUncertaintyOfHeatingUse,
    relativeUncertaintyOfCoolingUse: doubt.relativeUncertaintyOfCoolingUse,
    choice,
    remarks,
  };
}
