import type { DuctSystem } from "#lib/job/duct-system.ts";
import { COMPRESSORS, FURNACE_FUELS, keyOf } from "./hpxml-words.ts";
import type { XmlNode } from "./xml-node.ts";

type Heating = DuctSystem["heating"];
type Cooling = DuctSystem["cooling"];
const DUCTED_HEAT_PUMPS = ["air-to-air", undefined];

export interface PlantReading {
  heating?: Partial<NonNullable<Heating>>;
  cooling?: Partial<NonNullable<Cooling>>;
  /** Where the equipment stands, in the words of the file. */
  unitLocation?: string;
}

function efficiency(node: XmlNode, name: string, units: string): number | undefined {
  for (const each of node.children(name)) if (each.text("Units") === units) return each.number("Value");
  return undefined;
}

const staging = (node: XmlNode) => keyOf(COMPRESSORS, node.text("CompressorType"));

function copAt(pump: XmlNode, outdoorTemperatureF: number): number | undefined {
  for (const point of pump.child("HeatingDetailedPerformanceData")?.children("PerformanceDataPoint") ?? []) {
    const cop = point.child("Efficiency");
    if (point.number("OutdoorTemperature") === outdoorTemperatureF && cop?.text("Units") === "COP") {
      point.pass();
      return cop.number("Value");
    }
  }
  return undefined;
}

function readHeatPump(pump: XmlNode): PlantReading {
  const heats = pump.number("FractionHeatLoadServed") !== 0;
  const cools = pump.number("FractionCoolLoadServed") !== 0;
  pump.text("HeatPumpFuel");
  const common = { kind: "heat-pump", staging: staging(pump) } as const;
  return {
    unitLocation: pump.text("UnitLocation"),
    ...(heats && {
      heating: {
        ...common,
        outputBtuPerH: pump.number("HeatingCapacity"),
        capacityAt17BtuPerH: pump.number("HeatingCapacity17F"),
        copAt47Ratio: copAt(pump, 47),
        copAt17Ratio: copAt(pump, 17),
      },
    }),
    ...(cools &&
      pump.has("CoolingCapacity") && {
        cooling: {
          ...common,
          capacityBtuPerH: pump.number("CoolingCapacity"),
          seer: efficiency(pump, "AnnualCoolingEfficiency", "SEER"),
          sensibleHeatRatio: pump.number("CoolingSensibleHeatFraction"),
        },
      }),
  };
}

/** The equipment that blows through one set of ducts: a furnace, an air conditioner, a heat pump, or two of them. */
export function readPlant(plant: XmlNode | undefined, ductsId: string, say: (line: string) => void): PlantReading {
  const serving = (name: string) =>
    (plant?.children(name) ?? []).filter((each) =>
      each.children("DistributionSystem").some((ducts) => {
        const isTied = ducts.attribute("idref") === ductsId;
        if (isTied) ducts.pass();
        return isTied;
      }),
    );
  const reading: PlantReading = {};
  for (const pump of serving("HeatPump")) {
    if (!DUCTED_HEAT_PUMPS.includes(pump.text("HeatPumpType"))) {
      say(`${pump.path} is not an air-to-air heat pump; it was not read`);
      continue;
    }
    Object.assign(reading, readHeatPump(pump));
  }
  for (const furnace of serving("HeatingSystem")) {
    const type = furnace.child("HeatingSystemType");
    const kind = keyOf(FURNACE_FUELS, furnace.text("HeatingSystemFuel"));
    if (!type?.has("Furnace") || kind === undefined) {
      say(`${furnace.path} is no furnace of a fuel that is known here; it was not read`);
      continue;
    }
    reading.unitLocation ??= furnace.text("UnitLocation");
    reading.heating = {
      kind,
      outputBtuPerH: furnace.number("HeatingCapacity"),
      annualEfficiency: efficiency(furnace, "AnnualHeatingEfficiency", "AFUE"),
    };
  }
  for (const cooler of serving("CoolingSystem")) {
    if (cooler.text("CoolingSystemType") !== "central air conditioner") {
      say(`${cooler.path} is no central air conditioner; it was not read`);
      continue;
    }
    cooler.text("CoolingSystemFuel");
    reading.unitLocation ??= cooler.text("UnitLocation");
    reading.cooling = {
      kind: "air-conditioner",
      capacityBtuPerH: cooler.number("CoolingCapacity"),
      seer: efficiency(cooler, "AnnualCoolingEfficiency", "SEER"),
      sensibleHeatRatio: cooler.number("SensibleHeatFraction"),
      staging: staging(cooler),
    };
  }
  return reading;
}
