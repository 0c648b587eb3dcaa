import { DUCT_LEAK_EXPONENT, flowAtPressure, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** Pressure that leakage is stated at. */
const REFERENCE_PRESSURE_PA = 25;

const fraction = (value: number, low: number, high: number, locator: string) =>
  ({ value, unit: "ratio", low, high, source: { sourceId: "practice", locator } }) as const satisfies SourcedValue;

/** Pressure at a leak while the system runs, as a fraction of the plenum static pressure, by place along the duct. */
export const OPERATING_PRESSURE_FRACTIONS = {
  cabinet: fraction(1, 0.8, 1.2, "air handler cabinet"),
  plenum: fraction(1, 0.8, 1.2, "plenum"),
  trunk: fraction(0.7, 0.5, 0.9, "trunk"),
  "take-off": fraction(0.5, 0.3, 0.7, "take-off"),
  boot: fraction(0.1, 0.03, 0.25, "boot"),
  unknown: fraction(0.5, 0.2, 0.9, "half the plenum static pressure when nothing is known of the place"),
} as const;

/** The same without guards, for inner loops (hence positional). P = 0 gives 0. */
export function leakageWhileRunning(
  leakageCfm25: Cfm,
  plenumStaticPa: Pascals,
  pressureFraction: Ratio,
  exponent: Ratio,
): Cfm {
  return flowAtPressure(leakageCfm25, REFERENCE_PRESSURE_PA, plenumStaticPa * pressureFraction, exponent);
}

/**
 * What a leak passes while the system runs, from its size at 25 Pa.
 * Q = CFM25·(P/25)^n, P = |plenum static pressure|·fraction by place. Valid 0 to 500 Pa. Source: practice for the
 * fractions, derived for the rest. Targets use the size at 25 Pa, energy uses this one. Left out: dampers that move.
 * @throws InputProblem when a value is outside its range.
 */
export function operatingLeakage({
  leakageCfm25,
  plenumStaticPa,
  pressureFraction = OPERATING_PRESSURE_FRACTIONS.unknown.value,
  exponent = DUCT_LEAK_EXPONENT.value,
}: {
  leakageCfm25: Cfm;
  plenumStaticPa: Pascals;
  pressureFraction?: Ratio;
  exponent?: Ratio;
}): { leakageCfm: Cfm } {
  requireBetween({
    field: "leakageCfm25",
    label: "Leakage at 25 Pa",
    value: leakageCfm25,
    unit: "cfm",
    low: 0,
    high: 20000,
  });
  requireBetween({
    field: "plenumStaticPa",
    label: "Plenum static pressure",
    value: plenumStaticPa,
    unit: "Pa",
    low: -500,
    high: 500,
  });
  requireBetween({ field: "pressureFraction", label: "Pressure fraction", value: pressureFraction, low: 0, high: 1.5 });
  requireLeakExponent(exponent);
  return { leakageCfm: leakageWhileRunning(leakageCfm25, Math.abs(plenumStaticPa), pressureFraction, exponent) };
}
