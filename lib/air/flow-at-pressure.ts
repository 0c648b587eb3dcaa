import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** Exponent of duct leaks when it was not fitted. */
export const DUCT_LEAK_EXPONENT = {
  value: 0.6,
  unit: "ratio",
  source: { sourceId: "practice", locator: "duct leaks" },
  reason: "Between a sharp-edged hole (0.5) and a long crack (near 0.65).",
  low: 0.5,
  high: 0.7,
} as const satisfies SourcedValue;

/** Exponent of building envelopes when it was not fitted. */
export const ENVELOPE_LEAK_EXPONENT = {
  value: 0.65,
  unit: "ratio",
  source: { sourceId: "practice", locator: "building envelopes" },
  reason: "The exponent that single-point house tests assume.",
  low: 0.55,
  high: 0.75,
} as const satisfies SourcedValue;

/**
 * Flow through the same leak at another pressure, unguarded and without allocation for inner loops (hence positional).
 * Q₂ = Q₁ (P₂/P₁)^n. Valid for one sign of pressure and flow, P > 0. Source: astm-e779 (power law of leaks).
 * Left out: the change of exponent with Reynolds number, below about 1 Pa.
 */
export function flowAtPressure(flowCfm: Cfm, pressurePa: Pascals, toPressurePa: Pascals, exponent: Ratio): Cfm {
  return flowCfm * (toPressurePa / pressurePa) ** exponent;
}

/** Refuses an exponent that no leak has: turbulent 0.5, laminar 1, with a margin for fits of noisy points. */
export function requireLeakExponent(exponent: number, field = "exponent"): void {
  requireBetween({
    field,
    label: "Exponent",
    value: exponent,
    low: 0.4,
    high: 1.1,
    fix: "Leave it out to use the usual one, or enter the fitted exponent, from 0.5 to 1.",
  });
}
