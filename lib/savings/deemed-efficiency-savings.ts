import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Hours, Ratio } from "#lib/units/quantity.ts";
import { DEEMED_CONSTANTS, type DeemedSavings } from "./deemed-leakage-savings.ts";

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
  if (cooling === null && heating === null) {
    refuse({
      field: "coolingCapacityBtuPerH",
      detail: "Neither cooling nor heating is described",
      fix: "Give capacity, full-load hours and efficiency of at least one of them.",
    });
  }

  const savedShare = (efficiencyAfter - efficiencyBefore) / efficiencyAfter;
  const { btuPerTherm, kWhPerTherm } = DEEMED_CONSTANTS;
  const heatingTherms = heating === null ? 0 : (savedShare * heating * heatingRegainFactor) / btuPerTherm;
  return {
    coolingKWh: cooling === null ? 0 : (savedShare * cooling * coolingRegainFactor) / 1000,
    heatingTherms,
    blowerKWh: heatingTherms * blowerFraction * kWhPerTherm,
  };
}

/** Capacity × full-load hours ÷ efficiency; null where none of the three is given. */
function wholeSeason<Name extends string>(
  input: Partial<Record<Name, number>>,
  [capacity, hours, efficiency]: readonly [Name, Name, Name],
): number | null {
  const names = [capacity, hours, efficiency];
  const absent = names.filter((name) => input[name] === undefined);
  if (absent.length === names.length) return null;
  if (absent.length > 0) {
    refuse({
      field: absent[0]!,
      detail: `${absent.join(" and ")} is missing beside ${names.filter((name) => !absent.includes(name)).join(" and ")}`,
      fix: "Give capacity, full-load hours and efficiency together, or none of them.",
    });
  }
  requireAbove({ field: efficiency, label: efficiency, value: input[efficiency]! });
  return (input[capacity]! * input[hours]!) / input[efficiency]!;
}
