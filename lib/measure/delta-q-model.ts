import { DUCT_LEAK_EXPONENT, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { signedPower } from "#lib/air/signed-power.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** What the air handler's leaks to outside are, at operating pressures. */
export interface DeltaQLeaks {
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
  /** Pressure of the supply leaks while running. */
  supplyPressurePa: Pascals;
  /** Size of the return leaks' pressure while running. */
  returnPressurePa: Pascals;
}

/** One pressure of a Delta-Q test. */
export interface DeltaQPoint {
  /** House minus outside. */
  envelopePressurePa: Pascals;
  /** Flow of the house with the air handler on, minus off, positive into the house. */
  deltaFlowCfm: Cfm;
}

/** Flow that one cfm of supply leakage adds to the house's own at an envelope pressure. Unguarded. */
export function supplyResponse(envelopePressurePa: Pascals, supplyPressurePa: Pascals, exponent: Ratio): Ratio {
  const ratio = envelopePressurePa / supplyPressurePa;
  return signedPower(1 + ratio, exponent) - signedPower(ratio, exponent);
}

/** Flow that one cfm of return leakage takes from it, as a negative number. Unguarded. */
export function returnResponse(envelopePressurePa: Pascals, returnPressurePa: Pascals, exponent: Ratio): Ratio {
  const ratio = envelopePressurePa / returnPressurePa;
  return -(signedPower(1 - ratio, exponent) + signedPower(ratio, exponent));
}

/**
 * Change of the house's flow at each envelope pressure when the air handler starts.
 * ΔQ = Qs[s(1 + ΔP/ΔPs) − s(ΔP/ΔPs)] − Qr[s(1 − ΔP/ΔPr) + s(ΔP/ΔPr)], s(z) = sign(z)·|z|^n; ΔP house minus outside, Q
 * positive into the house, on minus off. Valid for one pressure a side. Source: astm-e1554 (method A, form of),
 * derived. Left out: leaks at different pressures on one side, wind.
 * @throws InputProblem when a leak is below 0 or a pressure not above 0.
 */
export function deltaQModel({
  envelopePressuresPa,
  exponent = DUCT_LEAK_EXPONENT.value,
  ...leaks
}: DeltaQLeaks & { envelopePressuresPa: readonly Pascals[]; exponent?: Ratio }): { deltaFlowsCfm: Cfm[] } {
  requireLeakExponent(exponent);
  for (const [field, label] of [
    ["supplyLeakageCfm", "Supply leakage"],
    ["returnLeakageCfm", "Return leakage"],
  ] as const) {
    requireBetween({ field, label, value: leaks[field], unit: "cfm", low: 0, high: 20000 });
  }
  for (const [field, label] of [
    ["supplyPressurePa", "Supply pressure"],
    ["returnPressurePa", "Return pressure"],
  ] as const) {
    requireAbove({ field, label, value: leaks[field], unit: "Pa" });
  }
  const { supplyLeakageCfm, returnLeakageCfm, supplyPressurePa, returnPressurePa } = leaks;
  const deltaFlowsCfm = envelopePressuresPa.map((pressurePa, i) => {
    requireBetween({
      field: `envelopePressuresPa/${i}`,
      label: "Envelope pressure",
      value: pressurePa,
      unit: "Pa",
      low: -200,
      high: 200,
    });
    return (
      supplyLeakageCfm * supplyResponse(pressurePa, supplyPressurePa, exponent) +
      returnLeakageCfm * returnResponse(pressurePa, returnPressurePa, exponent)
    );
  });
  return { deltaFlowsCfm };
}
