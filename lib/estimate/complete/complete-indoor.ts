import { moistAir } from "#lib/air/moist-air.ts";
import type { HouseModelInput } from "./complete-house.ts";

/** The air in the rooms, by season. */
export interface IndoorModel {
  heatingF: number;
  coolingF: number;
  coolingEnthalpyBtuPerLb: number;
  coolingHumidityRatio: number;
  /** Of the moisture that leaks bring: what the coil takes out; the rest leaves with the air and is felt. */
  coilMoistureShareAt: number;
}

/**
 * A thermostat answers to temperature. Moisture that leaks bring raises the humidity of the rooms until coil and
 * exhausted air carry it away; only the coil's part is load. A coil at half run time sheds about twice what the air of a
 * usual house carries off for each grain. Source: derived, held to the coverage study (tests/proofs/coverage).
 */
const COIL_MOISTURE_SHARE = { value: 0.65, doubt: 0.15 } as const;

const practice = { sourceId: "practice" } as const;

/** Thermostat settings and summer humidity, each gap listed. */
export function completeIndoor({ job, ledger, space }: HouseModelInput, pressurePa: number): IndoorModel {
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
  const coilMoistureShare = ledger.take<number>(house.coilMoistureShare, {
    path: "#/house/coilMoistureShare",
    title: "Part of the moisture from leaks that the air conditioner takes out",
    value: COIL_MOISTURE_SHARE.value,
    unit: "share",
    reason: "The thermostat does not feel moisture: the rest makes the rooms more humid and leaves with the air.",
    source: { sourceId: "derived" },
    low: COIL_MOISTURE_SHARE.value - 1.28 * COIL_MOISTURE_SHARE.doubt,
    high: COIL_MOISTURE_SHARE.value + 1.28 * COIL_MOISTURE_SHARE.doubt,
  });
  return {
    heatingF,
    coolingF,
    coolingEnthalpyBtuPerLb: air.enthalpyBtuPerLb,
    coolingHumidityRatio: air.humidityRatio,
    coilMoistureShareAt: space.add({
      key: "coilMoistureShare",
      group: "zones",
      base: coilMoistureShare,
      spread: { shape: "absolute", standardUncertainty: COIL_MOISTURE_SHARE.doubt, min: 0, max: 1 },
    }),
  };
}
