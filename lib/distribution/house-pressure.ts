import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/**
 * Pressure of the house against outside while the blower runs, from unequal duct leaks to outside. Below 0: the house
 * is pulled on, since more air is blown out of it than is drawn in.
 * ΔP = sign(Q_r − Q_s)(|Q_r − Q_s|/C)^(1/n), C and n of the shell's power law Q = C ΔP^n. Valid up to about 50 Pa.
 * Source: derived (the shell must pass what the ducts do not balance). Left out: wind, stack, other fans, closed doors.
 * @throws InputProblem when C or n are impossible or a leak is below 0.
 */
export function housePressure({
  supplyLeakageCfm,
  returnLeakageCfm,
  envelopeCoefficient,
  envelopeExponent,
}: {
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
  /** cfm at 1 Pa. From a test at 50 Pa: cfm50/50^n. */
  envelopeCoefficient: number;
  envelopeExponent: Ratio;
}): { housePressurePa: Pascals } {
  const flow = { unit: "cfm", low: 0, high: 1e5 };
  requireBetween({ field: "supplyLeakageCfm", label: "Supply leakage to outside", value: supplyLeakageCfm, ...flow });
  requireBetween({ field: "returnLeakageCfm", label: "Return leakage to outside", value: returnLeakageCfm, ...flow });
  requireAbove({ field: "envelopeCoefficient", label: "Shell leakage at 1 Pa", value: envelopeCoefficient });
  requireBetween({ field: "envelopeExponent", label: "Shell exponent", value: envelopeExponent, low: 0.4, high: 1 });
  const netInCfm = returnLeakageCfm - supplyLeakageCfm;
  return {
    housePressurePa: Math.sign(netInCfm) * (Math.abs(netInCfm) / envelopeCoefficient) ** (1 / envelopeExponent),
  };
}
