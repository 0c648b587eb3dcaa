import { type AirPath, createAirPath, type Surroundings } from "#lib/distribution/air-path.ts";
import { createPreparedDucts, prepareDucts, type RunningDucts } from "#lib/distribution/duct-system.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";
import { type MarchedPlace, type MarchedSystem, marchedEnthalpy } from "./marching-balance.ts";

const nothing: MarchedPlace = {
  temperatureF: 70,
  humidityRatio: 0.006,
  regain: 0,
  supplyConductance: 0,
  returnConductance: 0,
  supplyLeakageCfm: 0,
  returnLeakageCfm: 0,
};

const winter: Omit<MarchedSystem, "places"> = {
  mode: "heating",
  fanFlowCfm: 1100,
  densityLbPerFt3: 0.073,
  indoorTemperatureF: 70,
  indoorHumidityRatio: 0.005,
  outdoorTemperatureF: 14,
  outdoorHumidityRatio: 0.001,
  extraInfiltrationCfm: 22,
  capacityBtuPerH: 58000,
  sensibleHeatRatio: 1,
  leaks: "at-the-end",
  piecesCount: 400,
};
const summer: Omit<MarchedSystem, "places"> = {
  ...winter,
  mode: "cooling",
  indoorTemperatureF: 76,
  indoorHumidityRatio: 0.0093,
  outdoorTemperatureF: 97,
  outdoorHumidityRatio: 0.0148,
  capacityBtuPerH: 36000,
  sensibleHeatRatio: 0.74,
};

const atticWinter = { ...nothing, temperatureF: 22, humidityRatio: 0.001, regain: 0.1 };
const atticSummer = { ...nothing, temperatureF: 124, humidityRatio: 0.0148, regain: 0.1 };
const basement = { ...nothing, temperatureF: 59, humidityRatio: 0.005, regain: 0.5 };
const supplyThere = { supplyConductance: 104, supplyLeakageCfm: 118 };
const returnThere = { returnConductance: 31, returnLeakageCfm: 74 };

/** Every class of configuration, by name: heating and cooling; one place, one a side, several; leaks, conduction, none. */
export const CONFIGURATIONS: Readonly<Record<string, MarchedSystem>> = {
  "heating, all in the attic": { ...winter, places: [{ ...atticWinter, ...supplyThere, ...returnThere }] },
  "heating, supply in the attic and return in the basement": {
    ...winter,
    places: [
      { ...atticWinter, ...supplyThere },
      { ...basement, ...returnThere },
    ],
  },
  "heating, both sides in three places": {
    ...winter,
    places: [
      { ...atticWinter, supplyConductance: 61, supplyLeakageCfm: 70, returnConductance: 12, returnLeakageCfm: 41 },
      { ...basement, supplyConductance: 38, supplyLeakageCfm: 55, returnConductance: 25, returnLeakageCfm: 12 },
      { ...nothing, temperatureF: 70, regain: 1, supplyConductance: 9, supplyLeakageCfm: 30, returnLeakageCfm: 8 },
    ],
  },
  "heating, leaks only": {
    ...winter,
    places: [{ ...atticWinter, supplyLeakageCfm: 118, returnLeakageCfm: 74 }],
  },
  "heating, conduction only": {
    ...winter,
    places: [{ ...atticWinter, supplyConductance: 104, returnConductance: 31 }],
  },
  "heating, only the return leaks, from a crawlspace warmer than the rooms": {
    ...winter,
    places: [{ ...nothing, temperatureF: 79, regain: 0.5, returnLeakageCfm: 120, returnConductance: 18 }],
  },
  "heating, a small heat pump on a bitter day": {
    ...winter,
    capacityBtuPerH: 9000,
    outdoorTemperatureF: -6,
    places: [{ ...atticWinter, temperatureF: -2, ...supplyThere, ...returnThere }],
  },
  "heating, no return ducts": { ...winter, places: [{ ...atticWinter, ...supplyThere }] },
  "heating, less infiltration while running": {
    ...winter,
    extraInfiltrationCfm: -35,
    places: [{ ...atticWinter, ...supplyThere, ...returnThere }],
  },
  "cooling, all in the attic": { ...summer, places: [{ ...atticSummer, ...supplyThere, ...returnThere }] },
  "cooling, supply in the attic and return in a humid crawlspace": {
    ...summer,
    places: [
      { ...atticSummer, ...supplyThere },
      { ...nothing, temperatureF: 73, humidityRatio: 0.0155, regain: 0.5, ...returnThere },
    ],
  },
  "cooling, both sides in three places": {
    ...summer,
    places: [
      { ...atticSummer, supplyConductance: 61, supplyLeakageCfm: 70, returnConductance: 12, returnLeakageCfm: 41 },
      {
        ...nothing,
        temperatureF: 84,
        humidityRatio: 0.0139,
        regain: 0.3,
        supplyConductance: 38,
        supplyLeakageCfm: 55,
        returnConductance: 25,
        returnLeakageCfm: 12,
      },
      { ...nothing, temperatureF: 76, humidityRatio: 0.0093, regain: 1, supplyConductance: 9, supplyLeakageCfm: 30 },
    ],
  },
  "cooling, dry coil": {
    ...summer,
    sensibleHeatRatio: 1,
    places: [{ ...atticSummer, ...supplyThere, ...returnThere }],
  },
  "cooling, leaks only": { ...summer, places: [{ ...atticSummer, supplyLeakageCfm: 118, returnLeakageCfm: 74 }] },
  "cooling, conduction only": {
    ...summer,
    places: [{ ...atticSummer, supplyConductance: 104, returnConductance: 31 }],
  },
};

const column = (system: MarchedSystem, read: (place: MarchedPlace) => number) => Float64Array.from(system.places, read);

export function runningDucts(system: MarchedSystem): RunningDucts {
  return {
    supplyConductanceBtuPerHF: column(system, (place) => place.supplyConductance),
    returnConductanceBtuPerHF: column(system, (place) => place.returnConductance),
    supplyLeakageCfm: column(system, (place) => place.supplyLeakageCfm),
    returnLeakageCfm: column(system, (place) => place.returnLeakageCfm),
    regainFactor: column(system, (place) => place.regain),
    roomAirShare: column(system, () => 0),
    outdoorAirShare: column(system, () => 0),
    fanFlowCfm: system.fanFlowCfm,
    airDensityLbPerFt3: system.densityLbPerFt3,
    extraInfiltrationCfm: system.extraInfiltrationCfm,
    cyclingFactor: 1,
  };
}

export function surroundings(system: MarchedSystem): Surroundings {
  return {
    indoorTemperatureF: system.indoorTemperatureF,
    outdoorTemperatureF: system.outdoorTemperatureF,
    zoneTemperatureF: column(system, (place) => place.temperatureF),
    indoorEnthalpyBtuPerLb: marchedEnthalpy(system.indoorTemperatureF, system.indoorHumidityRatio),
    outdoorEnthalpyBtuPerLb: marchedEnthalpy(system.outdoorTemperatureF, system.outdoorHumidityRatio),
    zoneEnthalpyBtuPerLb: column(system, (place) => marchedEnthalpy(place.temperatureF, place.humidityRatio)),
  };
}

/** The same system through the product's kernel. */
export function follow(system: MarchedSystem, ducts: Partial<RunningDucts> = {}): AirPath {
  const prepared = createPreparedDucts(system.places.length);
  prepareDucts({ ...runningDucts(system), ...ducts }, prepared);
  const path = createAirPath();
  const { capacityBtuPerH, sensibleHeatRatio } = system;
  if (system.mode === "heating") followHeating(prepared, surroundings(system), capacityBtuPerH, path);
  else followCooling(prepared, surroundings(system), { capacityBtuPerH, sensibleHeatRatio }, path);
  return path;
}
