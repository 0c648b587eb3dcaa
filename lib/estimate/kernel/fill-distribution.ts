import { unbalancedInfiltration } from "#lib/distribution/unbalanced-infiltration.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { Mode, SeasonBins } from "../season-bins.ts";
import type { HouseState } from "./house-state.ts";
import { fillModeEfficiency } from "./mode-efficiency.ts";
import type { EquipmentCurve } from "./mode-energy.ts";
import type { ZoneCoefficients } from "./zone-coefficients.ts";

/** The temperatures of the places, for the indoor temperature of each mode. */
export interface Zones {
  heating: ZoneCoefficients;
  cooling: ZoneCoefficients;
}

const RATING_SPAN_F = 30;
/** Output of an air conditioner falls as it gets hotter outside: 0.5 % a °F above the rating at 95 °F. Source: practice. */
const BTU_PER_WH = 3.412141633;

/** The equipment of one system in one mode as the kernel needs it, for one draw. */
export function equipmentCurve(
  house: HouseModel,
  systemIndex: number,
  mode: Mode,
  parameters: Float64Array,
  out: EquipmentCurve,
): EquipmentCurve {
  const system = house.systems[systemIndex]!;
  if (mode === "heating") {
    const heating = system.heating!;
    out.kind = heating.isHeatPump ? "heat-pump" : "fixed";
    out.capacityBtuPerH = parameters[heating.capacityAt]!;
    out.capacitySlopePerF = heating.isHeatPump ? (1 - heating.capacityAt17Ratio) / RATING_SPAN_F : 0;
    out.efficiencyRatio = heating.isHeatPump
      ? heating.copAt47 * parameters[heating.copFactorAt]!
      : parameters[heating.efficiencyAt]!;
    out.efficiencySlopePerF = heating.isHeatPump
      ? ((heating.copAt47 - heating.copAt17) * parameters[heating.copFactorAt]!) / RATING_SPAN_F
      : 0;
    out.degradationCoefficient = heating.degradationCoefficient;
  } else {
    const cooling = system.cooling!;
    out.kind = "fixed";
    out.capacityBtuPerH = parameters[cooling.capacityAt]!;
    out.capacitySlopePerF = 0;
    // SEER already holds part load and the mix of temperatures of a season.
    out.efficiencyRatio = parameters[cooling.seerAt]! / BTU_PER_WH;
    out.efficiencySlopePerF = 0;
    out.degradationCoefficient = 0;
  }
  return out;
}

export const createEquipmentCurve = (): EquipmentCurve => ({
  kind: "fixed",
  capacityBtuPerH: 0,
  capacitySlopePerF: 0,
  efficiencyRatio: 1,
  efficiencySlopePerF: 0,
  degradationCoefficient: 0,
});

interface Input {
  house: HouseModel;
  state: HouseState;
  zones: Zones;
  parameters: Float64Array;
  curve: EquipmentCurve;
}

/** Fills the efficiency of every system, mode and bin, and of the design day. */
export function fillDistribution({ house, state, zones, parameters, curve }: Input): void {
  const { indoor } = house.loads;
  let supplyOutside = 0;
  let returnOutside = 0;
  for (let s = 0; s < house.systems.length; s++) {
    supplyOutside += state.systems[s]!.leaks.supplyOutsideCfm;
    returnOutside += state.systems[s]!.leaks.returnOutsideCfm;
  }
  const natural = parameters[house.loads.naturalInfiltrationAt]!;
  state.infiltrationOnCfm = unbalancedInfiltration({
    naturalInfiltrationCfm: natural,
    supplyLeakageCfm: supplyOutside,
    returnLeakageCfm: returnOutside,
  }).infiltrationCfm;
  for (let s = 0; s < house.systems.length; s++) {
    const system = house.systems[s]!;
    const systemState = state.systems[s]!;
    for (const mode of ["heating", "cooling"] as const) {
      const modeState = systemState.modes[mode];
      if (!modeState) continue;
      equipmentCurve(house, s, mode, parameters, curve);
      const isHeating = mode === "heating";
      const fill = (target: typeof modeState.season, bins: SeasonBins) =>
        fillModeEfficiency(target, {
          bins,
          places: house.places,
          zones: isHeating ? zones.heating : zones.cooling,
          ducts: system.ducts,
          parameters,
          leaks: systemState.leaks,
          fanFlowCfm: systemState.fanFlowCfm,
          airDensityLbPerFt3: house.airDensityLbPerFt3,
          indoorF: isHeating ? indoor.heatingF : indoor.coolingF,
          indoorEnthalpyBtuPerLb: indoor.coolingEnthalpyBtuPerLb,
          indoorHumidityRatio: indoor.coolingHumidityRatio,
          capacityBtuPerH: curve.capacityBtuPerH,
          capacitySlopePerF: curve.capacitySlopePerF,
          sensibleHeatRatio: system.cooling?.sensibleHeatRatio ?? 1,
          infiltrationOnCfm: state.infiltrationOnCfm,
          infiltrationOffCfm: natural,
        });
      fill(modeState.season, isHeating ? house.loads.heating : house.loads.cooling);
      fill(modeState.design, isHeating ? house.designHeating : house.designCooling);
    }
  }
}
