import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { BtuPerPound, Fahrenheit, Ratio } from "#lib/units/quantity.ts";
import { conductionFactor } from "./conduction-factor.ts";
import { type OnePlaceDucts, requireDucts, requireTemperature } from "./duct-guards.ts";
import { REGISTER_WARMER_THAN_ROOM, RETURN_LEAK_HELPS } from "./explanations.ts";

/** Sensible part of a cooling coil's total capacity when it is not known. */
export const TYPICAL_SENSIBLE_HEAT_RATIO = {
  value: 0.75,
  unit: "ratio",
  source: { sourceId: "practice", locator: "residential coils near their rating point" },
  low: 0.68,
  high: 0.85,
} as const satisfies SourcedValue;

/** Refuses an enthalpy below that of dry air at the same temperature: it would need less than no moisture. */
export function requireEnthalpy(field: string, label: string, enthalpyBtuPerLb: number, temperatureF: number): void {
  const dry = AIR_SPECIFIC_HEAT.value * temperatureF;
  if (enthalpyBtuPerLb >= dry - 1e-9 * Math.abs(dry) && enthalpyBtuPerLb <= 200) return;
  refuse({
    field,
    detail: `${label} must be from ${dry.toFixed(2)} Btu/lb (dry air at ${temperatureF} °F) to 200 Btu/lb, not ${enthalpyBtuPerLb}`,
    fix: "Enter the enthalpy of moist air per pound of dry air, counted from 0 °F, as moist-air gives it.",
  });
}

/**
 * Share of a cooling coil's total capacity that arrives through the registers, all ducts of a side in one place.
 * M = 60 Q ρ, Δh_r = a_r cp (t_z − t_in)(1 − B_r) + (1 − a_r)(h_z − h_in), t_sp = coil entering − SHR·capacity/(M cp);
 * DE = a_s [capacity − M Δh_r − M cp (t_zs − t_sp)(1 − B_s)]/capacity. Valid for steady operation with a wet or dry
 * coil. Source: ashrae-152 (form of), and derived: an energy balance along the ducts. Left out: regain, infiltration;
 * the heat capacity of the moisture (below 3 % of conduction); a sensible heat ratio that moves with the return air.
 * @throws InputProblem when there is no flow, a leak is not below the flow, R is not above 0, or an enthalpy is below dry air's.
 */
export function deliveryEffectivenessCooling({
  indoorTemperatureF,
  supplyZoneTemperatureF,
  returnZoneTemperatureF,
  indoorEnthalpyBtuPerLb,
  returnZoneEnthalpyBtuPerLb,
  sensibleHeatRatio = TYPICAL_SENSIBLE_HEAT_RATIO.value,
  airDensityLbPerFt3 = STANDARD_AIR_DENSITY.value,
  ...given
}: Omit<OnePlaceDucts, "airDensityLbPerFt3"> & {
  indoorTemperatureF: Fahrenheit;
  supplyZoneTemperatureF: Fahrenheit;
  returnZoneTemperatureF: Fahrenheit;
  indoorEnthalpyBtuPerLb: BtuPerPound;
  returnZoneEnthalpyBtuPerLb: BtuPerPound;
  sensibleHeatRatio?: Ratio;
  airDensityLbPerFt3?: OnePlaceDucts["airDensityLbPerFt3"];
}): {
  deliveryEffectiveness: Ratio;
  supplyPlenumTemperatureF: Fahrenheit;
  returnGainFraction: Ratio;
  returnConductionFraction: Ratio;
  /** What is unusual: register air warmer than the room, a return leak that brings in cooler or drier air. */
  notes: readonly ValidityNote[];
} {
  const ducts = { ...given, airDensityLbPerFt3 };
  requireDucts(ducts);
  requireTemperature("indoorTemperatureF", "Indoor temperature", indoorTemperatureF);
  requireTemperature("supplyZoneTemperatureF", "Temperature around the supply ducts", supplyZoneTemperatureF);
  requireTemperature("returnZoneTemperatureF", "Temperature around the return ducts", returnZoneTemperatureF);
  requireEnthalpy("indoorEnthalpyBtuPerLb", "Indoor enthalpy", indoorEnthalpyBtuPerLb, indoorTemperatureF);
  requireEnthalpy(
    "returnZoneEnthalpyBtuPerLb",
    "Enthalpy around the return",
    returnZoneEnthalpyBtuPerLb,
    returnZoneTemperatureF,
  );
  requireBetween({
    field: "sensibleHeatRatio",
    label: "Sensible heat ratio",
    value: sensibleHeatRatio,
    low: 0.2,
    high: 1,
  });

  const capacity = ducts.capacityBtuPerH;
  const airMassRateLbPerH = MINUTES_PER_HOUR * ducts.fanFlowCfm * airDensityLbPerFt3;
  const airHeatRateBtuPerHF = airMassRateLbPerH * AIR_SPECIFIC_HEAT.value;
  const supplyLeakFactor = 1 - ducts.supplyLeakageCfm / ducts.fanFlowCfm;
  const returnLeakFactor = 1 - ducts.returnLeakageCfm / ducts.fanFlowCfm;
  const supplyConduction = 1 - conductionFactor(ducts.supplyAreaFt2 / ducts.supplyRValue, airHeatRateBtuPerHF);
  const returnConduction = 1 - conductionFactor(ducts.returnAreaFt2 / ducts.returnRValue, airHeatRateBtuPerHF);

  const returnZoneExcessF = returnZoneTemperatureF - indoorTemperatureF;
  const conductedBtuPerLb = returnLeakFactor * AIR_SPECIFIC_HEAT.value * returnZoneExcessF * returnConduction;
  const leakedBtuPerLb = (1 - returnLeakFactor) * (returnZoneEnthalpyBtuPerLb - indoorEnthalpyBtuPerLb);
  const coilEnteringF =
    indoorTemperatureF + (returnLeakFactor * returnConduction + 1 - returnLeakFactor) * returnZoneExcessF;
  const supplyPlenumTemperatureF = coilEnteringF - (sensibleHeatRatio * capacity) / airHeatRateBtuPerHF;
  const returnGain = airMassRateLbPerH * (conductedBtuPerLb + leakedBtuPerLb);
  const supplyGain = airHeatRateBtuPerHF * (supplyZoneTemperatureF - supplyPlenumTemperatureF) * supplyConduction;
  const registerTemperatureF =
    supplyPlenumTemperatureF + (supplyZoneTemperatureF - supplyPlenumTemperatureF) * supplyConduction;
  return {
    deliveryEffectiveness: (supplyLeakFactor * (capacity - returnGain - supplyGain)) / capacity,
    supplyPlenumTemperatureF,
    returnGainFraction: returnGain / capacity,
    returnConductionFraction: (airMassRateLbPerH * conductedBtuPerLb) / capacity,
    notes: [
      ...(registerTemperatureF > indoorTemperatureF ? [REGISTER_WARMER_THAN_ROOM] : []),
      ...(leakedBtuPerLb < 0 ? [RETURN_LEAK_HELPS.cooling] : []),
    ],
  };
}
