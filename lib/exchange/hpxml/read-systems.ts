import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import { materialOf, placeKindOf } from "./hpxml-words.ts";
import { ownId } from "./own-id.ts";
import { type PlantReading, readPlant } from "./read-plant.ts";
import type { XmlNode } from "./xml-node.ts";

type Run = DuctSystem["runs"][number];
/** What the file may leave out is checked with the whole job at the end. */
type SystemDraft = Omit<DuctSystem, "heating" | "cooling"> & Omit<PlantReading, "unitLocation">;

const BURIED: Readonly<Record<string, boolean>> = {
  "not buried": false,
  "partially buried": true,
  "fully buried": true,
  "deeply buried": true,
};

function readRun(ducts: XmlNode, fallback: string, placeIds: Set<PlaceKind>, say: (line: string) => void): Run | null {
  const id = ownId(ducts.child("SystemIdentifier"), fallback);
  const side = ducts.text("DuctType");
  const location = ducts.text("DuctLocation") ?? "";
  const placeId = placeKindOf(location);
  if ((side !== "supply" && side !== "return") || placeId === undefined) {
    ducts.pass();
    say(`${ducts.path}: neither side nor place is known here (${side ?? "no side"}, “${location}”); it was not read`);
    return null;
  }
  placeIds.add(placeId);
  const material = ducts.text("DuctMaterial");
  return {
    id,
    side,
    placeId,
    areaFt2: ducts.number("DuctSurfaceArea"),
    insulationRValue: ducts.number("DuctInsulationRValue"),
    material: material === undefined ? undefined : materialOf(material),
    isBuried: BURIED[ducts.text("DuctBuriedInsulationLevel") ?? ""],
  };
}

function readBlower(ducts: XmlNode): DuctSystem["blower"] {
  const pressures = ducts.child("TotalExternalStaticPressureMeasurement");
  const supplyStaticPa = pressures?.child("Supply")?.number("StaticPressure");
  const returnPa = pressures?.child("Return")?.number("StaticPressure");
  if (supplyStaticPa === undefined && returnPa === undefined) return undefined;
  return { supplyStaticPa, returnStaticPa: returnPa === undefined ? undefined : Math.abs(returnPa) };
}

/** The duct systems of a building with their equipment, and the places that their ducts run through. */
export function readSystems(
  building: XmlNode,
  say: (line: string) => void,
): { systems: SystemDraft[]; places: Place[]; ducts: XmlNode[] } {
  const hvac = building.at("BuildingDetails", "Systems", "HVAC");
  const floorFt2 = building
    .at("BuildingDetails", "BuildingSummary", "BuildingConstruction")
    ?.number("ConditionedFloorArea");
  const placeIds = new Set<PlaceKind>();
  const ducts: XmlNode[] = [];
  const systems: SystemDraft[] = [];
  for (const distribution of hvac?.children("HVACDistribution") ?? []) {
    const air = distribution.at("DistributionSystemType", "AirDistribution");
    if (!air) {
      distribution.pass();
      say(`${distribution.path} is no duct system; it was not read`);
      continue;
    }
    const number = systems.length + 1;
    const xmlId = distribution.child("SystemIdentifier")?.attribute("id") ?? "";
    const { unitLocation, ...plant } = readPlant(hvac?.child("HVACPlant"), xmlId, say);
    const handlerPlace = unitLocation === undefined ? undefined : placeKindOf(unitLocation);
    if (handlerPlace) placeIds.add(handlerPlace);
    const servedFt2 = distribution.number("ConditionedFloorAreaServed");
    const seasons = ["AnnualHeatingDistributionSystemEfficiency", "AnnualCoolingDistributionSystemEfficiency"];
    if (seasons.map((name) => distribution.has(name)).includes(true))
      say(
        `${distribution.path}: distribution efficiencies are calculated from the ducts; those of the file were not read`,
      );
    ducts.push(air);
    systems.push({
      id: ownId(distribution.child("SystemIdentifier"), `system-${number}`),
      label: `System ${number}`,
      ...plant,
      airHandlerPlaceId: handlerPlace,
      servedFloorShare: servedFt2 && floorFt2 ? Math.min(1, servedFt2 / floorFt2) : undefined,
      returnsCount: air.number("NumberofReturnRegisters") || undefined,
      blower: readBlower(air),
      runs: air.children("Ducts").flatMap((each, at) => readRun(each, `run-${at + 1}`, placeIds, say) ?? []),
    });
  }
  return { systems, ducts, places: [...placeIds].map((kind) => ({ id: kind, kind })) };
}
