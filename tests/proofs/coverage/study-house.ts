import { randomHouse } from "#lib/simulate/random-house.ts";
import { HOUSE, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Chance } from "./chance.ts";
import { type TrueThermalZone, thermalZone } from "./true-thermal-zone.ts";

export interface StudyHouse {
  network: TrueHouse;
  floorAreaFt2: number;
  storeysCount: number;
  builtYear: number;
  shellBtuPerHF: number;
  heatCapacity: number;
  heatingF: number;
  coolingF: number;
  moistureLbPerH: number;
  gainsBtuPerH: number;
  sunApertureFt2: number;
  windPa: number;
  groundSwingShare: number;
  zones: readonly TrueThermalZone[];
  roomsSupplyAreaFt2: number;
  roomsReturnAreaFt2: number;
  ductRValue: number;
  nominalRValue: number;
  material: "sheet-metal" | "flexible";
  ductHeatCapacityPerFt2: number;
  /** Of what the ducts hold at the end of a cycle: by the blower that runs on, and by slow rising air. */
  heatBroughtBackShare: number;
  heating: "gas-furnace" | "electric-furnace" | "heat-pump";
  heatingBtuPerH: number;
  furnaceEfficiency: number;
  cop47: number;
  cop17: number;
  capacity17Ratio: number;
  frostShare: number;
  coolingBtuPerH: number;
  seer: number;
  degradation: number;
  blowerW: number;
  blowerExponent: number;
}

interface DesignTemperatures {
  heating99F: number;
  cooling1F: number;
}

const DESIGN_SUN_BTU_PER_H_FT2 = 180;
/** The smallest and the largest single systems of houses: a ton and a half, six tons, and the furnace beside them. */
const SMALLEST_BTU_PER_H = 18_000;
const LARGEST_COOLING_BTU_PER_H = 72_000;
const LARGEST_HEATING_BTU_PER_H = 140_000;
const LARGEST_FAN_FLOW_CFM = 2600;

/** Btu/(h·°F·ft²) of floor without infiltration, by year built: a straight line with a wide spread. */
const heatLossPerFt2 = (year: number) => 0.36 - 0.0028 * (year - 1945);

/** Moves the pressure behind the leaks of each run: near the register in some, at mid-run in others. */
function withRunPressures(chance: Chance, house: TrueHouse): TrueHouse {
  return {
    ...house,
    branches: house.branches.map((branch) => {
      const atNode = chance.isTrue(0.5) ? chance.uniform(0.05, 0.25) : chance.uniform(0.35, 0.7);
      return {
        ...branch,
        duct: { ...branch.duct, flowCfm25: branch.duct.flowCfm25 * Math.sqrt(0.9 / (1 - atNode)) },
        register: { ...branch.register, flowCfm25: branch.register.flowCfm25 * Math.sqrt(0.1 / atNode) },
      };
    }),
  };
}

/** The same ducts, blower and leaks for more air or less. */
function scaledAir(house: TrueHouse, factor: number): TrueHouse {
  const scaled = <Path extends { flowCfm25: number }>(path: Path): Path => ({
    ...path,
    flowCfm25: factor * path.flowCfm25,
  });
  const { airHandler } = house;
  return {
    ...house,
    branches: house.branches.map((branch) => ({
      ...branch,
      duct: scaled(branch.duct),
      register: scaled(branch.register),
    })),
    leaks: house.leaks.map(scaled),
    airHandler: {
      ...airHandler,
      flowAtZeroCfm: factor * airHandler.flowAtZeroCfm,
      slopeCfmPerPa: factor * airHandler.slopeCfmPerPa,
      passage: scaled(airHandler.passage),
      filter: scaled(airHandler.filter),
    },
  };
}

const between = (low: number, high: number, value: number) => Math.min(high, Math.max(low, value));

/** What the equipment has to give on the design days through ducts like these, with the trade's usual margin. */
function equipmentNeeds(
  chance: Chance,
  design: DesignTemperatures,
  house: Pick<StudyHouse, "shellBtuPerHF" | "zones" | "heatingF" | "coolingF" | "gainsBtuPerH" | "sunApertureFt2">,
  infiltrationCfm: number,
) {
  const lossBtuPerHF =
    house.shellBtuPerHF + 1.08 * infiltrationCfm + 0.8 * house.zones.reduce((sum, zone) => sum + zone.toRooms, 0);
  const heat = lossBtuPerHF * Math.max(15, house.heatingF - design.heating99F);
  const cold =
    lossBtuPerHF * Math.max(5, design.cooling1F - house.coolingF) +
    1.2 * house.gainsBtuPerH +
    DESIGN_SUN_BTU_PER_H_FT2 * house.sunApertureFt2;
  return {
    heatingBtuPerH: between(SMALLEST_BTU_PER_H, LARGEST_HEATING_BTU_PER_H, (heat / 0.68) * chance.uniform(1.1, 1.8)),
    coolingBtuPerH: between(
      SMALLEST_BTU_PER_H,
      LARGEST_COOLING_BTU_PER_H,
      (cold / 0.72 / 0.75) * chance.uniform(1, 1.6),
    ),
  };
}

/**
 * A house whose leaks, ducts, zones, equipment and habits are known, drawn from distributions of its own: not the
 * estimate's priors but physical parts (transmittances, capacities of heat, openings), from which temperatures around
 * the ducts and regain follow. Source of the ranges: practice, from memory.
 */
export function studyHouse(chance: Chance, design: DesignTemperatures): StudyHouse {
  const drawn = withRunPressures(
    chance,
    randomHouse(() => chance.random()),
  );
  const { floorAreaFt2, airHandler } = drawn;
  const storeysCount = chance.isTrue(0.65) ? 1 : 2;
  const footprintFt2 = floorAreaFt2 / storeysCount;
  const supplyFt2 = floorAreaFt2 * chance.uniform(0.17, 0.36);
  const returnFt2 = floorAreaFt2 * chance.uniform(0.04, 0.16);
  const indoors = chance.isTrue(0.5) ? chance.uniform(0, 0.15) : chance.uniform(0.15, 0.5);
  const split = drawn.zones.length === 1 ? [1] : [0.6, 0.4];
  const zones = drawn.zones.map((zone, index) =>
    thermalZone(chance, zone, footprintFt2, {
      supplyFt2: supplyFt2 * (1 - indoors) * split[index]!,
      returnFt2: returnFt2 * (1 - indoors) * split[index]!,
    }),
  );
  const builtYear = Math.floor(chance.uniform(1945, 2009));
  const whole = floorAreaFt2 * heatLossPerFt2(builtYear) * chance.lognormal(0.22);
  const throughZones = zones.reduce((sum, zone) => sum + zone.toRooms, 0);
  const shell = {
    shellBtuPerHF: Math.max(0.45 * whole, whole - throughZones),
    heatingF: chance.uniform(66, 72),
    coolingF: chance.uniform(73.5, 78.5),
    gainsBtuPerH: chance.uniform(1400, 3000) + floorAreaFt2 * chance.uniform(0.4, 0.9),
    sunApertureFt2: floorAreaFt2 * chance.uniform(0.012, 0.035),
    zones,
  };
  const tightness = drawn.envelope.flowCfm25 * (0.5 / 25) ** drawn.envelope.exponent;
  const needs = equipmentNeeds(chance, design, shell, tightness);
  const drawnFlowCfm = airHandler.flowAtZeroCfm - airHandler.slopeCfmPerPa * chance.uniform(70, 150);
  const heating = chance.pick([
    "gas-furnace",
    "gas-furnace",
    "gas-furnace",
    "heat-pump",
    "heat-pump",
    "electric-furnace",
  ] as const);
  const coolingFlowCfm = (needs.coolingBtuPerH / 12_000) * chance.uniform(320, 450);
  const furnaceFlowCfm = needs.heatingBtuPerH / (1.08 * chance.uniform(45, 75));
  const neededFlowCfm = Math.min(
    LARGEST_FAN_FLOW_CFM,
    heating === "heat-pump" ? coolingFlowCfm : Math.max(coolingFlowCfm, furnaceFlowCfm),
  );
  const network = scaledAir(drawn, Math.min(2.5, Math.max(0.6, neededFlowCfm / drawnFlowCfm)));
  const fanFlowCfm = neededFlowCfm;
  const { coolingBtuPerH } = needs;
  const nominalRValue = chance.pick([0, 4.2, 4.2, 4.2, 6, 6, 8]);
  const material = chance.isTrue(0.5) ? ("flexible" as const) : ("sheet-metal" as const);
  const cop47 = chance.uniform(2.9, 3.9);
  return {
    network,
    floorAreaFt2,
    storeysCount,
    builtYear,
    ...shell,
    heatCapacity: floorAreaFt2 * chance.uniform(3, 7),
    moistureLbPerH: chance.uniform(0.35, 1.1),
    windPa: chance.uniform(0.08, 0.45),
    groundSwingShare: chance.uniform(0.2, 0.5),
    roomsSupplyAreaFt2: supplyFt2 * indoors,
    roomsReturnAreaFt2: returnFt2 * indoors,
    nominalRValue,
    ductRValue: nominalRValue === 0 ? chance.uniform(0.75, 1.3) : (nominalRValue + 0.7) * chance.uniform(0.68, 1.02),
    material,
    ductHeatCapacityPerFt2: material === "flexible" ? chance.uniform(0.02, 0.05) : chance.uniform(0.09, 0.13),
    heatBroughtBackShare: chance.uniform(0.4, 0.8),
    heating,
    heatingBtuPerH: heating === "heat-pump" ? coolingBtuPerH * chance.uniform(0.9, 1.1) : needs.heatingBtuPerH,
    furnaceEfficiency: heating === "gas-furnace" ? chance.pick([0.76, 0.78, 0.8, 0.8, 0.92, 0.95]) : 1,
    cop47,
    cop17: cop47 * chance.uniform(0.6, 0.72),
    capacity17Ratio: chance.uniform(0.53, 0.68),
    frostShare: chance.uniform(0.03, 0.13),
    coolingBtuPerH,
    seer: chance.uniform(9.5, 15.5),
    degradation: chance.uniform(0.08, 0.25),
    blowerW: fanFlowCfm * chance.uniform(0.3, 0.6),
    blowerExponent: chance.uniform(0.5, 2),
  };
}

/** Leaks into the rooms carry this zone. */
export const isIndoors = (zoneId: string): boolean => zoneId === HOUSE;
