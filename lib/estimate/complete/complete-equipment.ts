import { COOLING_RATIOS, type CoolingLines, coolingLines } from "#lib/distribution/cooling-performance.ts";
import { DEGRADATION_COEFFICIENT } from "#lib/distribution/heat-pump-bin.ts";
import { DEFROST_HEAT, FROST } from "#lib/distribution/heat-pump-performance.ts";
import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { IndoorModel } from "./complete-indoor.ts";
import { completeLowStage, type LowStageModel } from "./complete-low-stage.ts";
import type { EquipmentSizes } from "./complete-sizes.ts";

export type HeatingFuel = "naturalGas" | "propane" | "fuelOil" | "electricity";

export interface HeatingModel {
  fuel: HeatingFuel;
  isHeatPump: boolean;
  capacityAt: number;
  /** Yearly efficiency of a furnace; 1 for a heat pump, whose COP is drawn instead. */
  efficiencyAt: number;
  /** Ratio of capacity at 17 °F to that at 47 °F. */
  capacityAt17Ratio: number;
  copAt47: number;
  copAt17: number;
  /** What frost leaves of both at 35 °F. */
  frostCapacityFactor: number;
  frostPowerFactor: number;
  /** Strip heat during defrost at 35 °F over the capacity at 47 °F. */
  defrostHeatRatio: number;
  /** Multiplies both COPs. */
  copFactorAt: number;
  /** Cycling degradation of part load of a heat pump; a furnace's yearly efficiency holds it. */
  degradationCoefficient: number;
  low: LowStageModel | null;
}

export interface CoolingModel {
  capacityAt: number;
  seerAt: number;
  sensibleHeatRatio: number;
  /** By the outdoor temperature. */
  lines: CoolingLines;
  low: LowStageModel | null;
}

/**
 * Of what a coil takes out, the part that is felt: at the wet bulb of rooms at half humidity, and how it grows as the air
 * gets drier (about 3 % for each °F of wet bulb, 0.75 Btu/lb of enthalpy). Source: practice, from memory.
 */
const SENSIBLE_HEAT_RATIO = { usual: 0.75, perBtuPerLb: 0.044, most: 1 } as const;

interface Input {
  indoor: IndoorModel;
  system: DuctSystem;
  pointer: string;
  ledger: Ledger;
  space: ParameterSpace;
  sizes: EquipmentSizes;
}

const practice = { sourceId: "practice" } as const;
const FUEL_OF = {
  "gas-furnace": "naturalGas",
  "propane-furnace": "propane",
  "oil-furnace": "fuelOil",
  "electric-furnace": "electricity",
  "heat-pump": "electricity",
} as const;
function takeDefrostHeat({ pointer, ledger, system }: Input): number {
  const { value, unit, source, low, high } = DEFROST_HEAT;
  return ledger.take<number>(system.heating!.defrostHeatRatio, {
    path: `${pointer}/heating/defrostHeatRatio`,
    title: `Strip heat during defrost of ${system.label}, over its capacity at 47 °F`,
    value,
    unit,
    reason: "5 kW of strips on a three-ton unit for 4 % of the time at 35 °F; 0 where none run.",
    source,
    low,
    high,
  });
}

/** The heating equipment with its gaps filled; null when the system does not heat. */
export function completeHeating(input: Input): HeatingModel | null {
  const { system, pointer, ledger, space } = input;
  const { heating } = system;
  if (!heating) return null;
  const { btuPerH: outputBtuPerH, doubtRatio } = input.sizes.heating;
  const isHeatPump = heating.kind === "heat-pump";
  const fuel = FUEL_OF[heating.kind];
  const efficiency =
    fuel === "electricity"
      ? 1
      : ledger.take(heating.annualEfficiency, {
          path: `${pointer}/heating/annualEfficiency`,
          title: `Yearly efficiency of the furnace of ${system.label}`,
          value: 0.8,
          unit: "ratio",
          reason: "The common efficiency of furnaces that vent into a chimney.",
          source: practice,
          low: 0.72,
          high: 0.95,
        });
  const take = (
    key: "capacityAt17BtuPerH" | "copAt47Ratio" | "copAt17Ratio",
    title: string,
    value: number,
    unit: string,
    reason: string,
  ) =>
    isHeatPump
      ? ledger.take(heating[key], {
          path: `${pointer}/heating/${key}`,
          title: `${title} of ${system.label}`,
          value,
          unit,
          reason,
          source: practice,
        })
      : value;
  const capacityAt17 = take(
    "capacityAt17BtuPerH",
    "Capacity at 17 °F",
    Math.round(0.6 * outputBtuPerH),
    "Btu/h",
    "About 60 % of the capacity at 47 °F.",
  );
  const copAt47 = take("copAt47Ratio", "COP at 47 °F", 3.3, "ratio", "A common single-stage heat pump.");
  const copAt17 = take("copAt17Ratio", "COP at 17 °F", 2.2, "ratio", "A common single-stage heat pump.");
  const frost = (
    key: "capacityFactor" | "powerFactor",
    path: "frostCapacityFactor" | "frostPowerFactor",
    title: string,
  ) => {
    const { value, unit, low, high, source } = FROST[key];
    if (!isHeatPump) return value;
    const reason = "What the rating procedure takes for frost where it was not tested, from memory.";
    return ledger.take<number>(heating[path], {
      path: `${pointer}/heating/${path}`,
      title: `${title} at 35 °F, ${system.label}`,
      value,
      unit,
      reason,
      source,
      low,
      high,
    });
  };
  const frostCapacityFactor = frost("capacityFactor", "frostCapacityFactor", "Capacity that frost leaves");
  const frostPowerFactor = frost("powerFactor", "frostPowerFactor", "Power that frost leaves");
  const wasToldEfficiency = isHeatPump ? heating.copAt47Ratio !== undefined : heating.annualEfficiency !== undefined;
  const relative = (key: string, base: number, standardUncertainty: number, max = 3 * base) =>
    space.add({
      key: `${system.id}/heating/${key}`,
      group: "equipment",
      base,
      spread: { shape: "relative", standardUncertainty, min: 0.3 * base, max },
    });
  return {
    fuel,
    isHeatPump,
    capacityAt: relative("capacity", outputBtuPerH, doubtRatio),
    efficiencyAt: relative("efficiency", efficiency, fuel === "electricity" ? 0 : wasToldEfficiency ? 0.03 : 0.06, 1),
    capacityAt17Ratio: capacityAt17 / outputBtuPerH,
    copAt47,
    copAt17,
    frostCapacityFactor,
    frostPowerFactor,
    defrostHeatRatio: isHeatPump ? takeDefrostHeat(input) : 0,
    copFactorAt: relative("copFactor", 1, isHeatPump ? (wasToldEfficiency ? 0.05 : 0.12) : 0),
    degradationCoefficient: isHeatPump ? DEGRADATION_COEFFICIENT.value : 0,
    low: completeLowStage(input, "heating"),
  };
}

/** How the air conditioner follows the outdoor temperature. */
function takeCoolingLines({ pointer, ledger, system }: Input): CoolingLines {
  const { value, unit, low, high, source } = COOLING_RATIOS.efficiencyAt95Ratio;
  const efficiencyAt95Ratio = ledger.take<number>(system.cooling!.efficiencyAt95Ratio, {
    path: `${pointer}/cooling/efficiencyAt95Ratio`,
    title: `Efficiency of the cooling of ${system.label} at 95 °F outdoors, over that at 82 °F`,
    value,
    unit,
    reason: "A common air conditioner; it gives less and takes more the hotter it is outdoors.",
    source,
    low,
    high,
  });
  return coolingLines({ efficiencyAt95Ratio });
}

/** The cooling equipment with its gaps filled; null when the system does not cool. */
export function completeCooling(input: Input): CoolingModel | null {
  const { system, pointer, ledger, space, indoor } = input;
  const { cooling } = system;
  if (!cooling) return null;
  const usualRatio = Math.min(
    SENSIBLE_HEAT_RATIO.most,
    SENSIBLE_HEAT_RATIO.usual + SENSIBLE_HEAT_RATIO.perBtuPerLb * Math.max(0, indoor.drynessBtuPerLb),
  );
  const seer = ledger.take(cooling.seer, {
    path: `${pointer}/cooling/seer`,
    title: `Seasonal cooling efficiency of ${system.label}`,
    value: 12,
    unit: "Btu/Wh",
    reason: "A common value of equipment 10 to 20 years old.",
    source: practice,
    low: 9,
    high: 15,
  });
  const sensibleHeatRatio = ledger.take(cooling.sensibleHeatRatio, {
    path: `${pointer}/cooling/sensibleHeatRatio`,
    title: `Sensible heat ratio of ${system.label}`,
    value: usualRatio,
    unit: "ratio",
    reason:
      indoor.drynessBtuPerLb > 0
        ? "A common value at rating conditions, higher where the rooms are drier."
        : "A common value at rating conditions.",
    source: practice,
    low: usualRatio - 0.07,
    high: Math.min(SENSIBLE_HEAT_RATIO.most, usualRatio + 0.1),
  });
  const relative = (key: string, base: number, standardUncertainty: number) =>
    space.add({
      key: `${system.id}/cooling/${key}`,
      group: "equipment",
      base,
      spread: { shape: "relative", standardUncertainty, min: 0.3 * base, max: 3 * base },
    });
  return {
    capacityAt: relative("capacity", input.sizes.cooling.btuPerH, input.sizes.cooling.doubtRatio),
    seerAt: relative("seer", seer, cooling.seer === undefined ? 0.15 : 0.06),
    sensibleHeatRatio,
    lines: takeCoolingLines(input),
    low: completeLowStage(input, "cooling"),
  };
}
