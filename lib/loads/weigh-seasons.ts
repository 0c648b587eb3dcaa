import { gaussianPosterior } from "#lib/numeric/gaussian-posterior.ts";
import type { Fahrenheit, FahrenheitDifference, Ratio, Share } from "#lib/units/quantity.ts";
import { billColumns } from "./bill-columns.ts";
import type { BillPeriod, Season } from "./change-point-model.ts";

/** What is known of a household before its bills are read, in the bills' own unit. */
export interface SeasonPrior {
  baseUsePerDay: number;
  baseStandardUncertainty: number;
  /** Base use is that much above its mean in midwinter and below it in midsummer. */
  winterSwingShare: Share;
  winterSwingDoubt: Share;
  /** Null where nothing on this meter heats, or cools. */
  heatingBalanceF: Fahrenheit | null;
  coolingBalanceF: Fahrenheit | null;
  balanceStandardUncertaintyF: FahrenheitDifference;
}

/** A bill and where in the year it lies: 1 in midwinter, −1 in midsummer. */
export interface PlacedPeriod extends BillPeriod {
  winterness: Ratio;
}

/** A typical year's use by season, with its standard uncertainty. */
export interface WeighedSeasons {
  baseUsePerDay: number;
  heatingUse: number;
  coolingUse: number;
  heatingStandardUncertainty: number;
  coolingStandardUncertainty: number;
  heatingBalanceF: Fahrenheit | null;
  coolingBalanceF: Fahrenheit | null;
}

const GRID_STEP_F = 2;
const GRID_REACH = 2.5;
/** Bills scatter by about this share of their mean even where a line fits them well, as sure as so many bills. Source: practice. */
const USUAL_SCATTER = { share: 0.05, bills: 4 } as const;
/** Within a day it is warmer and colder than its mean; of about 10 °F either way the house's mass leaves this. Source: practice. */
const FELT_DAY_SWING_F = 4;
/** Base, swing and the slopes that there are. */
const BASE = 0;
const FIRST_SLOPE = 2;

interface Candidate {
  heatingF: Fahrenheit | null;
  coolingF: Fahrenheit | null;
  logPrior: number;
}

interface Weighed {
  logWeight: number;
  squaredMisses: number;
  candidate: Candidate;
  mean: number[];
  variances: number[];
}

function axis(priorF: Fahrenheit | null, doubtF: number): { valueF: Fahrenheit | null; logPrior: number }[] {
  if (priorF === null) return [{ valueF: null, logPrior: 0 }];
  const steps = Math.ceil((GRID_REACH * doubtF) / GRID_STEP_F);
  return Array.from({ length: 2 * steps + 1 }, (_, at) => {
    const offF = (at - steps) * GRID_STEP_F;
    return { valueF: priorF + offF, logPrior: -0.5 * (offF / doubtF) ** 2 };
  });
}

/**
 * Seasons of a typical year from bills, weighed with what is known of any household. A change-point line alone cannot
 * tell use of every month from base use, nor a small season beside a large one; so the seasons are those that the
 * equipment on the meter can have, and base use and balance temperatures have normal priors:
 * use/day = b (1 + κ w) + s_h·avg(T_h − T)+ + s_c·avg(T − T_c)+, w the winterness of the bill, averages over cool, mean
 * and warm parts of its days; slopes never negative.
 * For every pair of balance temperatures on a grid the rest is linear and normal; pairs weigh by how likely they make the
 * bills. The scatter comes from the bills, drawn toward a usual one. Valid from four bills on; with few of them the priors
 * speak. Source: own-method on ashrae-guideline-14 (form of the line), with normal priors. Left out: scatter that goes
 * together from month to month, use that is away from home.
 * @returns null where neither bills nor priors tell the coefficients.
 */
export function weighSeasons({
  periods,
  prior,
  year,
}: {
  periods: readonly PlacedPeriod[];
  prior: SeasonPrior;
  year: readonly Omit<BillPeriod, "use">[];
}): WeighedSeasons | null {
  const columns = billColumns(periods.map(withinTheDay));
  const { usePerDay, weights } = columns;
  const meanUse = usePerDay.reduce((sum, use, i) => sum + weights[i]! * use, 0) / usePerDay.length;
  if (!(meanUse > 0)) return null;
  const candidates = axis(prior.heatingBalanceF, prior.balanceStandardUncertaintyF).flatMap((heating) =>
    axis(prior.coolingBalanceF, prior.balanceStandardUncertaintyF)
      .filter(({ valueF }) => valueF === null || heating.valueF === null || valueF >= heating.valueF)
      .map(
        (cooling): Candidate => ({
          heatingF: heating.valueF,
          coolingF: cooling.valueF,
          logPrior: heating.logPrior + cooling.logPrior,
        }),
      ),
  );
  const degrees = remembered((season, balanceF) => columns.degrees(season, balanceF));
  const baseColumn = periods.map(({ winterness }) => 1 + prior.winterSwingShare * winterness);
  const swingColumn = periods.map(({ winterness }) => winterness);
  const weighAll = (scatter: number): Weighed[] =>
    candidates.flatMap((candidate) => {
      const slopes = [
        ...(candidate.heatingF === null ? [] : [degrees("heating", candidate.heatingF)]),
        ...(candidate.coolingF === null ? [] : [degrees("cooling", candidate.coolingF)]),
      ];
      const weighed = weigh({
        usePerDay,
        weights,
        regressors: [baseColumn, swingColumn, ...slopes],
        priors: [
          { mean: prior.baseUsePerDay, standardUncertainty: prior.baseStandardUncertainty },
          { mean: 0, standardUncertainty: prior.winterSwingDoubt * prior.baseUsePerDay },
          // A slope of the whole mean use for each degree is out of the question: as good as no prior.
          ...slopes.map(() => ({ mean: 0, standardUncertainty: meanUse })),
        ],
        scatter,
      });
      return weighed ? [{ ...weighed, logWeight: weighed.logWeight + candidate.logPrior, candidate }] : [];
    });
  const usual = USUAL_SCATTER.share * meanUse;
  const first = weighAll(usual);
  if (first.length === 0) return null;
  const least = Math.min(...first.map(({ squaredMisses }) => squaredMisses));
  const parameters = FIRST_SLOPE + (prior.heatingBalanceF === null ? 0 : 2) + (prior.coolingBalanceF === null ? 0 : 2);
  const freedom = Math.max(0, periods.length - parameters) + USUAL_SCATTER.bills;
  const scatter = Math.sqrt((least + USUAL_SCATTER.bills * usual ** 2) / freedom);
  const all = weighAll(scatter);
  return all.length > 0 ? average(all, year.map(withinTheDay)) : null;
}

/** A period whose days have a cool, a mean and a warm part, so that a mild day may both heat and cool. */
function withinTheDay<Period extends Omit<BillPeriod, "use">>(period: Period): Period {
  const daysF = period.dailyTemperaturesF ?? [period.meanTemperatureF!];
  return {
    ...period,
    dailyTemperaturesF: daysF.flatMap((dayF) => [dayF - FELT_DAY_SWING_F, dayF, dayF + FELT_DAY_SWING_F]),
  };
}

function remembered(of: (season: Season, balanceF: number) => readonly number[]) {
  const known = new Map<string, readonly number[]>();
  return (season: Season, balanceF: number): readonly number[] => {
    const key = `${season}${balanceF}`;
    const made = known.get(key) ?? of(season, balanceF);
    known.set(key, made);
    return made;
  };
}

/** Least squares with normal priors at fixed balance temperatures; a slope that would be negative is none. */
function weigh({
  usePerDay,
  weights,
  regressors,
  priors,
  scatter,
}: {
  usePerDay: readonly number[];
  weights: readonly number[];
  regressors: readonly (readonly number[])[];
  priors: readonly { mean: number; standardUncertainty: number }[];
  scatter: number;
}): Omit<Weighed, "candidate"> | null {
  const per = 1 / scatter ** 2;
  const inner = (a: readonly number[], b: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < a.length; i += 1) sum += weights[i]! * a[i]! * b[i]!;
    return per * sum;
  };
  const sure = priors.map(({ standardUncertainty }) => 1 / standardUncertainty ** 2);
  const right = regressors.map((column, k) => inner(column, usePerDay) + sure[k]! * priors[k]!.mean);
  const precision = regressors.map((row, j) =>
    regressors.map((column, k) => inner(row, column) + (j === k ? sure[k]! : 0)),
  );
  const all = gaussianPosterior(precision, right);
  if (!all) return null;
  const isKept = (k: number) => k < FIRST_SLOPE || all.mean[k]! >= 0;
  let mean = all.mean;
  let held = right;
  if (!all.mean.every((_, k) => isKept(k))) {
    // Held at none: its row and column say nothing to the others.
    held = right.map((value, k) => (isKept(k) ? value : 0));
    const without = precision.map((row, j) =>
      row.map((value, k) => (isKept(j) && isKept(k) ? value : j === k ? precision[k]![k]! : 0)),
    );
    mean = gaussianPosterior(without, held)!.mean.map((value) => Math.max(0, value));
  }
  const squaredMisses = usePerDay.reduce((sum, use, i) => {
    const miss = use - regressors.reduce((told, column, k) => told + column[i]! * mean[k]!, 0);
    return sum + weights[i]! * miss ** 2;
  }, 0);
  const strain = priors.reduce((sum, each, k) => sum + sure[k]! * (mean[k]! - each.mean) ** 2, 0);
  return {
    logWeight: -0.5 * (per * squaredMisses + strain + all.logDeterminant),
    squaredMisses,
    mean,
    variances: all.variances,
  };
}

/** Mean and spread over all pairs of balance temperatures, each by its weight. */
function average(all: readonly Weighed[], year: readonly Omit<BillPeriod, "use">[]): WeighedSeasons {
  const columns = billColumns(year.map((period) => ({ ...period, use: 0 })));
  const ofYear = remembered((season, balanceF) => [
    columns.degrees(season, balanceF).reduce((sum, each, i) => sum + each * year[i]!.days, 0),
  ]);
  const most = Math.max(...all.map(({ logWeight }) => logWeight));
  let weightSum = 0;
  let base = 0;
  const seasons = {
    heating: { use: 0, square: 0, balance: 0 },
    cooling: { use: 0, square: 0, balance: 0 },
  };
  for (const { logWeight, candidate, mean, variances } of all) {
    const weight = Math.exp(logWeight - most);
    weightSum += weight;
    base += weight * mean[BASE]!;
    let at = FIRST_SLOPE;
    for (const season of ["heating", "cooling"] as const) {
      const balanceF = season === "heating" ? candidate.heatingF : candidate.coolingF;
      if (balanceF === null) continue;
      const [degreeDays] = ofYear(season, balanceF) as [number];
      const use = degreeDays * mean[at]!;
      seasons[season].use += weight * use;
      seasons[season].square += weight * (use ** 2 + degreeDays ** 2 * variances[at]!);
      seasons[season].balance += weight * balanceF;
      at += 1;
    }
  }
  const spread = ({ use, square }: { use: number; square: number }) =>
    Math.sqrt(Math.max(0, square / weightSum - (use / weightSum) ** 2));
  const [{ candidate }] = all as [Weighed];
  return {
    baseUsePerDay: base / weightSum,
    heatingUse: seasons.heating.use / weightSum,
    coolingUse: seasons.cooling.use / weightSum,
    heatingStandardUncertainty: spread(seasons.heating),
    coolingStandardUncertainty: spread(seasons.cooling),
    heatingBalanceF: candidate.heatingF === null ? null : seasons.heating.balance / weightSum,
    coolingBalanceF: candidate.coolingF === null ? null : seasons.cooling.balance / weightSum,
  };
}
