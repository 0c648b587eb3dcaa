import type { PreparedDucts } from "#lib/distribution/duct-system.ts";
import { equipmentAirflow } from "#lib/distribution/equipment-airflow.ts";
import { fillFixedCooling, fillFixedHeating, LEAST_USEFUL_SHARE } from "#lib/distribution/fixed-equipment-season.ts";
import { fillCoolingLine } from "#lib/distribution/useful-cooling-line.ts";
import { fillHeatingLine } from "#lib/distribution/useful-heating-line.ts";
import { fillUsefulHeatPump, type UsefulLine, usefulInBin } from "#lib/distribution/useful-line.ts";
import type { ZoneLines } from "#lib/distribution/weather-columns.ts";
import type { IndoorModel } from "../complete/complete-indoor.ts";
import type { SystemModel } from "../complete/complete-systems.ts";
import { designCapacity, type HeatPumpState, type LowStageState, type ModeState } from "./mode-state.ts";

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
  const { low } = state;
  if (state.mode === "cooling") {
    const rated = parameters[cooling!.capacityAt]!;
    const airflow = equipmentAirflow({ mode: "cooling", fanFlowCfm, ratedCapacityBtuPerH: rated, ratedCfmPerTon });
    state.ratedBtuPerH = rated * airflow.capacityFactor;
    state.airflowFactor = airflow.efficiencyFactor;
    // SEER already holds part load and stages.
    const seerRatio = parameters[cooling!.seerAt]! / BTU_PER_WH;
    state.efficiencyRatio = seerRatio * airflow.efficiencyFactor;
    if (low) fillLowCooling(low, rated, fanFlowCfm, seerRatio, ratedCfmPerTon);
    return;
  }
  const rated = parameters[heating!.capacityAt]!;
  if (!heating!.isHeatPump) {
    state.ratedBtuPerH = rated;
    state.airflowFactor = 1;
    state.efficiencyRatio = parameters[heating!.efficiencyAt]!;
    if (low) {
      low.ratedBtuPerH = low.model.capacityRatio * rated;
      low.efficiencyRatio = state.efficiencyRatio;
    }
    return;
  }
  const airflow = equipmentAirflow({ mode: "heating", fanFlowCfm, ratedCapacityBtuPerH: rated, ratedCfmPerTon });
  state.ratedBtuPerH = rated * airflow.capacityFactor;
  state.airflowFactor = airflow.efficiencyFactor;
  state.efficiencyRatio = parameters[heating!.copFactorAt]! * airflow.efficiencyFactor;
  // A heat pump's low stage is a part of its output at the high one, at the same COP.
  if (low) low.ratedBtuPerH = low.model.capacityRatio * state.ratedBtuPerH;
}

/** The low stage of an air conditioner has its own flow for each ton. */
function fillLowCooling(
  low: LowStageState,
  ratedBtuPerH: number,
  fanFlowCfm: number,
  efficiencyRatio: number,
  ratedCfmPerTon: number,
): void {
  const { capacityRatio, flowRatio } = low.model;
  const ratedCapacityBtuPerH = capacityRatio * ratedBtuPerH;
  const airflow = equipmentAirflow({
    mode: "cooling",
    fanFlowCfm: flowRatio * fanFlowCfm,
    ratedCapacityBtuPerH,
    ratedCfmPerTon,
  });
  low.ratedBtuPerH = ratedCapacityBtuPerH * airflow.capacityFactor;
  low.efficiencyRatio = efficiencyRatio * airflow.efficiencyFactor;
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
  if (!state.low) return;
  const low = state.low.heatPump!;
  for (let b = 0; b < state.bins.count; b++) low.capacityBtuPerH[b] = low.capacityRatio * capacityBtuPerH[b]!;
  fillUsefulHeatPump({
    useful: state.low.useful,
    weather: state.bins,
    capacityBtuPerH: low.capacityBtuPerH,
    out: low.usefulBtuPerH,
  });
}

/** What an hour of running is worth, through these ducts. */
function fillUseful(
  mode: ModeState["mode"],
  { zones, indoor, system, parameters }: ModeInput,
  ducts: PreparedDucts,
  out: UsefulLine,
): void {
  if (mode === "heating") {
    fillHeatingLine({ ducts, zones, indoorTemperatureF: indoor.heatingF, out });
    return;
  }
  fillCoolingLine({
    ducts,
    zones,
    indoorTemperatureF: indoor.coolingF,
    indoorEnthalpyBtuPerLb: indoor.coolingEnthalpyBtuPerLb,
    indoorHumidityRatio: indoor.coolingHumidityRatio,
    sensibleHeatRatio: system.cooling!.sensibleHeatRatio,
    infiltrationMoistureShare: parameters[indoor.coilMoistureShareAt]!,
    out,
  });
}

/**
 * Adds one stage to what a Btu of need asks, for the share of the need that it meets, and returns what it puts into the
 * air for it.
 */
function addStage(
  state: ModeState,
  stage: Pick<ModeState, "useful" | "fixed" | "ratedBtuPerH" | "efficiencyRatio">,
  share: number,
  blowerPowerRatio: number,
): number {
  const { bins, coolingLines, perNeed } = state;
  const { useful, fixed, ratedBtuPerH, efficiencyRatio } = stage;
  const { runHoursPerBtuBySlot, runDegreeHoursPerBtuBySlot } = fixed;
  const inputPerHour = (share * ratedBtuPerH) / efficiencyRatio;
  const runs = share * blowerPowerRatio;
  if (!coolingLines) {
    fillFixedHeating({ useful, runs: bins.runs, capacityBtuPerH: ratedBtuPerH, out: fixed });
    for (let slot = 0; slot < runHoursPerBtuBySlot.length; slot++) {
      const hours = runHoursPerBtuBySlot[slot]!;
      perNeed.runHoursBySlot[slot]! += runs * hours;
      perNeed.inputBtuBySlot[slot]! += inputPerHour * hours;
    }
    perNeed.inputBtu += inputPerHour * fixed.runHoursPerBtu;
    return share * ratedBtuPerH * fixed.runHoursPerBtu;
  }
  const { capacityConstant, capacityPerF, inputConstant, inputPerF } = coolingLines;
  fillFixedCooling({ useful, runs: bins.runs, capacityBtuPerH: ratedBtuPerH, lines: coolingLines, out: fixed });
  for (let slot = 0; slot < runHoursPerBtuBySlot.length; slot++) {
    const hours = runHoursPerBtuBySlot[slot]!;
    const degreeHours = runDegreeHoursPerBtuBySlot[slot]!;
    perNeed.runHoursBySlot[slot]! += runs * hours;
    perNeed.inputBtuBySlot[slot]! += inputPerHour * (inputConstant * hours + inputPerF * degreeHours);
  }
  const { runHoursPerBtu, runDegreeHoursPerBtu } = fixed;
  perNeed.inputBtu += inputPerHour * (inputConstant * runHoursPerBtu + inputPerF * runDegreeHoursPerBtu);
  return share * ratedBtuPerH * (capacityConstant * runHoursPerBtu + capacityPerF * runDegreeHoursPerBtu);
}

/**
 * Fills one system in one mode: what an hour of running is worth in every bin, and the efficiency of the ducts on the
 * design day and over the season. Allocates nothing but the small records of the called kernels.
 */
export function fillMode(state: ModeState, input: ModeInput): void {
  const { useful, low, perNeed } = state;
  fillEquipment(state, input);
  fillUseful(state.mode, input, input.ducts, useful);
  if (low) fillUseful(state.mode, input, low.prepared, low.useful);
  const designBtuPerH = designCapacity(state);
  const designUseful = usefulInBin(useful, state.designBins, 0, designBtuPerH);
  state.designEfficiency = Math.max(LEAST_USEFUL_SHARE, designUseful / designBtuPerH);
  if (state.heatPump) {
    fillHeatPump(state, state.heatPump);
    return;
  }
  perNeed.inputBtu = 0;
  perNeed.inputBtuBySlot.fill(0);
  perNeed.runHoursBySlot.fill(0);
  const lowShare = low ? input.parameters[low.model.loadShareAt]! : 0;
  let outputPerNeed = addStage(state, state, 1 - lowShare, 1);
  if (low) outputPerNeed += addStage(state, low, lowShare, low.model.blowerPowerRatio);
  state.seasonalEfficiency = outputPerNeed > 0 ? 1 / outputPerNeed : 0;
}
