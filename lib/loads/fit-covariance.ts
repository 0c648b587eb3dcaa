import { solveLinearSystem } from "#lib/numeric/solve-linear-system.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import { billColumns } from "./bill-columns.ts";
import type { ChangePointFit } from "./change-point-fit.ts";
import { type BillPeriod, type ChangePointModel, PARAMETERS_OF, type Season } from "./change-point-model.ts";
import { fitLinearPart } from "./fit-linear-part.ts";

/** How far anything that follows from a fit may be off by the scatter of its bills alone. */
export interface FitCovariance {
  degreesOfFreedom: number;
  /** Standard uncertainty of what changes so with each parameter; null where the bills do not tell it. */
  uncertaintyOf(change: readonly number[]): number | null;
}

/** The parameters in the order of a change: base, then slope and balance temperature of each season of the model. */
export const PARAMETER_ORDER: Readonly<Record<ChangePointModel, readonly string[]>> = {
  heating: ["baseUsePerDay", "heatingSlope", "balanceHeatingF"],
  cooling: ["baseUsePerDay", "coolingSlope", "balanceCoolingF"],
  both: ["baseUsePerDay", "heatingSlope", "balanceHeatingF", "coolingSlope", "balanceCoolingF"],
};

/** Of each period, how its use a day changes with base, slopes and balance temperatures, in their order. */
export function changesOf(periods: readonly Omit<BillPeriod, "use">[], fit: ChangePointFit): number[][] {
  const columns = billColumns(periods.map((period) => ({ ...period, use: 0 })));
  const ofSeason = (season: Season, balanceF: Fahrenheit | null, slope: number): (readonly number[])[] =>
    balanceF === null
      ? []
      : [columns.degrees(season, balanceF), columns.sharesBeyond(season, balanceF).map((share) => slope * share)];
  const changes = [
    ...ofSeason("heating", fit.balanceHeatingF, fit.heatingSlope),
    // A higher balance temperature leaves fewer degrees to cool.
    ...ofSeason("cooling", fit.balanceCoolingF, -fit.coolingSlope),
  ];
  return periods.map((_, at) => [1, ...changes.map((column) => column[at]!)]);
}

/**
 * The scatter of the bills carried to the parameters of a fit, to first order.
 * u²(g) = gᵀ s² (JᵀWJ)⁻¹ g, J the change of each period's use a day with the parameters, s² = Σ w e²/(n − p).
 * Valid for more periods than parameters. Source: derived (nonlinear least squares). Left out: misses of neighboring
 * months that go together; the choice between models.
 */
export function fitCovariance({
  periods,
  model,
  fit,
}: {
  periods: readonly BillPeriod[];
  model: ChangePointModel;
  fit: ChangePointFit;
}): FitCovariance {
  const degreesOfFreedom = periods.length - PARAMETERS_OF[model];
  const columns = billColumns(periods);
  const rows = changesOf(periods, fit);
  const information = rows[0]!.map((_, i) =>
    rows[0]!.map((__, j) => rows.reduce((sum, row, at) => sum + columns.weights[at]! * row[i]! * row[j]!, 0)),
  );
  const balance = { heatingF: fit.balanceHeatingF, coolingF: fit.balanceCoolingF };
  const variance = fitLinearPart(columns, balance).squaredMisses / degreesOfFreedom;
  return {
    degreesOfFreedom,
    uncertaintyOf(change) {
      const solved = solveLinearSystem(information, change);
      if (solved === null) return null;
      return Math.sqrt(Math.max(0, variance * change.reduce((sum, each, index) => sum + each * solved[index]!, 0)));
    },
  };
}
