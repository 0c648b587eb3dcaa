import { MINUTES_PER_HOUR } from "#lib/air/standard-air.ts";
import type { House } from "#lib/job/house.ts";
import { SENDER } from "./hpxml-ids.ts";
import { houseKindOf } from "./hpxml-words.ts";
import type { XmlNode } from "./xml-node.ts";

const HOUSE_PRESSURE_PA = 50;

/**
 * Air leakage of the house at 50 Pa and its mean over a season, each where the file gives it as a flow, or as air changes
 * an hour of a volume that it gives too. A measurement at another pressure, or of another kind, stays unread.
 */
function airLeakage(
  details: XmlNode,
  volumeFt3: number | undefined,
): Pick<House, "envelopeLeakageCfm50" | "naturalInfiltrationCfm"> {
  const found: Pick<House, "envelopeLeakageCfm50" | "naturalInfiltrationCfm"> = {};
  for (const each of details.at("Enclosure", "AirInfiltration")?.children("AirInfiltrationMeasurement") ?? []) {
    const leakage = each.child("BuildingAirLeakage");
    const [, unit, natural] = /^(CFM|ACH)(natural)?$/.exec(leakage?.peek("UnitofMeasure") ?? "") ?? [];
    if (unit === undefined || (unit === "ACH" && volumeFt3 === undefined)) continue;
    const isAtPressure = Number(each.peek("HousePressure")) === HOUSE_PRESSURE_PA;
    const name = natural ? "naturalInfiltrationCfm" : "envelopeLeakageCfm50";
    if ((!natural && !isAtPressure) || found[name] !== undefined) continue;
    each.text("HousePressure");
    leakage?.text("UnitofMeasure");
    const value = leakage?.number("AirLeakage");
    if (value !== undefined) found[name] = unit === "CFM" ? value : (value * volumeFt3!) / MINUTES_PER_HOUR;
  }
  return found;
}

/** Our own id of the station, where we wrote the file. Another program's station is no id of ours and stays unread. */
function stationIdOf(details: XmlNode | undefined): string | undefined {
  const station = details?.at("ClimateandRiskZones", "WeatherStation");
  const identifier = station?.child("SystemIdentifier");
  if (identifier?.peek("SendingSystemIdentifierType") !== SENDER) return undefined;
  station?.pass();
  return identifier.text("SendingSystemIdentifierValue");
}

/** The house of a building, in our own names; `say` hears what had to be taken otherwise than it stands. */
export function readHouse(building: XmlNode, label: string, say: (line: string) => void): Partial<House> {
  const details = building.child("BuildingDetails");
  const construction = details?.at("BuildingSummary", "BuildingConstruction");
  const control = details?.at("Systems", "HVAC", "HVACControl");
  const volumeFt3 = construction?.number("ConditionedBuildingVolume");
  const facility = construction?.text("ResidentialFacilityType");
  const kind = facility === undefined ? undefined : houseKindOf(facility);
  if (kind === undefined) say(`the kind of house (${facility ?? "not given"}) is not known; site-built was taken`);
  return {
    label,
    kind: kind ?? "site-built",
    zip: building.at("Site", "Address")?.text("ZipCode")?.slice(0, 5),
    elevationFt: building.child("Site")?.number("Elevation"),
    conditionedFloorAreaFt2: construction?.number("ConditionedFloorArea"),
    stationId: stationIdOf(details),
    volumeFt3,
    storeysCount:
      construction?.number("NumberofConditionedFloorsAboveGrade") ?? construction?.number("NumberofConditionedFloors"),
    builtYear: construction?.number("YearBuilt"),
    bedroomsCount: construction?.number("NumberofBedrooms"),
    heatingSetpointF: control?.number("SetpointTempHeatingSeason"),
    coolingSetpointF: control?.number("SetpointTempCoolingSeason"),
    ...(details && airLeakage(details, volumeFt3)),
  };
}
