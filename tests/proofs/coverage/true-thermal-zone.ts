import type { PlaceKind } from "#lib/job/place.ts";
import type { TrueZone } from "#lib/simulate/true-house.ts";
import type { Chance } from "./chance.ts";

/** A place around the ducts as it really is: a node with heat of its own between rooms, outdoors and ground. */
export interface TrueThermalZone {
  id: string;
  kind: PlaceKind;
  /** Btu/(h·°F). */
  toRooms: number;
  toOutdoors: number;
  toGround: number;
  ventilationCfm: number;
  /** Roof area times absorptance over the outside film, times the roof's U: °F·(Btu/h) of sun. */
  sunAperture: number;
  heatCapacity: number;
  gainBtuPerH: number;
  /** Share of what leaks into it that reaches outdoors. */
  outdoorShare: number;
  humidityFromOutdoors: number;
  supplyAreaFt2: number;
  returnAreaFt2: number;
  insulation: "none" | "floor-or-ceiling" | "walls";
  ceilingRValue: number;
  roofColor: "dark" | "light";
}

const perimeterFt = (areaFt2: number) => 5 * Math.sqrt(areaFt2 / 1.5);

function conductanceAt1Pa({ flowCfm25, exponent }: { flowCfm25: number; exponent: number }): number {
  return flowCfm25 / 25 ** exponent;
}

/** What a zone of the flow network is made of: transmittances, ground, air, heat capacity, from practice (from memory). */
export function thermalZone(
  chance: Chance,
  zone: TrueZone,
  footprintFt2: number,
  duct: { supplyFt2: number; returnFt2: number },
): TrueThermalZone {
  const out = conductanceAt1Pa(zone.toOutside);
  const base = {
    id: zone.id,
    kind: zone.kind,
    sunAperture: 0,
    gainBtuPerH: 0,
    toGround: 0,
    outdoorShare: out / (out + conductanceAt1Pa(zone.toHouse)),
    supplyAreaFt2: duct.supplyFt2,
    returnAreaFt2: duct.returnFt2,
    ceilingRValue: 19,
    roofColor: "dark" as const,
    insulation: "none" as const,
  };
  const isFloorInsulated = chance.isTrue(0.45);
  const floorU = isFloorInsulated ? chance.uniform(0.05, 0.1) : chance.uniform(0.16, 0.27);
  const perimeter = perimeterFt(footprintFt2);
  switch (zone.kind) {
    case "attic": {
      const ceilingRValue = chance.pick([11, 19, 30, 38]);
      const roofColor = chance.isTrue(0.3) ? ("light" as const) : ("dark" as const);
      const absorptance = roofColor === "light" ? chance.uniform(0.4, 0.68) : chance.uniform(0.72, 0.93);
      const roof = footprintFt2 * 1.1 * chance.uniform(0.33, 0.6);
      return {
        ...base,
        ceilingRValue,
        roofColor,
        toRooms: footprintFt2 / (ceilingRValue * chance.uniform(0.65, 1)),
        toOutdoors: roof,
        ventilationCfm: footprintFt2 * chance.uniform(0.04, 0.4),
        sunAperture: (roof * absorptance) / chance.uniform(2.6, 4),
        heatCapacity: footprintFt2 * chance.uniform(1.2, 3),
        humidityFromOutdoors: 1,
      };
    }
    case "vented-crawlspace":
    case "unvented-crawlspace": {
      const isVented = zone.kind === "vented-crawlspace";
      const areWallsInsulated = !isVented && chance.isTrue(0.4);
      const wallU = areWallsInsulated ? chance.uniform(0.08, 0.15) : chance.uniform(0.3, 0.7);
      return {
        ...base,
        insulation: areWallsInsulated ? "walls" : isFloorInsulated ? "floor-or-ceiling" : "none",
        toRooms: footprintFt2 * (areWallsInsulated ? chance.uniform(0.16, 0.27) : floorU),
        toOutdoors: perimeter * 2 * wallU,
        toGround: footprintFt2 * chance.uniform(0.05, 0.12),
        ventilationCfm: footprintFt2 * (isVented ? chance.uniform(0.04, 0.2) : chance.uniform(0.005, 0.03)),
        heatCapacity: footprintFt2 * chance.uniform(3, 8),
        humidityFromOutdoors: isVented ? 1 : chance.uniform(0.2, 0.8),
      };
    }
    case "basement": {
      const areWallsInsulated = chance.isTrue(0.35);
      const wallU = areWallsInsulated ? chance.uniform(0.07, 0.12) : chance.uniform(0.25, 0.5);
      return {
        ...base,
        insulation: areWallsInsulated ? "walls" : isFloorInsulated ? "floor-or-ceiling" : "none",
        toRooms: footprintFt2 * (areWallsInsulated ? chance.uniform(0.16, 0.27) : floorU),
        toOutdoors: perimeter * 3 * wallU,
        toGround: footprintFt2 * chance.uniform(0.03, 0.06) + perimeter * 5 * chance.uniform(0.06, 0.15),
        ventilationCfm: footprintFt2 * chance.uniform(0.005, 0.03),
        heatCapacity: footprintFt2 * chance.uniform(8, 20),
        gainBtuPerH: chance.uniform(200, 900),
        humidityFromOutdoors: chance.uniform(0.1, 0.5),
      };
    }
    default:
      return {
        ...base,
        toRooms: 250 * chance.uniform(0.06, 0.15),
        toOutdoors: 900 * chance.uniform(0.15, 0.45),
        toGround: 420 * chance.uniform(0.03, 0.08),
        ventilationCfm: 420 * chance.uniform(0.05, 0.25),
        heatCapacity: 420 * chance.uniform(3, 7),
        humidityFromOutdoors: 1,
      };
  }
}
