import { moistAir } from "#lib/air/moist-air.ts";
import type { HouseModelInput } from "./complete-house.ts";

/** The air in the rooms, by season. */
export interface IndoorModel {
  heatingF: number;
  coolingF: number;
  coolingEnthalpyBtuPerLb: number;
  coolingHumidityRatio: number;
}

const practice = { sourceId: "practice" } as const;

/** Thermostat settings and summer humidity, each gap listed. */
export function completeIndoor({ job, ledger }: HouseModelInput, pressurePa: number): IndoorModel {
  const { house } = job;
  const heatingF = ledger.take(house.heatingSetpointF, {
    path: "#/house/heatingSetpointF",
    title: "Heating thermostat setting",
    value: 69,
    unit: "°F",
    reason: "A common setting, day and night averaged.",
    source: practice,
    low: 66,
    high: 72,
  });
  const coolingF = ledger.take(house.coolingSetpointF, {
    path: "#/house/coolingSetpointF",
    title: "Cooling thermostat setting",
    value: 76,
    unit: "°F",
    reason: "A common setting.",
    source: practice,
    low: 73,
    high: 79,
  });
  const humidity = ledger.take(house.coolingHumidityShare, {
    path: "#/house/coolingHumidityShare",
    title: "Indoor relative humidity in summer",
    value: 0.5,
    unit: "share",
    reason: "What an air conditioner usually holds.",
    source: practice,
    low: 0.42,
    high: 0.6,
  });
  const air = moistAir({ dryBulbF: coolingF, relativeHumidity: humidity, pressurePa });
  return { heatingF, coolingF, coolingEnthalpyBtuPerLb: air.enthalpyBtuPerLb, coolingHumidityRatio: air.humidityRatio };
}
