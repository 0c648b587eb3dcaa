import { refuse } from "#lib/errors/input-problem.ts";
import { studentTQuantile } from "#lib/numeric/distributions.ts";
import type { Fahrenheit, Ratio, Share } from "#lib/units/quantity.ts";
import { billColumns } from "./bill-columns.ts";
import { type ChangePointFit, seasonalUse } from "./change-point-fit.ts";
import { type BillPeriod, type ChangePointModel, PARAMETERS_OF } from "./change-point-model.ts";
import { fitCovariance, PARAMETER_ORDER } from "./fit-covariance.ts";
import { fitLinearPart } from "./fit-linear-part.ts";
import { refineBalances } from "./refine-balances.ts";
import { gridCandidates, tellableRange } from "./search-balances.ts";

const PROFILE_STEP_F = 0.5;

interface Interval {
  lowF: Fahrenheit;
  highF: Fahrenheit;
}

interface Range {
  low: number;
  high: number;
}

/** How far the parts of a fit may be off. */
export interface ChangePointDoubt {
  /** Null where the bills do not tell it; slopes also where the model has no such season. */
  baseUsePerDay: Range | null;
  heatingSlope: Range | null;
  coolingSlope: Range | null;
  balanceHeatingF: Interval | null;
  balanceCoolingF: Interval | null;
  /** Standard uncertainty over the value; null where the use is zero. */
  relativeUncertaintyOfHeatingUse: Ratio | null;
  relativeUncertaintyOfCoolingUse: Ratio | null;
}

/**
 * Confidence of a change-point fit.
 * Balance temperatures: all for which S ≤ S_min (1 + t²/(n − p)), t the two-sided t value at n − p (profile of the
 * squared misses S, in steps of 0.5 °F). Base and slopes: value ± t u, u by fitCovariance, never below 0. Heating and cooling use: jackknife, leaving out one period at a time,
 * u² = (n − 1)/n · Σ (θ_i − θ̄)².
 * Valid for at least p + 2 periods. Source: own-method on ashrae-guideline-14.
 * @throws InputProblem when there are too few periods to leave one out.
 */
export function changePointDoubt({
  periods,
  model,
  fit,
  confidence = 0.95,
}: {
  periods: readonly BillPeriod[];
  model: ChangePointModel;
  fit: ChangePointFit;
  confidence?: Share;
}): ChangePointDoubt {
  const parameters = PARAMETERS_OF[model];
  if (!(periods.length >= parameters + 2)) {
    refuse({
      field: "periods",
      detail: `The doubt of a ${model} model needs at least ${parameters + 2} periods, not ${periods.length}`,
      fix: "Add bills, best a whole year of them.",
    });
  }
  const freedom = periods.length - parameters;
  const columns = billColumns(periods);
  const least = fitLinearPart(columns, { heatingF: fit.balanceHeatingF, coolingF: fit.balanceCoolingF }).squaredMisses;
  const t = studentTQuantile({ probability: (1 + confidence) / 2, degreesOfFreedom: freedom });
  const allowed = least * (1 + t ** 2 / freedom);
  const possible = gridCandidates(columns, model, PROFILE_STEP_F).filter(({ misses }) => misses <= allowed);
  const intervalOf = (best: Fahrenheit | null, values: readonly (Fahrenheit | null)[]): Interval | null => {
    if (best === null) return null;
    const all = [best, ...values.filter((each) => each !== null)];
    return { lowF: Math.min(...all), highF: Math.max(...all) };
  };

  const { uncertaintyOf } = fitCovariance({ periods, model, fit });
  const rangeOf = (name: "baseUsePerDay" | "heatingSlope" | "coolingSlope"): Range | null => {
    const at = PARAMETER_ORDER[model].indexOf(name);
    const standardUncertainty = at < 0 ? null : uncertaintyOf(PARAMETER_ORDER[model].map((_, k) => (k === at ? 1 : 0)));
    if (standardUncertainty === null) return null;
    return { low: Math.max(0, fit[name] - t * standardUncertainty), high: fit[name] + t * standardUncertainty };
  };
  const refits = periods.map((left) => foretoldUseWithout(left, periods, fit));
  return {
    baseUsePerDay: rangeOf("baseUsePerDay"),
    heatingSlope: rangeOf("heatingSlope"),
    coolingSlope: rangeOf("coolingSlope"),
    balanceHeatingF: intervalOf(
      fit.balanceHeatingF,
      possible.map((each) => each.heatingF),
    ),
    balanceCoolingF: intervalOf(
      fit.balanceCoolingF,
      possible.map((each) => each.coolingF),
    ),
    relativeUncertaintyOfHeatingUse: relativeJackknife(
      refits.map((each) => each.heatingUse),
      fit.heatingUse,
    ),
    relativeUncertaintyOfCoolingUse: relativeJackknife(
      refits.map((each) => each.coolingUse),
      fit.coolingUse,
    ),
  };
}

/** Leaves one period out, refines the fit from where it stood, and foretells the use of all periods. */
function foretoldUseWithout(left: BillPeriod, periods: readonly BillPeriod[], fit: ChangePointFit) {
  const columns = billColumns(periods.filter((period) => period !== left));
  const balance = { heatingF: fit.balanceHeatingF, coolingF: fit.balanceCoolingF };
  const start = { ...balance, misses: fitLinearPart(columns, balance).squaredMisses };
  const refined = refineBalances({ columns, start, range: tellableRange(billColumns(periods)) });
  const { heatingSlope, coolingSlope } = fitLinearPart(columns, refined);
  return seasonalUse(periods, {
    heatingSlope,
    coolingSlope,
    balanceHeatingF: refined.heatingF,
    balanceCoolingF: refined.coolingF,
  });
}

function relativeJackknife(values: readonly number[], value: number): Ratio | null {
  if (!(value > 0)) return null;
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
  const squares = values.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return Math.sqrt(((values.length - 1) / values.length) * squares) / value;
}
