import type { PreparedDucts } from "#lib/distribution/duct-system.ts";
import { equipmentAirflow } from "#lib/distribution/equipment-airflow.ts";
import { fillFixedCooling, fillFixedHeating, LEAST_USEFUL_SHARE } from "#lib/distribution/fixed-equipment-season.ts";
import { fillCoolingLine } from "#lib/distribution/useful-cooling-line.ts";
import { fillHeatingLine } from "#lib/distribution/useful-heating-line.ts";
import { fillUsefulHeatPump, usefulInBin } from "#lib/distribution/useful-line.ts";
import type { ZoneLines } from "#lib/distribution/weather-columns.ts";
import type { IndoorModel } from "../complete/complete-indoor.ts";
import type { SystemModel } from "../complete/complete-systems.ts";
import { designCapacity, type HeatPumpState, type ModeState } from "./mode-state.ts";

const BTU_PER_WH = 3.412141633;

export interface ModeInput {
  system: SystemModel;
  ducts: PreparedDucts;
  zones: ZoneLines;
  indoor: IndoorModel;
  parameters: Float64Array;
  fanFlowCfm: number;
}

/** Rated output and efficiency of this draw; a heat pump or air conditioner also by its airflow (equipment-airflow). */
function fillEquipment(state: ModeState, { system, parameters, fanFlowCfm }: ModeInput): void {
  const { heating, cooling, ratedCfmPerTon } = system;
  if (state.mode === "cooling") {
    const rated = parameters[cooling!.capacityAt]!;
    const airflow = equipmentAirflow({ mode: "cooling", fanFlowCfm, ratedCapacityBtuPerH: rated, ratedCfmPerTon });
    state.ratedBtuPerH = rated * airflow.capacityFactor;
    state.airflowFactor = airflow.efficiencyFactor;
    // SEER already holds part load and the temperatures of a season.
    state.efficiencyRatio = (parameters[cooling!.seerAt]! / BTU_PER_WH) * airflow.efficiencyFactor;
    return;
  }
  const rated = parameters[heating!.capacityAt]!;
  if (!heating!.isHeatPump) {
    state.ratedBtuPerH = rated;
    state.airflowFactor = 1;
    state.efficiencyRatio = parameters[heating!.efficiencyAt]!;
    return;
  }
  const airflow = equipmentAirflow({ mode: "heating", fanFlowCfm, ratedCapacityBtuPerH: rated, ratedCfmPerTon });
  state.ratedBtuPerH = rated * airflow.capacityFactor;
  state.airflowFactor = airflow.efficiencyFactor;
  state.efficiencyRatio = parameters[heating!.copFactorAt]! * airflow.efficiencyFactor;
}

/** Load-weighted efficiency of the ducts over a season: Σ share / Σ share/η (seasonal-efficiency). */
function seasonalEfficiency({ bins }: ModeState, { usefulBtuPerH, capacityBtuPerH }: HeatPumpState): number {
  let inverse = 0;
  for (let b = 0; b < bins.count; b++) {
    const efficiency = usefulBtuPerH[b]! / capacityBtuPerH[b]!;
    inverse += bins.loadShare[b]! / Math.max(efficiency, LEAST_USEFUL_SHARE);
  }
  return inverse > 0 ? 1 / inverse : 0;
}

function fillHeatPump(state: ModeState, heatPump: HeatPumpState): void {
  const { capacityBtuPerH, cop, profile, usefulBtuPerH } = heatPump;
  for (let b = 0; b < state.bins.count; b++) {
    capacityBtuPerH[b] = state.ratedBtuPerH * profile.capacityRatio[b]!;
    cop[b] = state.efficiencyRatio * profile.cop[b]!;
  }
  fillUsefulHeatPump({ useful: state.useful, weather: state.bins, capacityBtuPerH, out: usefulBtuPerH });
  state.seasonalEfficiency = seasonalEfficiency(state, heatPump);
}

/**
 * Fills one system in one mode: what an hour of running is worth in every bin, and the efficiency of the ducts on the
 * design day and over the season. Allocates nothing but the small records of the called kernels.
 */
export function fillMode(state: ModeState, input: ModeInput): void {
  const { ducts, zones, indoor, system } = input;
  const { useful, bins } = state;
  fillEquipment(state, input);
  if (state.mode === "heating") fillHeatingLine({ ducts, zones, indoorTemperatureF: indoor.heatingF, out: useful });
  else {
    fillCoolingLine({
      ducts,
      zones,
      indoorTemperatureF: indoor.coolingF,
      indoorEnthalpyBtuPerLb: indoor.coolingEnthalpyBtuPerLb,
      indoorHumidityRatio: indoor.coolingHumidityRatio,
      sensibleHeatRatio: system.cooling!.sensibleHeatRatio,
      infiltrationMoistureShare: input.parameters[indoor.coilMoistureShareAt]!,
      out: useful,
    });
  }
  const designBtuPerH = designCapacity(state);
  const designUseful = usefulInBin(useful, state.designBins, 0, designBtuPerH);
  state.designEfficiency = Math.max(LEAST_USEFUL_SHARE, designUseful / designBtuPerH);
  if (state.heatPump) {
    fillHeatPump(state, state.heatPump);
    return;
  }
  const capacityBtuPerH = state.ratedBtuPerH;
  const fill = state.mode === "heating" ? fillFixedHeating : fillFixedCooling;
  fill({ useful, runs: bins.runs, capacityBtuPerH, out: state.fixed });
  const { runHoursPerBtu } = state.fixed;
  state.seasonalEfficiency = runHoursPerBtu > 0 ? 1 / (capacityBtuPerH * runHoursPerBtu) : 0;
}
