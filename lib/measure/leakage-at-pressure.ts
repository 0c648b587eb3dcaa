import { DUCT_LEAK_EXPONENT, flowAtPressure, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** Pressure that duct leakage is stated at. */
export const REFERENCE_PRESSURE = {
  value: 25,
  unit: "Pa",
  source: { sourceId: "astm-e1554", locator: "form of" },
} as const satisfies SourcedValue;

/** How far one duct system's exponent strays from the usual one. */
export const EXPONENT_STANDARD_UNCERTAINTY = {
  value: 0.05,
  unit: "ratio",
  source: { sourceId: "practice", locator: "exponent of duct leaks" },
  reason: "Fitted exponents of duct systems mostly lie between 0.5 and 0.7.",
} as const satisfies SourcedValue;

/** Relative doubt that carrying a flow to another pressure adds: u(n)·|ln(P_ref/P)|. Unguarded. */
export function exponentRelativeUncertainty(pressurePa: Pascals, referencePressurePa: Pascals): Ratio {
  return EXPONENT_STANDARD_UNCERTAINTY.value * Math.abs(Math.log(referencePressurePa / pressurePa));
}

/**
 * Leakage at the reference pressure from one reading at another.
 * Q_ref = Q·(P_ref/P)^n; relative standard uncertainty of the exponent 0.05·|ln(P_ref/P)|. Valid 1 to 250 Pa.
 * Source: astm-e1554 (form of), practice for the exponent and its doubt. The doubt cancels between two tests only at
 * equal pressures. Left out: the doubt of flow and pressure.
 * @throws InputProblem when a value is outside its range.
 */
export function leakageAtPressure({
  flowCfm,
  ductPressurePa,
  referencePressurePa = REFERENCE_PRESSURE.value,
  exponent = DUCT_LEAK_EXPONENT.value,
}: {
  flowCfm: Cfm;
  ductPressurePa: Pascals;
  referencePressurePa?: Pascals;
  exponent?: Ratio;
}): { leakageCfm: Cfm; relativeStandardUncertaintyOfExponent: Ratio } {
  requireBetween({ field: "flowCfm", label: "Flow", value: flowCfm, unit: "cfm", low: 0, high: 50000 });
  requireBetween({
    field: "ductPressurePa",
    label: "Duct pressure",
    value: ductPressurePa,
    unit: "Pa",
    low: 1,
    high: 250,
    fix: "Enter the size of the pressure, without its sign, after the baseline is taken off.",
  });
  requireBetween({
    field: "referencePressurePa",
    label: "Reference pressure",
    value: referencePressurePa,
    unit: "Pa",
    low: 1,
    high: 250,
  });
  requireLeakExponent(exponent);
  return {
    leakageCfm: flowAtPressure(flowCfm, ductPressurePa, referencePressurePa, exponent),
    relativeStandardUncertaintyOfExponent: exponentRelativeUncertainty(ductPressurePa, referencePressurePa),
  };
}
