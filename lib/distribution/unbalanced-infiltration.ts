import { requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm } from "#lib/units/quantity.ts";

/**
 * Air that enters and leaves through the house's shell while unequal duct leaks to outside push or pull on it.
 * U = |Q_s − Q_r|. More supply leakage pulls: in = Q_n + U/2 while U < 2 Q_n, else U; out = max(0, Q_n − U/2). More
 * return leakage pushes, the other way round. Valid for leakage to outside at operating pressure.
 * Source: palmiter-bond (form of, from memory). Left out: wind and cold moving the house's pressure themselves.
 * @throws InputProblem when a flow is below 0 or impossibly large.
 */
export function unbalancedInfiltration({
  naturalInfiltrationCfm,
  supplyLeakageCfm,
  returnLeakageCfm,
}: {
  naturalInfiltrationCfm: Cfm;
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
}): { infiltrationCfm: Cfm; exfiltrationCfm: Cfm } {
  const flow = { unit: "cfm", low: 0, high: 1e5 };
  requireBetween({
    field: "naturalInfiltrationCfm",
    label: "Natural infiltration",
    value: naturalInfiltrationCfm,
    ...flow,
  });
  requireBetween({ field: "supplyLeakageCfm", label: "Supply leakage", value: supplyLeakageCfm, ...flow });
  requireBetween({ field: "returnLeakageCfm", label: "Return leakage", value: returnLeakageCfm, ...flow });
  const unbalancedCfm = Math.abs(supplyLeakageCfm - returnLeakageCfm);
  const driven = Math.max(unbalancedCfm, naturalInfiltrationCfm + unbalancedCfm / 2);
  const opposed = Math.max(0, naturalInfiltrationCfm - unbalancedCfm / 2);
  return supplyLeakageCfm >= returnLeakageCfm
    ? { infiltrationCfm: driven, exfiltrationCfm: opposed }
    : { infiltrationCfm: opposed, exfiltrationCfm: driven };
}
