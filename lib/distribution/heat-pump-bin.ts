import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import { BTU_PER_KWH } from "#lib/units/conversions.ts";
import type { BtuPerHour, Kilowatts, Ratio } from "#lib/units/quantity.ts";

/** How much worse a single-stage heat pump does when it cycles. */
export const DEGRADATION_COEFFICIENT = {
  value: 0.25,
  unit: "ratio",
  source: { sourceId: "doe-appendix-m", locator: "default cyclic degradation coefficient" },
  low: 0.05,
  high: 0.25,
} as const satisfies SourcedValue;

/**
 * Electric power of a heat pump with electric supplementary heat at one outdoor temperature.
 * R = L/η; S = max(0, R − H); PLF = 1 − c(1 − R/H) below capacity, else 1; kW = min(R, H)/(3412·COP·PLF) + S/3412.
 * Valid for a steady load within the bin. Source: doe-appendix-m (form of). Left out: lockouts and set-back recovery,
 * which run the supplementary heat more; defrost unless H and COP hold it.
 * @throws InputProblem when the efficiency, capacity or COP is not above 0 or the coefficient is outside 0 to 0.9.
 */
export function heatPumpBin({
  loadBtuPerH,
  distributionEfficiency,
  capacityBtuPerH,
  cop,
  degradationCoefficient = DEGRADATION_COEFFICIENT.value,
}: {
  loadBtuPerH: BtuPerHour;
  distributionEfficiency: Ratio;
  capacityBtuPerH: BtuPerHour;
  cop: Ratio;
  degradationCoefficient?: Ratio;
}): { requiredBtuPerH: BtuPerHour; supplementaryBtuPerH: BtuPerHour; electricKW: Kilowatts } {
  requireBetween({ field: "loadBtuPerH", label: "Load", value: loadBtuPerH, unit: "Btu/h", low: 0, high: 1e7 });
  requireAbove({ field: "distributionEfficiency", label: "Distribution efficiency", value: distributionEfficiency });
  requireAbove({ field: "capacityBtuPerH", label: "Capacity", value: capacityBtuPerH, unit: "Btu/h" });
  requireAbove({ field: "cop", label: "COP", value: cop });
  requireBetween({
    field: "degradationCoefficient",
    label: "Degradation coefficient",
    value: degradationCoefficient,
    low: 0,
    high: 0.9,
  });
  const requiredBtuPerH = loadBtuPerH / distributionEfficiency;
  const compressorBtuPerH = Math.min(requiredBtuPerH, capacityBtuPerH);
  const supplementaryBtuPerH = requiredBtuPerH - compressorBtuPerH;
  const partLoadFactor = 1 - degradationCoefficient * (1 - compressorBtuPerH / capacityBtuPerH);
  return {
    requiredBtuPerH,
    supplementaryBtuPerH,
    electricKW: (compressorBtuPerH / (cop * partLoadFactor) + supplementaryBtuPerH) / BTU_PER_KWH,
  };
}
