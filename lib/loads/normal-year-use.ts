import { DAYS_PER_YEAR } from "#lib/units/conversions.ts";
import type { Fahrenheit, Ratio } from "#lib/units/quantity.ts";
import { daysInMonth } from "./bill-periods.ts";
import { type ChangePointFit, seasonalUse } from "./change-point-fit.ts";
import type { BillPeriod, ChangePointModel } from "./change-point-model.ts";
import { changesOf, fitCovariance } from "./fit-covariance.ts";

/** A typical year has no leap day. */
const A_YEAR_OF_365_DAYS = 2023;

/** What one fitted model says of a year of the typical weather, in the bills' own unit. */
export interface NormalYearUse {
  totalUse: number;
  heatingUse: number;
  coolingUse: number;
  /** Use that does not follow the weather. */
  baseUse: number;
  /** Standard uncertainty of the total, of the scatter of the bills alone. */
  totalStandardUncertainty: number;
  baseStandardUncertainty: number;
  degreesOfFreedom: number;
  cvRmse: Ratio;
}

/** The months of a year of typical weather, as periods without use. */
export function typicalYear(
  temperaturesOf: (month: number, days: number) => readonly Fahrenheit[],
): Omit<BillPeriod, "use">[] {
  return Array.from({ length: 12 }, (_, index) => {
    const days = daysInMonth(A_YEAR_OF_365_DAYS, index + 1);
    return { days, dailyTemperaturesF: temperaturesOf(index + 1, days) };
  });
}

/**
 * Use of a normal year by a fitted model, and how far the scatter of its bills lets it be off.
 * E = 365 b + s_h·D_h + s_c·D_c; u²(E) = gᵀ s² (JᵀWJ)⁻¹ g, J the change of each period's use a day with base, slopes
 * and balance temperatures, g that of E, s² = Σ w e²/(n − p).
 * Valid for more periods than parameters. Source: derived (nonlinear least squares, to first order). Left out: misses
 * of neighboring months that go together; the choice between models.
 * @returns null where the periods do not tell the parameters apart.
 */
export function normalYearUse({
  periods,
  model,
  fit,
  year,
}: {
  periods: readonly BillPeriod[];
  model: ChangePointModel;
  fit: ChangePointFit;
  year: readonly Omit<BillPeriod, "use">[];
}): NormalYearUse | null {
  const { degreesOfFreedom, uncertaintyOf } = fitCovariance({ periods, model, fit });
  const yearRows = changesOf(year, fit);
  const yearChange = yearRows[0]!.map((_, i) => yearRows.reduce((sum, row, at) => sum + year[at]!.days * row[i]!, 0));
  const total = uncertaintyOf(yearChange);
  const base = uncertaintyOf(yearChange.map((_, index) => (index === 0 ? DAYS_PER_YEAR : 0)));
  if (total === null || base === null) return null;
  const seasonal = seasonalUse(year, fit);
  const baseUse = DAYS_PER_YEAR * fit.baseUsePerDay;
  return {
    totalUse: baseUse + seasonal.heatingUse + seasonal.coolingUse,
    ...seasonal,
    baseUse,
    totalStandardUncertainty: total,
    baseStandardUncertainty: base,
    degreesOfFreedom,
    cvRmse: fit.cvRmse,
  };
}
