import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { BtuPerHour, Cfm, PoundsPerCubicFoot, SquareFeet, ThermalResistance } from "#lib/units/quantity.ts";

/** What one duct system is, where all its ducts run in one place a side. */
export interface OnePlaceDucts {
  fanFlowCfm: Cfm;
  /** To the zone around the duct, at operating pressure. */
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
  supplyAreaFt2: SquareFeet;
  returnAreaFt2: SquareFeet;
  /** Effective: with the air films. */
  supplyRValue: ThermalResistance;
  returnRValue: ThermalResistance;
  capacityBtuPerH: BtuPerHour;
  airDensityLbPerFt3: PoundsPerCubicFoot;
}

/** Refuses a leakage that the fan cannot lose: below 0, or not less than its flow. */
function requireLeakage(field: string, label: string, leakageCfm: Cfm, fanFlowCfm: Cfm): void {
  if (leakageCfm >= 0 && leakageCfm < fanFlowCfm) return;
  refuse({
    field,
    detail: `${label} must be at least 0 and less than the fan flow of ${fanFlowCfm} cfm, not ${leakageCfm}`,
    fix: "Enter the leakage at operating pressure in cfm, and check the fan flow.",
  });
}

/** Refuses ducts that the closed forms cannot answer: no flow, impossible leakage, bare numbers without resistance. */
export function requireDucts(ducts: OnePlaceDucts): void {
  requireAbove({ field: "fanFlowCfm", label: "Fan flow", value: ducts.fanFlowCfm, unit: "cfm" });
  requireLeakage("supplyLeakageCfm", "Supply leakage", ducts.supplyLeakageCfm, ducts.fanFlowCfm);
  requireLeakage("returnLeakageCfm", "Return leakage", ducts.returnLeakageCfm, ducts.fanFlowCfm);
  const area = { unit: "ft²", low: 0, high: 1e6 };
  requireBetween({ field: "supplyAreaFt2", label: "Supply duct area", value: ducts.supplyAreaFt2, ...area });
  requireBetween({ field: "returnAreaFt2", label: "Return duct area", value: ducts.returnAreaFt2, ...area });
  const resistance = { fix: "Enter the effective R-value: nominal plus 0.7 for the air films, or 1.0 for bare metal." };
  requireAbove({ field: "supplyRValue", label: "Supply duct R-value", value: ducts.supplyRValue, ...resistance });
  requireAbove({ field: "returnRValue", label: "Return duct R-value", value: ducts.returnRValue, ...resistance });
  requireAbove({ field: "capacityBtuPerH", label: "Capacity", value: ducts.capacityBtuPerH, unit: "Btu/h" });
  requireAbove({ field: "airDensityLbPerFt3", label: "Air density", value: ducts.airDensityLbPerFt3, unit: "lb/ft³" });
}

/** Refuses a temperature that no house, zone or weather has. */
export function requireTemperature(field: string, label: string, temperatureF: number): void {
  requireBetween({ field, label, value: temperatureF, unit: "°F", low: -80, high: 200 });
}

/** Refuses a share or regain outside 0 to 1. */
export function requireShare(field: string, label: string, value: number): void {
  requireBetween({ field, label, value, low: 0, high: 1 });
}
