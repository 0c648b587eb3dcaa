import { DEFROST_HEAT, FROST } from "#lib/distribution/heat-pump-performance.ts";
import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { IndoorModel } from "./complete-indoor.ts";

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
  /** Cycling degradation of part load: 0.25 single stage. */
  degradationCoefficient: number;
}

export interface CoolingModel {
  capacityAt: number;
  seerAt: number;
  sensibleHeatRatio: number;
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
}

const practice = { sourceId: "practice" } as const;
const FUEL_OF = {
  "gas-furnace": "naturalGas",
  "propane-furnace": "propane",
  "oil-furnace": "fuelOil",
  "electric-furnace": "electricity",
  "heat-pump": "electricity",
} as const;
/**
 * Part-load degradation of a heat pump by stages; SEER and a furnace's yearly efficiency hold their own cycling already.
 * Source: practice; 0.25 is the default of the trade's rating procedure, from memory.
 */
const DEGRADATION = { single: 0.25, "two-stage": 0.15, variable: 0.08 } as const;

function takeStaging(told: "single" | "two-stage" | "variable" | undefined, { pointer, ledger, system }: Input) {
  return ledger.take(told, {
    path: `${pointer}/heating/staging`,
    title: `Stages of the heating of ${system.label}`,
    value: "single" as const,
    unit: "",
    reason: "Most equipment in place has one stage.",
    source: practice,
  });
}

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
    Math.round(0.6 * heating.outputBtuPerH),
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
    capacityAt: relative("capacity", heating.outputBtuPerH, 0.06),
    efficiencyAt: relative("efficiency", efficiency, fuel === "electricity" ? 0 : wasToldEfficiency ? 0.03 : 0.06, 1),
    capacityAt17Ratio: capacityAt17 / heating.outputBtuPerH,
    copAt47,
    copAt17,
    frostCapacityFactor,
    frostPowerFactor,
    defrostHeatRatio: isHeatPump ? takeDefrostHeat(input) : 0,
    copFactorAt: relative("copFactor", 1, isHeatPump ? (wasToldEfficiency ? 0.05 : 0.12) : 0),
    degradationCoefficient: isHeatPump ? DEGRADATION[takeStaging(heating.staging, input)] : 0,
  };
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
    capacityAt: relative("capacity", cooling.capacityBtuPerH, 0.06),
    seerAt: relative("seer", seer, cooling.seer === undefined ? 0.15 : 0.06),
    sensibleHeatRatio,
  };
}
