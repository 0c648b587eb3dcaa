import { RATED_CFM_PER_TON } from "#lib/distribution/equipment-airflow.ts";
import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import { completeDucts, type DuctModel } from "./complete-ducts.ts";
import { type CoolingModel, completeCooling, completeHeating, type HeatingModel } from "./complete-equipment.ts";
import type { IndoorModel } from "./complete-indoor.ts";
import type { PlaceBefore } from "./complete-places.ts";
import { completeSizes, type EquipmentSizes } from "./complete-sizes.ts";

/** One duct system with every gap filled. Names ending in `At` are places in the parameter array. */
export interface SystemModel {
  id: string;
  label: string;
  servedShare: number;
  heating: HeatingModel | null;
  cooling: CoolingModel | null;
  fanFlowAt: number;
  supplyStaticAt: number;
  returnStaticAt: number;
  blowerPowerAt: number;
  fanSlopeCfmPerPa: number;
  nameplateStaticPa: number | null;
  /** Flow at which a heat pump or air conditioner was rated. */
  ratedCfmPerTon: number;
  /** Multiplies what every leak passes while the system runs: what the calculation leaves out. */
  modelFactorAt: number;
  /** Of the plenum pressure, behind leakage that nobody found. */
  unfoundPressureFraction: number;
  ducts: DuctModel;
}

const practice = { sourceId: "practice" } as const;
/** Airflow of a nominal ton of cooling, cfm. Source: practice. */
const CFM_PER_TON = 400;
const BTU_PER_H_PER_TON = 12000;
/** A furnace is set for about this temperature rise. Source: practice. */
const FURNACE_RISE_F = 50;
const SENSIBLE_BTU_PER_H_PER_CFM_F = 1.08;
/** Blower power over flow of an ordinary furnace blower. Source: practice. */
const BLOWER_W_PER_CFM = 0.45;
const TYPICAL_STATIC_PA = 75;
/** Where nothing is known of a leak's place along the duct. Source: practice. */
const UNFOUND_PRESSURE_FRACTION = 0.5;
/**
 * Standard uncertainty of the calculation itself: heat stored in ducts and rooms, air along the runs, zones that ducts
 * warm, hours of a real year. Tuned on one set of houses simulated with all of that and reported on another
 * (tests/proofs/coverage; DEVELOPERS.md, “Are the ranges honest”).
 */
const MODEL_DOUBT = 0.2;

function expectedFanFlow(system: DuctSystem, { heating, cooling }: EquipmentSizes): number {
  if (system.cooling) return Math.round((cooling.btuPerH / BTU_PER_H_PER_TON) * CFM_PER_TON);
  return Math.round((system.heating ? heating.btuPerH : 36000) / (SENSIBLE_BTU_PER_H_PER_CFM_F * FURNACE_RISE_F));
}

/** How far a fan flow may be off, by how it was found. Source: practice. */
const FAN_FLOW_DOUBT = {
  "measured-matched-pressure": 0.05,
  "measured-temperature-rise": 0.1,
  nameplate: 0.15,
  estimated: 0.2,
} as const;

function completeSystem({
  job,
  index,
  places,
  ledger,
  space,
  indoor,
}: {
  job: Job;
  index: number;
  places: readonly PlaceBefore[];
  ledger: Ledger;
  space: ParameterSpace;
  indoor: IndoorModel;
}): SystemModel {
  const system = job.systems[index]!;
  const pointer = `#/systems/${index}`;
  const { blower } = system;
  const servedShare = ledger.take(system.servedFloorShare, {
    path: `${pointer}/servedFloorShare`,
    title: `Share of the house that ${system.label} serves`,
    value: 1 / job.systems.length,
    unit: "share",
    reason:
      job.systems.length === 1
        ? "The only system serves the whole house."
        : "Nothing was said, so each system serves an equal share.",
    source: practice,
  });
  const sizes = completeSizes({ job, system, servedShare, pointer, ledger });
  const usualFlowCfm = expectedFanFlow(system, sizes);
  const fanFlowCfm = ledger.take(blower?.fanFlowCfm, {
    path: `${pointer}/blower/fanFlowCfm`,
    title: `Fan flow of ${system.label}`,
    value: usualFlowCfm,
    unit: "cfm",
    reason: system.cooling
      ? "400 cfm for each ton of cooling."
      : "The furnace's output at a temperature rise of 50 °F.",
    source: practice,
    low: 0.75 * usualFlowCfm,
    high: 1.25 * usualFlowCfm,
  });
  const basis = blower?.fanFlowCfm === undefined ? "estimated" : (blower.fanFlowBasis ?? "estimated");
  const takeStatic = (side: "supply" | "return") =>
    ledger.take(side === "supply" ? blower?.supplyStaticPa : blower?.returnStaticPa, {
      path: `${pointer}/blower/${side}StaticPa`,
      title: `${side === "supply" ? "Supply" : "Return"} plenum static pressure of ${system.label}`,
      value: TYPICAL_STATIC_PA,
      unit: "Pa",
      reason: "A common value in houses whose static pressure was not measured.",
      source: practice,
      low: 40,
      high: 130,
    });
  const supplyStaticPa = takeStatic("supply");
  const returnStaticPa = takeStatic("return");
  const powerW = ledger.take(blower?.powerW, {
    path: `${pointer}/blower/powerW`,
    title: `Blower power of ${system.label}`,
    value: Math.round(BLOWER_W_PER_CFM * fanFlowCfm),
    unit: "W",
    reason: "0.45 W for each cfm, a common figure.",
    source: practice,
    low: 0.25 * fanFlowCfm,
    high: 0.6 * fanFlowCfm,
  });
  const control = ledger.take(blower?.control, {
    path: `${pointer}/blower/control`,
    title: `Blower control of ${system.label}`,
    value: "fixed-speed",
    unit: "",
    reason: "The kind found in most older houses; its flow falls a little as the ducts get tighter.",
    source: practice,
  });
  const modelFactor = ledger.take<number>(undefined, {
    path: `${pointer}/modelFactor`,
    title: `How far the calculation itself may be off for ${system.label}`,
    value: 1,
    unit: "ratio",
    reason:
      "Multiplies what the leaks pass while the system runs. From our own study with simulated houses whose losses are known.",
    source: { sourceId: "own-method" },
    low: Math.exp(-1.28 * MODEL_DOUBT),
    high: Math.exp(1.28 * MODEL_DOUBT),
  });
  const relative = (key: string, group: "airflow" | "operating" | "model", base: number, standardUncertainty: number) =>
    space.add({
      key: `${system.id}/${key}`,
      group,
      base,
      spread: { shape: "relative", standardUncertainty, min: 0.3 * base, max: 3 * base },
    });
  return {
    id: system.id,
    label: system.label,
    servedShare,
    heating: completeHeating({ system, pointer, ledger, space, indoor, sizes }),
    cooling: completeCooling({ system, pointer, ledger, space, indoor, sizes }),
    fanFlowAt: relative("fanFlowCfm", "airflow", fanFlowCfm, FAN_FLOW_DOUBT[basis]),
    supplyStaticAt: relative(
      "supplyStaticPa",
      "operating",
      supplyStaticPa,
      blower?.supplyStaticPa === undefined ? 0.35 : 0.05,
    ),
    returnStaticAt: relative(
      "returnStaticPa",
      "operating",
      returnStaticPa,
      blower?.returnStaticPa === undefined ? 0.35 : 0.05,
    ),
    blowerPowerAt: relative("powerW", "airflow", powerW, blower?.powerW === undefined ? 0.25 : 0.05),
    // Source: practice; 0 holds the flow, 2 cfm a pascal is a fixed-speed blower.
    fanSlopeCfmPerPa: control === "constant-flow" ? 0 : 2,
    nameplateStaticPa: blower?.nameplateStaticPa ?? null,
    ratedCfmPerTon: takeRatedFlow(system, pointer, ledger),
    modelFactorAt: relative("modelFactor", "model", modelFactor, MODEL_DOUBT),
    unfoundPressureFraction: ledger.take<number>(system.unfoundPressureFraction, {
      path: `${pointer}/unfoundPressureFraction`,
      title: `Part of the plenum pressure behind leaks of ${system.label} that nobody found`,
      value: UNFOUND_PRESSURE_FRACTION,
      unit: "ratio",
      reason: "Their place along the ducts is not known, so half of the pressure at the plenum.",
      source: practice,
      low: 0.2,
      high: 0.8,
    }),
    ducts: completeDucts({ job, system, pointer, places, ledger, space }),
  };
}

/** Furnaces and resistance heat do not ask for it. */
function takeRatedFlow({ label, blower, heating, cooling }: DuctSystem, pointer: string, ledger: Ledger): number {
  const { value, unit, source, low, high } = RATED_CFM_PER_TON;
  if (!cooling && heating?.kind !== "heat-pump") return value;
  return ledger.take<number>(blower?.ratedCfmPerTon, {
    path: `${pointer}/blower/ratedCfmPerTon`,
    title: `Airflow at which the equipment of ${label} was rated`,
    value,
    unit,
    reason: "The usual airflow of the rating, for each ton.",
    source,
    low,
    high,
  });
}

/** Every duct system with its gaps filled, each filled gap listed. Shares served are scaled to add up to 1. */
export function completeSystems(input: {
  job: Job;
  places: readonly PlaceBefore[];
  ledger: Ledger;
  space: ParameterSpace;
  indoor: IndoorModel;
}): SystemModel[] {
  const systems = input.job.systems.map((_, index) => completeSystem({ ...input, index }));
  const sum = systems.reduce((total, system) => total + system.servedShare, 0);
  if (Math.abs(sum - 1) > 0.01) {
    input.ledger.warn({
      code: "served-shares-do-not-add-up",
      path: "#/systems",
      severity: "doubt",
      what: `The shares of the house that the systems serve add up to ${Math.round(sum * 100)} %.`,
      why: "Together they should serve the whole house.",
      nextMove: "Correct the shares. Until then they are scaled to 100 %.",
    });
  }
  return systems.map((system) => ({ ...system, servedShare: system.servedShare / sum }));
}
