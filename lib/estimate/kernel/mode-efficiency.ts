import { AIR_SPECIFIC_HEAT } from "#lib/air/standard-air.ts";
import type { DuctModel } from "../complete/complete-ducts.ts";
import type { PlaceModel } from "../complete/complete-places.ts";
import type { SeasonBins } from "../season-bins.ts";
import type { LeakState } from "./leak-state.ts";
import { createPlaceMix, fillPlaceMix, type PlaceMix } from "./place-mix.ts";
import type { ZoneCoefficients } from "./zone-coefficients.ts";

/** What one system does in one mode and state, bin by bin. */
export interface ModeEfficiency {
  readonly efficiency: Float64Array;
  /** Part of the equipment's output that arrives through the registers, and that comes back by regain. */
  readonly roomsShare: Float64Array;
  readonly regainedShare: Float64Array;
  /** Coldest register air in heating, warmest in cooling. */
  worstRegisterF: number;
  readonly mixes: {
    supplyConduction: PlaceMix;
    supplyLeak: PlaceMix;
    returnConduction: PlaceMix;
    returnLeak: PlaceMix;
  };
}

export function createModeEfficiency(binsCount: number): ModeEfficiency {
  return {
    efficiency: new Float64Array(binsCount),
    roomsShare: new Float64Array(binsCount),
    regainedShare: new Float64Array(binsCount),
    worstRegisterF: 0,
    mixes: {
      supplyConduction: createPlaceMix(),
      supplyLeak: createPlaceMix(),
      returnConduction: createPlaceMix(),
      returnLeak: createPlaceMix(),
    },
  };
}

export interface ModeEfficiencyInput {
  bins: SeasonBins;
  places: readonly PlaceModel[];
  zones: ZoneCoefficients;
  ducts: DuctModel;
  parameters: Float64Array;
  leaks: LeakState;
  fanFlowCfm: number;
  airDensityLbPerFt3: number;
  indoorF: number;
  indoorEnthalpyBtuPerLb: number;
  indoorHumidityRatio: number;
  /** Output of the equipment at its rating, and how it follows the outdoor temperature: rated × (1 + slope (t − 47)). */
  capacityBtuPerH: number;
  capacitySlopePerF: number;
  sensibleHeatRatio: number;
  infiltrationOnCfm: number;
  infiltrationOffCfm: number;
}

const MINUTES = 60;
/** A delivered share below this is held here, so that loads stay finite; it is warned about. */
const LEAST_EFFICIENCY = 0.05;
/** More than this share of the fan flow cannot leak on one side without the rooms' air being gone. */
const MOST_LEAK_SHARE = 0.7;
const VAPOR_BTU_PER_LB = 1061;
const VAPOR_BTU_PER_LB_F = 0.444;
const HEATING_RATING_F = 47;
const LEAST_CAPACITY_RATIO = 0.2;

/**
 * Distribution efficiency of one system in every bin of a season.
 * The trip of the air: house → return duct (conduction, then leak) → equipment → supply duct (conduction, then leak) →
 * rooms; then regain, infiltration that the leaks drive while the blower runs, and cycling. It equals
 * delivery-effectiveness, thermal-regain, load-factor and distribution-efficiency (form of ashrae-152) when all ducts
 * lie in one place; a test holds them together. Allocates nothing.
 */
export function fillModeEfficiency(out: ModeEfficiency, input: ModeEfficiencyInput): void {
  const { bins, places, zones, ducts, parameters, leaks, indoorF } = input;
  const massFlow = MINUTES * input.fanFlowCfm * input.airDensityLbPerFt3;
  const heatFlow = massFlow * AIR_SPECIFIC_HEAT.value;
  const insulationFactor = parameters[ducts.conductanceFactorAt]!;
  const { supplyConduction, supplyLeak, returnConduction, returnLeak } = out.mixes;
  const shared = { zones, places, parameters, indoorF };
  const supplyConductance =
    insulationFactor * fillPlaceMix(supplyConduction, { ...shared, weights: ducts.supplyConductance });
  const returnConductance =
    insulationFactor * fillPlaceMix(returnConduction, { ...shared, weights: ducts.returnConductance });
  const supplyLeakShare = Math.min(
    MOST_LEAK_SHARE,
    fillPlaceMix(supplyLeak, { ...shared, weights: leaks.supplyToZone }) / input.fanFlowCfm,
  );
  const returnLeakShare = Math.min(
    MOST_LEAK_SHARE,
    fillPlaceMix(returnLeak, { ...shared, weights: leaks.returnToZone }) / input.fanFlowCfm,
  );
  const keptSupply = 1 - supplyLeakShare;
  const keptReturn = 1 - returnLeakShare;
  const supplyDecay = Math.exp(-supplyConductance / heatFlow);
  const returnDecay = Math.exp(-returnConductance / heatFlow);
  // Regain of the supply side by what it loses: by leaks and through the walls.
  const conductionLoss = keptSupply * (1 - supplyDecay);
  const lossOfSupply = supplyLeakShare + conductionLoss;
  const supplyRegain =
    lossOfSupply > 0
      ? (supplyLeakShare * supplyLeak.regainFactor + conductionLoss * supplyConduction.regainFactor) / lossOfSupply
      : 0;
  const returnRegain = returnConduction.regainFactor;
  const cycling = ducts.cyclingLoss * ducts.outsideAreaShare * (1 - supplyRegain);
  const infiltrationFlow = MINUTES * input.airDensityLbPerFt3 * (input.infiltrationOnCfm - input.infiltrationOffCfm);
  const isHeating = bins.mode === "heating";
  const { capacityBtuPerH, capacitySlopePerF, sensibleHeatRatio, indoorEnthalpyBtuPerLb, indoorHumidityRatio } = input;
  let worst = isHeating ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  for (let bin = 0; bin < bins.count; bin++) {
    const outdoorF = bins.temperatureF[bin]!;
    const sun = bins.sunBtuPerHFt2[bin]!;
    const ground = bins.groundF[bin]!;
    const night = bins.isNight[bin]!;
    const returnZoneF =
      returnConduction.constant +
      returnConduction.outdoor * outdoorF +
      returnConduction.sun * sun +
      returnConduction.ground * ground +
      returnConduction.night * night;
    const returnLeakF =
      returnLeak.constant +
      returnLeak.outdoor * outdoorF +
      returnLeak.sun * sun +
      returnLeak.ground * ground +
      returnLeak.night * night;
    const supplyZoneF =
      supplyConduction.constant +
      supplyConduction.outdoor * outdoorF +
      supplyConduction.sun * sun +
      supplyConduction.ground * ground +
      supplyConduction.night * night;
    let capacityRatio = 1 + capacitySlopePerF * (outdoorF - HEATING_RATING_F);
    if (capacityRatio < LEAST_CAPACITY_RATIO) capacityRatio = LEAST_CAPACITY_RATIO;
    const capacity = capacityBtuPerH * capacityRatio;
    let delivered: number;
    let regained: number;
    let infiltrationLoad: number;
    let registerF: number;
    if (isHeating) {
      const rise = capacity / heatFlow;
      const afterReturnDuctF = returnZoneF + (indoorF - returnZoneF) * returnDecay;
      const equipmentF = keptReturn * afterReturnDuctF + returnLeakShare * returnLeakF;
      registerF = supplyZoneF + (equipmentF + rise - supplyZoneF) * supplyDecay;
      delivered = (keptSupply * (registerF - indoorF)) / rise;
      const supplyLoss = 1 - delivered - (indoorF - equipmentF) / rise;
      regained =
        supplyRegain * supplyLoss + (returnRegain * keptReturn * (1 - returnDecay) * (indoorF - returnZoneF)) / rise;
      infiltrationLoad = (infiltrationFlow * AIR_SPECIFIC_HEAT.value * (indoorF - outdoorF)) / capacity;
    } else {
      const leakHumidity =
        returnLeak.outdoorMoistureShare * bins.humidityRatio[bin]! +
        (1 - returnLeak.outdoorMoistureShare) * indoorHumidityRatio;
      const leakEnthalpy =
        AIR_SPECIFIC_HEAT.value * returnLeakF + leakHumidity * (VAPOR_BTU_PER_LB + VAPOR_BTU_PER_LB_F * returnLeakF);
      const conductionGain = keptReturn * AIR_SPECIFIC_HEAT.value * (returnZoneF - indoorF) * (1 - returnDecay);
      const returnGain = conductionGain + returnLeakShare * (leakEnthalpy - indoorEnthalpyBtuPerLb);
      const afterReturnDuctF = returnZoneF + (indoorF - returnZoneF) * returnDecay;
      const coilEnteringF = keptReturn * afterReturnDuctF + returnLeakShare * returnLeakF;
      const plenumF = coilEnteringF - (sensibleHeatRatio * capacity) / heatFlow;
      registerF = supplyZoneF + (plenumF - supplyZoneF) * supplyDecay;
      delivered =
        (keptSupply * (capacity - massFlow * returnGain - heatFlow * (supplyZoneF - plenumF) * (1 - supplyDecay))) /
        capacity;
      const returnGainFraction = (massFlow * returnGain) / capacity;
      regained =
        supplyRegain * (1 - delivered - returnGainFraction) + (returnRegain * massFlow * conductionGain) / capacity;
      infiltrationLoad = (infiltrationFlow * (bins.enthalpyBtuPerLb[bin]! - indoorEnthalpyBtuPerLb)) / capacity;
    }
    if (isHeating ? registerF < worst : registerF > worst) worst = registerF;
    const withRegain = delivered + regained;
    // load-factor: 1 − infiltration load / (DE × capacity), so the product is the difference.
    const efficiency = (withRegain - infiltrationLoad) * (1 - cycling);
    const held = efficiency > LEAST_EFFICIENCY ? (efficiency < 1 ? efficiency : 1) : LEAST_EFFICIENCY;
    out.efficiency[bin] = held;
    const regainedPart = withRegain > 0 && regained > 0 ? (held * regained) / withRegain : 0;
    out.regainedShare[bin] = regainedPart;
    out.roomsShare[bin] = held - regainedPart;
  }
  out.worstRegisterF = worst;
}
