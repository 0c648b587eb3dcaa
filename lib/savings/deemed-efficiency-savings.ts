import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Hours, Ratio } from "#lib/units/quantity.ts";
import { DEEMED_CONSTANTS, type DeemedSavings } from "./deemed-leakage-savings.ts";
import { requireOneSeason, wholeSeason } from "./deemed-season.ts";

interface CoolingInput {
  coolingCapacityBtuPerH?: BtuPerHour;
  coolingFullLoadHours?: Hours;
  seer?: number;
}
interface HeatingInput {
  heatingCapacityBtuPerH?: BtuPerHour;
  heatingFullLoadHours?: Hours;
  heatingEfficiency?: Ratio;
}

/**
 * Savings that a program credits for a rise of distribution efficiency.
 * kWh = ((η₂ − η₁)/η₂)·FLH·cap·TRF/(1,000·SEER); therms = the same /(100,000·η); blower kWh = therms·F_e·29.3.
 * Valid for efficiencies above 0 up to 1; cooling or heating is 0 where all of its inputs are left out.
 * Source: il-trm, residential duct insulation and sealing (from memory). Left out: climate beyond the full-load hours.
 * @throws InputProblem outside the range, or where a season is told in part only.
 */
export function deemedEfficiencySavings({
  efficiencyBefore,
  efficiencyAfter,
  coolingRegainFactor = 1,
  heatingRegainFactor = 1,
  blowerFraction = DEEMED_CONSTANTS.defaultBlowerFraction,
  ...seasons
}: CoolingInput &
  HeatingInput & {
    efficiencyBefore: Ratio;
    efficiencyAfter: Ratio;
    coolingRegainFactor?: Ratio;
    heatingRegainFactor?: Ratio;
    blowerFraction?: Ratio;
  }): DeemedSavings {
  requireAbove({ field: "efficiencyBefore", label: "Efficiency before", value: efficiencyBefore });
  requireAbove({ field: "efficiencyAfter", label: "Efficiency after", value: efficiencyAfter });
  requireBetween({ field: "efficiencyBefore", label: "Efficiency before", value: efficiencyBefore, low: 0, high: 1 });
  requireBetween({ field: "efficiencyAfter", label: "Efficiency after", value: efficiencyAfter, low: 0, high: 1 });
  const cooling = wholeSeason(seasons, ["coolingCapacityBtuPerH", "coolingFullLoadHours", "seer"]);
  const heating = wholeSeason(seasons, ["heatingCapacityBtuPerH", "heatingFullLoadHours", "heatingEfficiency"]);
  requireOneSeason(cooling, heating);

  const savedShare = (efficiencyAfter - efficiencyBefore) / efficiencyAfter;
  const { btuPerTherm, kWhPerTherm } = DEEMED_CONSTANTS;
  const heatingTherms = heating === null ? 0 : (savedShare * heating.use * heatingRegainFactor) / btuPerTherm;
  return {
    coolingKWh: cooling === null ? 0 : (savedShare * cooling.use * coolingRegainFactor) / 1000,
    heatingTherms,
    blowerKWh: heatingTherms * blowerFraction * kWhPerTherm,
  };
}
