import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { identifier, type Tree, xmlIds } from "./hpxml-ids.ts";
import { COMPRESSORS, FURNACE_FUELS, type Moment, UNIT_LOCATIONS } from "./hpxml-words.ts";

/** The standard takes sensible heat fractions above one half only. Source: hpxml-docs, SensibleHeatFraction. */
const LOWEST_SENSIBLE_HEAT_RATIO = 0.5;

export interface PlantTrees {
  heating?: Tree;
  cooling?: Tree;
  heatPump?: Tree;
}

/** COP is the figure of one outdoor temperature, not of a year: it stands where the standard has such points. */
function heatPumpPoints({ heating }: DuctSystem): Tree | undefined {
  const points = [
    { outdoorTemperatureF: 47, capacityBtuPerH: heating?.outputBtuPerH, copRatio: heating?.copAt47Ratio },
    { outdoorTemperatureF: 17, capacityBtuPerH: heating?.capacityAt17BtuPerH, copRatio: heating?.copAt17Ratio },
  ].filter(({ copRatio }) => copRatio !== undefined);
  if (points.length === 0) return undefined;
  return {
    PerformanceDataPoint: points.map(({ outdoorTemperatureF, capacityBtuPerH, copRatio }) => ({
      OutdoorTemperature: outdoorTemperatureF,
      Capacity: capacityBtuPerH,
      CapacityDescription: "nominal",
      Efficiency: { Units: "COP", Value: copRatio },
    })),
  };
}

/** Heating and cooling equipment of one duct system, each tied to its ducts. */
export function writePlant(
  system: DuctSystem,
  { number, moment, handlerPlace }: { number: number; moment: Moment; handlerPlace: PlaceKind | undefined },
): PlantTrees {
  const ids = xmlIds(moment);
  const { heating, cooling } = system;
  const place = {
    UnitLocation: handlerPlace && UNIT_LOCATIONS[handlerPlace],
    DistributionSystem: { "@idref": ids.ducts(number) },
  };
  const seer = cooling?.seer === undefined ? undefined : { Units: "SEER", Value: cooling.seer };
  const sensible =
    cooling?.sensibleHeatRatio && cooling.sensibleHeatRatio > LOWEST_SENSIBLE_HEAT_RATIO
      ? cooling.sensibleHeatRatio
      : undefined;
  const pumpHeats = heating?.kind === "heat-pump";
  const pumpCools = cooling?.kind === "heat-pump";
  const staging = (pumpHeats ? heating?.staging : undefined) ?? (pumpCools ? cooling?.staging : undefined);
  return {
    ...((pumpHeats || pumpCools) && {
      heatPump: {
        SystemIdentifier: identifier(ids.heatPump(number), system.id),
        ...place,
        HeatPumpType: "air-to-air",
        HeatPumpFuel: "electricity",
        HeatingCapacity: pumpHeats ? heating.outputBtuPerH : undefined,
        HeatingCapacity17F: pumpHeats ? heating.capacityAt17BtuPerH : undefined,
        CoolingCapacity: pumpCools ? cooling.capacityBtuPerH : undefined,
        CompressorType: staging && COMPRESSORS[staging],
        CoolingSensibleHeatFraction: pumpCools ? sensible : undefined,
        FractionHeatLoadServed: pumpHeats ? undefined : 0,
        FractionCoolLoadServed: pumpCools ? undefined : 0,
        AnnualCoolingEfficiency: pumpCools ? seer : undefined,
        HeatingDetailedPerformanceData: pumpHeats ? heatPumpPoints(system) : undefined,
      },
    }),
    ...(heating &&
      !pumpHeats && {
        heating: {
          SystemIdentifier: identifier(ids.heating(number), system.id),
          ...place,
          HeatingSystemType: { Furnace: {} },
          HeatingSystemFuel: FURNACE_FUELS[heating.kind],
          HeatingCapacity: heating.outputBtuPerH,
          AnnualHeatingEfficiency:
            heating.annualEfficiency === undefined ? undefined : { Units: "AFUE", Value: heating.annualEfficiency },
        },
      }),
    ...(cooling &&
      !pumpCools && {
        cooling: {
          SystemIdentifier: identifier(ids.cooling(number), system.id),
          ...place,
          CoolingSystemType: "central air conditioner",
          CoolingSystemFuel: "electricity",
          CoolingCapacity: cooling.capacityBtuPerH,
          CompressorType: cooling.staging && COMPRESSORS[cooling.staging],
          AnnualCoolingEfficiency: seer,
          SensibleHeatFraction: sensible,
        },
      }),
  };
}
