import { typicalDays } from "#lib/climate/typical-days.ts";
import { changePointDoubt } from "#lib/loads/change-point-doubt.ts";
import { fitChangePoint, seasonalUse } from "#lib/loads/change-point-fit.ts";
import type { BillPeriod, ChangePointModel } from "#lib/loads/change-point-model.ts";
import { normalYearUse, typicalYear } from "#lib/loads/normal-year-use.ts";
import { weighSeasons } from "#lib/loads/weigh-seasons.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { normalQuantile, studentTQuantile } from "#lib/numeric/distributions.ts";
import { OHARE } from "#tests/climate/tmy3-years.ts";

const temperaturesOf = typicalDays(OHARE);
const YEAR = typicalYear(temperaturesOf);

/** A household that is known: the truth behind its bills. */
interface Household {
  model: ChangePointModel;
  baseUsePerDay: number;
  heatingSlope: number;
  coolingSlope: number;
  balanceHeatingF: number;
  balanceCoolingF: number;
  /** Standard deviation of the use a day of a bill about the line. */
  scatterPerDay: number;
}

/** Gas for heat, about 8 % of scatter. */
export const GAS: Household = {
  model: "heating",
  baseUsePerDay: 0.8,
  heatingSlope: 0.12,
  coolingSlope: 0,
  balanceHeatingF: 62,
  balanceCoolingF: 0,
  scatterPerDay: 0.2,
};
/** Electric heat and cooling on one meter, about 6 % of scatter. */
export const ONE_METER: Household = {
  model: "both",
  baseUsePerDay: 18,
  heatingSlope: 1.2,
  coolingSlope: 1.5,
  balanceHeatingF: 57,
  balanceCoolingF: 67,
  scatterPerDay: 1.8,
};

/** Years of monthly bills, each with weather of its own that the fit knows and scatter that it does not. */
function billsOf(household: Household, normals: Float64Array, years: number): BillPeriod[] {
  return Array.from({ length: years }, (_, year) =>
    YEAR.map(({ days, dailyTemperaturesF }, month): BillPeriod => {
      const at = 30 * year + 2 * month;
      const shiftF = 2 * normals[30 * year + 28]! + 2 * normals[at]!;
      const daysF = dailyTemperaturesF!.map((dayF) => dayF + shiftF);
      const period = { days, dailyTemperaturesF: daysF };
      const { heatingUse, coolingUse } = trueSeasons([period], household);
      const use =
        days * household.baseUsePerDay + heatingUse + coolingUse + days * household.scatterPerDay * normals[at + 1]!;
      return { ...period, use: Math.max(0, use) };
    }),
  ).flat();
}

const trueSeasons = (periods: Parameters<typeof seasonalUse>[0], household: Household) =>
  seasonalUse(periods, {
    ...household,
    balanceHeatingF: household.model === "cooling" ? null : household.balanceHeatingF,
    balanceCoolingF: household.model === "heating" ? null : household.balanceCoolingF,
  });

export interface Covered {
  name: string;
  share: number;
  trials: number;
}

/**
 * How often the intervals of a fit hold the household's truth: base, slopes, balance temperatures, the use of a normal year.
 * The weather is known, the scatter is drawn anew for every year of bills.
 */
export function coverageOfIntervals({
  household,
  confidence,
  seed,
  trials,
  years = 1,
}: {
  household: Household;
  confidence: number;
  seed: number;
  trials: number;
  years?: number;
}): Covered[] {
  const source = createDrawSource(seed);
  const normals = new Float64Array(30 * years);
  const hits = new Map<string, { hit: number; of: number }>();
  const note = (name: string, isIn: boolean) => {
    const each = hits.get(name) ?? { hit: 0, of: 0 };
    hits.set(name, { hit: each.hit + (isIn ? 1 : 0), of: each.of + 1 });
  };
  const { model } = household;
  const seasons = trueSeasons(YEAR, household);
  const normalYear = 365 * household.baseUsePerDay + seasons.heatingUse + seasons.coolingUse;
  for (let trial = 0; trial < trials; trial++) {
    source.fillNormals(trial, normals);
    const periods = billsOf(household, normals, years);
    const fit = fitChangePoint({ periods, model });
    const doubt = changePointDoubt({ periods, model, fit, confidence });
    for (const name of ["baseUsePerDay", "heatingSlope", "coolingSlope"] as const) {
      const range = doubt[name];
      if (range) note(name, range.low <= household[name] && household[name] <= range.high);
    }
    for (const name of ["balanceHeatingF", "balanceCoolingF"] as const) {
      const range = doubt[name];
      if (range) note(name, range.lowF <= household[name] && household[name] <= range.highF);
    }
    const use = normalYearUse({ periods, model, fit, year: YEAR });
    if (!use) continue;
    const t = studentTQuantile({ probability: (1 + confidence) / 2, degreesOfFreedom: use.degreesOfFreedom });
    note("normal year", Math.abs(use.totalUse - normalYear) <= t * use.totalStandardUncertainty);
  }
  return [...hits].map(([name, { hit, of }]) => ({ name, share: hit / of, trials: of }));
}

/** The same of seasons that are weighed with what is known: households drawn about the usual one as the priors say. */
export function coverageOfWeighed({ seed, trials, confidence }: { seed: number; trials: number; confidence: number }) {
  const prior = {
    baseUsePerDay: 20,
    baseStandardUncertainty: 6,
    winterSwingShare: 0,
    winterSwingDoubt: 0.02,
    heatingBalanceF: 58,
    coolingBalanceF: 67,
    balanceStandardUncertaintyF: 4,
  };
  const source = createDrawSource(seed);
  const normals = new Float64Array(40);
  const z = normalQuantile((1 + confidence) / 2);
  const hit = { heating: 0, cooling: 0 };
  for (let trial = 0; trial < trials; trial++) {
    source.fillNormals(trial, normals);
    const household: Household = {
      ...ONE_METER,
      baseUsePerDay: Math.max(4, 20 + 6 * normals[30]!),
      balanceHeatingF: 58 + 4 * normals[31]!,
      balanceCoolingF: 67 + 4 * normals[32]!,
      heatingSlope: 1.2 * Math.exp(0.3 * normals[33]!),
      coolingSlope: 1.5 * Math.exp(0.3 * normals[34]!),
    };
    const periods = billsOf(household, normals, 1).map((period, month) => ({
      ...period,
      winterness: Math.cos((2 * Math.PI * month) / 12),
    }));
    const seasons = weighSeasons({ periods, prior, year: YEAR })!;
    const truth = trueSeasons(YEAR, household);
    if (Math.abs(seasons.heatingUse - truth.heatingUse) <= z * seasons.heatingStandardUncertainty) hit.heating++;
    if (Math.abs(seasons.coolingUse - truth.coolingUse) <= z * seasons.coolingStandardUncertainty) hit.cooling++;
  }
  return { heating: hit.heating / trials, cooling: hit.cooling / trials };
}
