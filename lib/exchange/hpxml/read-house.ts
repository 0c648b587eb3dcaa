import type { House } from "#lib/job/house.ts";
import { houseKindOf } from "./hpxml-words.ts";
import type { XmlNode } from "./xml-node.ts";

const HOUSE_PRESSURE_PA = 50;

/** Air leakage of the house, where it was measured at 50 Pa and given as a flow. */
function envelopeLeakage(details: XmlNode): number | undefined {
  for (const each of details.at("Enclosure", "AirInfiltration")?.children("AirInfiltrationMeasurement") ?? []) {
    const leakage = each.child("BuildingAirLeakage");
    if (each.number("HousePressure") === HOUSE_PRESSURE_PA && leakage?.text("UnitofMeasure") === "CFM")
      return leakage.number("AirLeakage");
  }
  return undefined;
}

/** The house of a building, in our own names; `say` hears what had to be taken otherwise than it stands. */
export function readHouse(building: XmlNode, label: string, say: (line: string) => void): Partial<House> {
  const details = building.child("BuildingDetails");
  const construction = details?.at("BuildingSummary", "BuildingConstruction");
  const control = details?.at("Systems", "HVAC", "HVACControl");
  const facility = construction?.text("ResidentialFacilityType");
  const kind = facility === undefined ? undefined : houseKindOf(facility);
  if (kind === undefined) say(`the kind of house (${facility ?? "not given"}) is not known; site-built was taken`);
  return {
    label,
    kind: kind ?? "site-built",
    zip: building.at("Site", "Address")?.text("ZipCode")?.slice(0, 5),
    elevationFt: building.child("Site")?.number("Elevation"),
    conditionedFloorAreaFt2: construction?.number("ConditionedFloorArea"),
    volumeFt3: construction?.number("ConditionedBuildingVolume"),
    storeysCount:
      construction?.number("NumberofConditionedFloorsAboveGrade") ?? construction?.number("NumberofConditionedFloors"),
    builtYear: construction?.number("YearBuilt"),
    bedroomsCount: construction?.number("NumberofBedrooms"),
    heatingSetpointF: control?.number("SetpointTempHeatingSeason"),
    coolingSetpointF: control?.number("SetpointTempCoolingSeason"),
    envelopeLeakageCfm50: details && envelopeLeakage(details),
  };
}
