import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Cfm, Hours, KilowattHours, Ratio, Share, Therms } from "#lib/units/quantity.ts";
import { requireOneSeason, wholeSeason } from "./deemed-season.ts";

export interface DeemedSavings {
  coolingKWh: KilowattHours;
  heatingTherms: Therms;
  blowerKWh: KilowattHours;
}

/** Numbers of the program's rule, as it prints them. Source: il-trm, from memory. */
export const DEEMED_CONSTANTS = {
  coolingCfmPerTon: 400,
  btuPerHPerTon: 12000,
  btuPerTherm: 100000,
  kWhPerTherm: 29.3,
  defaultAirflowPerBtuPerH: 0.0123,
  defaultBlowerFraction: 0.0314,
} as const;

/** A season of the rule; all three together, or none where the house has no such equipment. */
interface CoolingSeason {
  coolingCapacityBtuPerH?: BtuPerHour;
  coolingFullLoadHours?: Hours;
  seer?: number;
}
interface HeatingSeason {
  heatingCapacityBtuPerH?: BtuPerHour;
  heatingFullLoadHours?: Hours;
  heatingEfficiency?: Ratio;
}

/**
 * Savings that a program credits for a measured reduction of leakage, whatever the house.
 * x = ΔL (supply share + return share/2); kWh = x/(400·cap/12,000)·FLH·cap·TRF/(1,000·SEER);
 * therms = x/(cap_h·k)·FLH_h·cap_h·TRF/(100,000·η); blower kWh = therms·F_e·29.3.
 * Valid where the credited reduction is no more than the air the rule says the equipment moves; a season is 0 where all of
 * its inputs are left out. Source: il-trm, residential duct insulation and sealing, method 1 (from memory, arithmetic
 * confirmed). Left out: climate, duct location, what the ducts are like: a rule, not physics.
 * @throws InputProblem outside the range, or where a season is told in part only.
 */
export function deemedLeakageSavings({
  leakageReductionCfm25,
  supplyShare = 0.5,
  returnShare = 0.5,
  coolingRegainFactor = 1,
  heatingRegainFactor = 1,
  airflowPerBtuPerH = DEEMED_CONSTANTS.defaultAirflowPerBtuPerH,
  blowerFraction = DEEMED_CONSTANTS.defaultBlowerFraction,
  ...seasons
}: CoolingSeason &
  HeatingSeason & {
    leakageReductionCfm25: Cfm;
    supplyShare?: Share;
    returnShare?: Share;
    coolingRegainFactor?: Ratio;
    heatingRegainFactor?: Ratio;
    airflowPerBtuPerH?: number;
    blowerFraction?: Ratio;
  }): DeemedSavings {
  requireBetween({
    field: "leakageReductionCfm25",
    label: "Leakage reduction",
    value: leakageReductionCfm25,
    unit: "cfm",
    low: 0,
    high: 10000,
  });
  requireBetween({
    field: "returnShare",
    label: "Supply and return share together",
    value: supplyShare + returnShare,
    low: 0,
    high: 1 + 1e-9,
  });
  requireAbove({ field: "airflowPerBtuPerH", label: "Airflow per heating capacity", value: airflowPerBtuPerH });
  const cooling = wholeSeason(seasons, ["coolingCapacityBtuPerH", "coolingFullLoadHours", "seer"]);
  const heating = wholeSeason(seasons, ["heatingCapacityBtuPerH", "heatingFullLoadHours", "heatingEfficiency"]);
  requireOneSeason(cooling, heating);

  const creditedCfm = leakageReductionCfm25 * (supplyShare + returnShare / 2);
  const { coolingCfmPerTon, btuPerHPerTon, btuPerTherm, kWhPerTherm } = DEEMED_CONSTANTS;
  const coolingShare = cooling ? creditedCfm / ((cooling.capacity / btuPerHPerTon) * coolingCfmPerTon) : 0;
  const heatingShare = heating ? creditedCfm / (heating.capacity * airflowPerBtuPerH) : 0;
  if (!(coolingShare <= 1 && heatingShare <= 1)) {
    refuse({
      field: "leakageReductionCfm25",
      detail: `A reduction of ${leakageReductionCfm25} cfm is more air than the rule says the equipment moves`,
      fix: "Check the reduction and the capacities.",
    });
  }
  const heatingTherms = heating ? (heatingShare * heating.use * heatingRegainFactor) / btuPerTherm : 0;
  return {
    coolingKWh: cooling ? (coolingShare * cooling.use * coolingRegainFactor) / 1000 : 0,
    heatingTherms,
    blowerKWh: heatingTherms * blowerFraction * kWhPerTherm,
  };
}
