import { moistAir } from "#lib/air/moist-air.ts";
import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { HouseModelInput } from "./complete-house.ts";

/** The air in the rooms, by season. */
export interface IndoorModel {
  heatingF: number;
  coolingF: number;
  coolingEnthalpyBtuPerLb: number;
  coolingHumidityRatio: number;
  /** How far the rooms' air is below that of a house held at half humidity, Btu/lb: 0 or more where summers are dry. */
  drynessBtuPerLb: number;
  /** Of the moisture that leaks bring: what the coil takes out; the rest leaves with the air and is felt. */
  coilMoistureShareAt: number;
}

/**
 * A thermostat answers to temperature. Moisture that leaks bring raises the humidity of the rooms until coil and
 * exhausted air carry it away; only the coil's part is load. A coil at half run time sheds about twice what the air of a
 * usual house carries off for each grain. Source: derived, held to the coverage study (tests/proofs/coverage).
 */
const COIL_MOISTURE_SHARE = { value: 0.65, doubt: 0.15 } as const;

/**
 * Relative humidity of cooled rooms: held by the coil at about a half, but where outdoor air is drier than that the coil
 * stays dry and the rooms follow it. Source: practice; derived (no moisture is taken out above the coil's dew point).
 */
const HUMIDITY = { held: 0.5, driest: 0.3 } as const;

/** Mean humidity ratio of outdoor air while it is warmer than the rooms are kept, weighted by how much. */
function humidityWhileCooling({ bins }: ClimateYear, coolingF: number): number {
  const base = coolingF - 10;
  let weight = 0;
  let sum = 0;
  bins.temperatureF.forEach((eachF, bin) => {
    const excess = Math.max(0, eachF - base) * bins.hours[bin]!;
    weight += excess;
    sum += excess * bins.humidityRatio[bin]!;
  });
  return weight > 0 ? sum / weight : Number.POSITIVE_INFINITY;
}

const practice = { sourceId: "practice" } as const;

/** Thermostat settings and summer humidity, each gap listed. */
export function completeIndoor({ job, ledger, space, climate }: HouseModelInput, pressurePa: number): IndoorModel {
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
  const held = moistAir({ dryBulbF: coolingF, relativeHumidity: HUMIDITY.held, pressurePa });
  const outdoorRatio = humidityWhileCooling(climate, coolingF);
  const usualHumidity =
    HUMIDITY.held * Math.min(1, Math.max(HUMIDITY.driest / HUMIDITY.held, outdoorRatio / held.humidityRatio));
  const humidity = ledger.take(house.coolingHumidityShare, {
    path: "#/house/coolingHumidityShare",
    title: "Indoor relative humidity in summer",
    value: usualHumidity,
    unit: "share",
    reason:
      usualHumidity < HUMIDITY.held
        ? "Summers are so dry here that the rooms follow the air outside and the coil stays dry."
        : "What an air conditioner usually holds.",
    source: practice,
    low: usualHumidity - 0.08,
    high: usualHumidity + 0.1,
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
    drynessBtuPerLb: held.enthalpyBtuPerLb - air.enthalpyBtuPerLb,
    coilMoistureShareAt: space.add({
      key: "coilMoistureShare",
      group: "zones",
      base: coilMoistureShare,
      spread: { shape: "absolute", standardUncertainty: COIL_MOISTURE_SHARE.doubt, min: 0, max: 1 },
    }),
  };
}
