import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, PoundsPerCubicFoot, Ratio, Share, ThermalConductance } from "#lib/units/quantity.ts";
import { conductionFactor } from "./conduction-factor.ts";

export type Staging = "single" | "two-stage" | "variable";

interface StageDefaults {
  capacityRatio: SourcedValue;
  flowRatio: SourcedValue;
  blowerPowerRatio: SourcedValue;
  loadShare: SourcedValue;
}

const usual = { sourceId: "practice", locator: "usual equipment, from memory" } as const;
const fanLaw = {
  sourceId: "derived",
  locator: "fan law, flow ratio to the power of 2.5: the motor loses some of 3",
} as const;

/** What the low stage is over the high one, and how much of a season's need it meets. */
export const LOW_STAGE: Readonly<Record<Exclude<Staging, "single">, StageDefaults>> = {
  "two-stage": {
    capacityRatio: { value: 0.68, unit: "ratio", source: usual, low: 0.6, high: 0.75 },
    flowRatio: { value: 0.7, unit: "ratio", source: usual, low: 0.6, high: 0.85 },
    blowerPowerRatio: { value: 0.41, unit: "ratio", source: fanLaw, low: 0.3, high: 0.7 },
    loadShare: { value: 0.8, unit: "share", source: usual, low: 0.6, high: 0.95 },
  },
  variable: {
    capacityRatio: { value: 0.5, unit: "ratio", source: usual, low: 0.35, high: 0.7 },
    flowRatio: { value: 0.55, unit: "ratio", source: usual, low: 0.4, high: 0.75 },
    blowerPowerRatio: { value: 0.22, unit: "ratio", source: fanLaw, low: 0.12, high: 0.5 },
    loadShare: { value: 0.9, unit: "share", source: usual, low: 0.7, high: 1 },
  },
};

/**
 * What a leak passes at the low stage, over the high one. In the same ducts pressure follows the square of the flow, so
 * φ^(2n), n the exponent of duct leaks. Source: derived.
 */
export const lowStageLeakRatio = (flowRatio: Ratio): Ratio => flowRatio ** (2 * DUCT_LEAK_EXPONENT.value);

/**
 * What the ducts lose at a low stage of the equipment, beside the high one.
 * φ = low flow/high flow. Leak share at low = (Q_leak/Q)·φ^(2n−1), n = 0.6; conduction factor at low = exp(−UA/(φ m cp)).
 * A season whose need is met by the low stage to the share f: 1/η = f/η_low + (1 − f)/η_high. Valid φ 0.2 to 1; φ = 1
 * gives the high stage. Source: derived; ashrae-152 (form of) and lbl-duct-sensitivity find the same direction: less air stays longer
 * in the ducts. Left out: the time between stages, fewer starts, leaks whose exponent is not 0.6.
 * @throws InputProblem when a value is outside its range.
 */
export function lowStageLosses({
  fanFlowCfm,
  leakageCfm,
  conductanceBtuPerHF,
  flowRatio,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
}: {
  /** At the high stage. */
  fanFlowCfm: Cfm;
  /** Of one side, at the high stage. */
  leakageCfm: Cfm;
  /** Σ area/R of that side. */
  conductanceBtuPerHF: ThermalConductance;
  flowRatio: Ratio;
  airDensityLbPerFt3?: PoundsPerCubicFoot;
}): { highLeakShare: Share; lowLeakShare: Share; highConductionFactor: Ratio; lowConductionFactor: Ratio } {
  requireAbove({ field: "fanFlowCfm", label: "Fan flow", value: fanFlowCfm, unit: "cfm" });
  requireBetween({ field: "leakageCfm", label: "Leakage", value: leakageCfm, unit: "cfm", low: 0, high: fanFlowCfm });
  requireBetween({
    field: "conductanceBtuPerHF",
    label: "Area over R",
    value: conductanceBtuPerHF,
    unit: "Btu/(h·°F)",
    low: 0,
    high: 5000,
  });
  requireBetween({ field: "flowRatio", label: "Low flow over high flow", value: flowRatio, low: 0.2, high: 1 });
  const heatRate = MINUTES_PER_HOUR * fanFlowCfm * airDensityLbPerFt3 * AIR_SPECIFIC_HEAT.value;
  const highLeakShare = leakageCfm / fanFlowCfm;
  return {
    highLeakShare,
    lowLeakShare: (highLeakShare * lowStageLeakRatio(flowRatio)) / flowRatio,
    highConductionFactor: conductionFactor(conductanceBtuPerHF, heatRate),
    lowConductionFactor: conductionFactor(conductanceBtuPerHF, flowRatio * heatRate),
  };
}
