import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, SquareInches } from "#lib/units/quantity.ts";

/** Flow through one square inch of sharp-edged hole at 1 Pa; a discharge coefficient of about 0.6. */
export const ORIFICE_FLOW_PER_IN2 = {
  value: 1.06,
  unit: "cfm/(in²·√Pa)",
  source: { sourceId: "hpxml-docs", locator: "leakage area" },
} as const satisfies SourcedValue;

/**
 * Area of the one sharp-edged hole that would pass the same flow.
 * A = Q/(1.06 √P). Valid 1 to 250 Pa. Source: hpxml-docs. It is a picture of the size of a leak, not the equivalent
 * leakage area at 4 Pa. Left out: the shape of real gaps.
 * @throws InputProblem when the flow is below 0 or the pressure outside its range.
 */
export function orificeArea({ leakageCfm, pressurePa }: { leakageCfm: Cfm; pressurePa: Pascals }): {
  areaIn2: SquareInches;
} {
  requireBetween({ field: "leakageCfm", label: "Leakage", value: leakageCfm, unit: "cfm", low: 0, high: 50000 });
  requireBetween({ field: "pressurePa", label: "Pressure", value: pressurePa, unit: "Pa", low: 1, high: 250 });
  return { areaIn2: leakageCfm / (ORIFICE_FLOW_PER_IN2.value * Math.sqrt(pressurePa)) };
}

/**
 * Flow through a gap of known area: Q = 1.06 A √P. Valid 1 to 250 Pa. Source: hpxml-docs.
 * @throws InputProblem when the area is not above 0 or the pressure outside its range.
 */
export function orificeFlow({ areaIn2, pressurePa }: { areaIn2: SquareInches; pressurePa: Pascals }): {
  leakageCfm: Cfm;
} {
  requireAbove({ field: "areaIn2", label: "Area", value: areaIn2, unit: "in²" });
  requireBetween({ field: "pressurePa", label: "Pressure", value: pressurePa, unit: "Pa", low: 1, high: 250 });
  return { leakageCfm: ORIFICE_FLOW_PER_IN2.value * areaIn2 * Math.sqrt(pressurePa) };
}
