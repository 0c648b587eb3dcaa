import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Fahrenheit, Ratio } from "#lib/units/quantity.ts";
import { type BillColumns, billColumns } from "./bill-columns.ts";
import {
  type BalanceTemperatures,
  type BillPeriod,
  type ChangePointModel,
  PARAMETERS_OF,
  type Season,
} from "./change-point-model.ts";
import { fitLinearPart } from "./fit-linear-part.ts";
import { searchBalances } from "./search-balances.ts";

export interface ChangePointFit {
  baseUsePerDay: number;
  heatingSlope: number;
  coolingSlope: number;
  balanceHeatingF: Fahrenheit | null;
  balanceCoolingF: Fahrenheit | null;
  cvRmse: Ratio;
  nmbe: Ratio;
  rSquared: Ratio;
  /** Over the fitted periods. */
  heatingUse: number;
  coolingUse: number;
  /** The search ended at its limit: the bills do not tell the balance temperature. */
  isBalanceAtLimit: boolean;
}

/**
 * Splits bills into base, heating and cooling use by the temperature beyond which use rises.
 * use/days = b + s_h·avg(T_bh − T)+ + s_c·avg(T − T_bc)+, averages over the days of the period where they are known;
 * balance temperatures searched (grid, then refined), b and slopes by least squares weighted by days, slopes ≥ 0.
 * With n periods, p parameters (3, or 5 for both) and misses of use per day: cvRmse = √(Σ w e²/(n − p))/ȳ,
 * nmbe = Σ w e/((n − p) ȳ), rSquared = 1 − Σ w e²/Σ w (y − ȳ)².
 * Valid for at least p + 1 periods; balance temperatures within the second coldest and second warmest period.
 * Source: ashrae-guideline-14 (form of). Left out: sun, holidays, vacancy.
 * @throws InputProblem when there are too few periods, a temperature is missing, or the use is zero throughout.
 */
export function fitChangePoint({
  periods,
  model,
}: {
  periods: readonly BillPeriod[];
  model: ChangePointModel;
}): ChangePointFit {
  const parameters = PARAMETERS_OF[model];
  if (!(periods.length > parameters)) {
    refuse({
      field: "periods",
      detail: `The ${model} model needs at least ${parameters + 1} periods, not ${periods.length}`,
      fix: "Add bills, best a whole year of them, or fit heating or cooling alone.",
    });
  }
  periods.forEach(checkPeriod);
  const columns = billColumns(periods);
  const { balance, isAtLimit } = searchBalances(columns, model);
  return describeFit({ periods, columns, parameters, balance, isAtLimit });
}

function describeFit({
  periods,
  columns,
  parameters,
  balance,
  isAtLimit,
}: {
  periods: readonly BillPeriod[];
  columns: BillColumns;
  parameters: number;
  balance: BalanceTemperatures;
  isAtLimit: boolean;
}): ChangePointFit {
  const fit = fitLinearPart(columns, balance);
  const totalDays = periods.reduce((sum, period) => sum + period.days, 0);
  const meanUsePerDay = periods.reduce((sum, period) => sum + period.use, 0) / totalDays;
  if (!(meanUsePerDay > 0)) {
    refuse({ field: "periods", detail: "All bills are zero", fix: "Enter the use of each period." });
  }
  const { heatingUse, coolingUse } = seasonalUse(periods, {
    heatingSlope: fit.heatingSlope,
    coolingSlope: fit.coolingSlope,
    balanceHeatingF: balance.heatingF,
    balanceCoolingF: balance.coolingF,
  });
  const weight = periods.length / totalDays;
  const variation = periods.reduce(
    (sum, period) => sum + weight * period.days * (period.use / period.days - meanUsePerDay) ** 2,
    0,
  );
  const totalMiss = weight * (meanUsePerDay * totalDays - fit.baseUsePerDay * totalDays - heatingUse - coolingUse);
  const freedom = periods.length - parameters;
  return {
    baseUsePerDay: fit.baseUsePerDay,
    heatingSlope: fit.heatingSlope,
    coolingSlope: fit.coolingSlope,
    balanceHeatingF: balance.heatingF,
    balanceCoolingF: balance.coolingF,
    cvRmse: Math.sqrt(fit.squaredMisses / freedom) / meanUsePerDay,
    nmbe: totalMiss / freedom / meanUsePerDay,
    // Bills that never vary are explained wholly by their base.
    rSquared: variation > 0 ? 1 - fit.squaredMisses / variation : 1,
    heatingUse,
    coolingUse,
    isBalanceAtLimit: isAtLimit,
  };
}

/** Heating and cooling use of any periods by a fitted model, base use left out: a typical year's too. */
export function seasonalUse(
  periods: readonly Omit<BillPeriod, "use">[],
  fit: Pick<ChangePointFit, "heatingSlope" | "coolingSlope" | "balanceHeatingF" | "balanceCoolingF">,
): { heatingUse: number; coolingUse: number } {
  const { degrees } = billColumns(periods.map((period) => ({ ...period, use: 0 })));
  const degreeDays = (season: Season, balanceF: Fahrenheit | null) =>
    balanceF === null
      ? 0
      : degrees(season, balanceF).reduce((sum, average, index) => sum + periods[index]!.days * average, 0);
  return {
    heatingUse: fit.heatingSlope * degreeDays("heating", fit.balanceHeatingF),
    coolingUse: fit.coolingSlope * degreeDays("cooling", fit.balanceCoolingF),
  };
}

function checkPeriod(period: BillPeriod, index: number): void {
  const field = (name: string) => `periods/${index}/${name}`;
  requireAbove({ field: field("days"), label: "Days of the period", value: period.days });
  requireBetween({ field: field("use"), label: "Use", value: period.use, low: 0, high: Number.MAX_VALUE });
  const { dailyTemperaturesF, meanTemperatureF } = period;
  if (dailyTemperaturesF === undefined && meanTemperatureF === undefined) {
    refuse({
      field: field("meanTemperatureF"),
      detail: "The period has neither daily temperatures nor their mean",
      fix: "Give dailyTemperaturesF, one a day, or meanTemperatureF.",
    });
  }
  if (dailyTemperaturesF !== undefined && dailyTemperaturesF.length !== period.days) {
    refuse({
      field: field("dailyTemperaturesF"),
      detail: `A period of ${period.days} days must have as many daily temperatures, not ${dailyTemperaturesF.length}`,
      fix: "Give one temperature for each day of the period, or the mean alone.",
    });
  }
  (dailyTemperaturesF ?? [meanTemperatureF!]).forEach((value) => {
    requireBetween({
      field: field("dailyTemperaturesF"),
      label: "Temperature",
      value,
      unit: "°F",
      low: -80,
      high: 130,
    });
  });
}
