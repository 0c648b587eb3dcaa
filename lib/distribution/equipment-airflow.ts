import { requireAbove } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { BtuPerHour, Cfm, Ratio } from "#lib/units/quantity.ts";

/** Airflow that heat pumps and air conditioners are rated at, per ton (12,000 Btu/h) of rated capacity. */
export const RATED_CFM_PER_TON = {
  value: 400,
  unit: "cfm/ton",
  source: { sourceId: "practice", locator: "trade practice" },
  low: 350,
  high: 450,
} as const satisfies SourcedValue;

export const BTU_PER_H_PER_TON = 12000;

interface Parabola {
  constant: number;
  linear: number;
  square: number;
}

/**
 * Output and input power per output, over their rated values, by x = flow/rated flow: c + b x + a x². Each is 1 at
 * x = 1. Source: nrel-56354, coefficients from memory. The curves were fitted near the rating; outside 0.5 to 1.5 the
 * value at that end is held, since a coil that ices or a blower that floods is no longer told by them.
 */
const CURVES = {
  cooling: {
    capacity: { constant: 0.718605468, linear: 0.410099989, square: -0.128705457 },
    powerPerOutput: { constant: 1.32299905, linear: -0.477711207, square: 0.154712157 },
  },
  heating: {
    capacity: { constant: 0.694045465, linear: 0.474207981, square: -0.168253446 },
    powerPerOutput: { constant: 2.185418751, linear: -1.942827919, square: 0.757409168 },
  },
} as const satisfies Record<string, { capacity: Parabola; powerPerOutput: Parabola }>;

const LEAST_RATIO = 0.5;
const GREATEST_RATIO = 1.5;

const at = ({ constant, linear, square }: Parabola, x: number) => constant + x * (linear + x * square);

/**
 * How airflow changes the output and efficiency of a heat pump or air conditioner.
 * capacityFactor and efficiencyFactor are parabolas of flow over rated flow (400 cfm a ton), 1 at the rated flow.
 * Valid 0.5 to 1.5 times the rated flow, held beyond. Source: nrel-56354 (form of, from memory). Left out: furnaces and
 * resistance heat, which lose next to nothing to a low flow until a limit trips: their factors are 1; a sensible heat
 * ratio that rises with the flow.
 * @throws InputProblem when flow or rated capacity is not above 0.
 */
export function equipmentAirflow({
  mode,
  fanFlowCfm,
  ratedCapacityBtuPerH,
  ratedCfmPerTon = RATED_CFM_PER_TON.value,
}: {
  mode: "heating" | "cooling";
  fanFlowCfm: Cfm;
  ratedCapacityBtuPerH: BtuPerHour;
  ratedCfmPerTon?: number;
}): { capacityFactor: Ratio; efficiencyFactor: Ratio } {
  requireAbove({ field: "fanFlowCfm", label: "Fan flow", value: fanFlowCfm, unit: "cfm" });
  requireAbove({ field: "ratedCapacityBtuPerH", label: "Rated capacity", value: ratedCapacityBtuPerH, unit: "Btu/h" });
  requireAbove({ field: "ratedCfmPerTon", label: "Rated flow per ton", value: ratedCfmPerTon });
  const ratedFlowCfm = (ratedCfmPerTon * ratedCapacityBtuPerH) / BTU_PER_H_PER_TON;
  const x = Math.min(GREATEST_RATIO, Math.max(LEAST_RATIO, fanFlowCfm / ratedFlowCfm));
  const { capacity, powerPerOutput } = CURVES[mode];
  return { capacityFactor: at(capacity, x), efficiencyFactor: 1 / at(powerPerOutput, x) };
}
