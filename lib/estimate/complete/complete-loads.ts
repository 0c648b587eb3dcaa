import { moistAir } from "#lib/air/moist-air.ts";
import type { KnownUse } from "#lib/job/energy-use.ts";
import { balanceTemperature, degreeDayLoads } from "#lib/loads/building-loads.ts";
import { buildingUa } from "#lib/loads/building-ua.ts";
import { internalGains } from "#lib/loads/internal-gains.ts";
import { BTU_PER_KWH, BTU_PER_THERM } from "#lib/units/conversions.ts";
import { type Mode, type SeasonBins, seasonBins } from "../season-bins.ts";
import type { HeatingFuel } from "./complete-equipment.ts";
import type { HouseModelInput } from "./complete-house.ts";
import type { SystemModel } from "./complete-systems.ts";

/** Systems that share one meter in one mode, and what is known of their yearly need or use. */
export interface LoadGroup {
  mode: Mode;
  fuel: HeatingFuel;
  systemIndexes: readonly number[];
  /** Told or billed use of the group, Btu of fuel or electricity; null when the load comes from the building. */
  knownUseBtu: number | null;
  /** Yearly need of the whole house in this mode from the building; the group takes its systems' share. */
  buildingLoadBtu: number;
  /** Multiplies use or load: how far the evidence may be off. */
  loadFactorAt: number;
}

export interface IndoorModel {
  heatingF: number;
  coolingF: number;
  coolingEnthalpyBtuPerLb: number;
  coolingHumidityRatio: number;
}

export interface LoadModel {
  indoor: IndoorModel;
  uaBtuPerHF: number;
  heatingBalanceF: number;
  coolingBalanceF: number;
  naturalInfiltrationAt: number;
  heating: SeasonBins;
  cooling: SeasonBins;
  groups: readonly LoadGroup[];
}

const practice = { sourceId: "practice" } as const;
/** Sun through windows, mean over the season, Btu/h a ft² of floor. Source: practice, from memory. */
const SUN_GAIN_BTU_PER_H_FT2 = { heating: 1.5, cooling: 3 } as const;
/** Part of a house's cooling need that is sensible. Source: practice. */
const SENSIBLE_SHARE_OF_COOLING = 0.75;
/** Relative standard uncertainty of the yearly need by where it comes from. Source: practice. */
const LOAD_DOUBT = { known: 0.08, building: 0.25 } as const;
const BTU_PER_GALLON = { propane: 91_300, fuelOil: 138_900 } as const;

/** What was told of a group's yearly use, in Btu. Heat contents of propane and oil: eia-co2. */
function knownUseBtu(known: KnownUse | undefined, mode: Mode, fuel: HeatingFuel): number | null {
  if (!known) return null;
  const told =
    mode === "cooling"
      ? [known.coolingElectricityKWh, BTU_PER_KWH]
      : {
          naturalGas: [known.heatingNaturalGasTherms, BTU_PER_THERM],
          propane: [known.heatingPropaneGallons, BTU_PER_GALLON.propane],
          fuelOil: [known.heatingFuelOilGallons, BTU_PER_GALLON.fuelOil],
          electricity: [known.heatingElectricityKWh, BTU_PER_KWH],
        }[fuel];
  const [amount, btuEach] = told as [number | undefined, number];
  return amount === undefined ? null : amount * btuEach;
}

function completeIndoor({ job, ledger }: HouseModelInput, pressurePa: number): IndoorModel {
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

/** What the house needs in heat and cold over a year, by the best evidence there is for each meter. */
export function completeLoads(
  input: HouseModelInput & { systems: readonly SystemModel[]; airDensityLbPerFt3: number; pressurePa: number },
): LoadModel {
  const { job, ledger, space, systems, climate } = input;
  const { house, energy } = job;
  const indoor = completeIndoor(input, input.pressurePa);
  const storeysCount = ledger.take(house.storeysCount, {
    path: "#/house/storeysCount",
    title: "Stories",
    value: 1,
    unit: "count",
    reason: "Nothing was said, so one story.",
    source: practice,
  });
  const builtYear = ledger.take(house.builtYear, {
    path: "#/house/builtYear",
    title: "Year built",
    value: 1975,
    unit: "yr",
    reason: "Nothing was said; about the middle of the houses standing.",
    source: practice,
  });
  const bedroomsCount = ledger.take(house.bedroomsCount, {
    path: "#/house/bedroomsCount",
    title: "Bedrooms",
    value: 3,
    unit: "count",
    reason: "Nothing was said; the most common number.",
    source: practice,
  });
  const building = buildingUa({
    conditionedFloorAreaFt2: house.conditionedFloorAreaFt2,
    storeysCount,
    builtYear,
    envelopeLeakageCfm50: house.envelopeLeakageCfm50,
    volumeFt3: house.volumeFt3,
    airDensityLbPerFt3: input.airDensityLbPerFt3,
  });
  const uaBtuPerHF = ledger.take(house.envelopeUaBtuPerHF, {
    path: "#/house/envelopeUaBtuPerHF",
    title: "Heat loss coefficient of the house",
    value: building.uaBtuPerHF,
    unit: "Btu/(h·°F)",
    reason: `From floor area and the usual construction of ${builtYear}; air tightness ${building.tightness}.`,
    source: practice,
    low: 0.7 * building.uaBtuPerHF,
    high: 1.3 * building.uaBtuPerHF,
  });
  const gains = internalGains({
    conditionedFloorAreaFt2: house.conditionedFloorAreaFt2,
    bedroomsCount,
  }).internalGainsBtuPerH;
  const balance = (mode: Mode) =>
    balanceTemperature({
      setpointF: mode === "heating" ? indoor.heatingF : indoor.coolingF,
      gainsBtuPerH: gains + SUN_GAIN_BTU_PER_H_FT2[mode] * house.conditionedFloorAreaFt2,
      uaBtuPerHF,
    }).balanceF;
  const takeBalance = (mode: Mode, told: number | undefined, low: number, high: number) => {
    const value = Math.min(high, Math.max(low, balance(mode)));
    return ledger.take(told, {
      path: `#/house/${mode}BalanceF`,
      title: `Outdoor temperature ${mode === "heating" ? "below which the house needs heat" : "above which the house needs cooling"}`,
      value,
      unit: "°F",
      reason: "From the thermostat setting less what people, lights, appliances and the sun bring.",
      source: { sourceId: "derived" as const },
      low: value - 4,
      high: value + 4,
    });
  };
  const heatingBalanceF = takeBalance("heating", house.heatingBalanceF, 48, 66);
  const coolingBalanceF = takeBalance("cooling", house.coolingBalanceF, 62, 74);
  const heating = seasonBins({ climate, mode: "heating", balanceF: heatingBalanceF });
  const cooling = seasonBins({ climate, mode: "cooling", balanceF: coolingBalanceF });
  const buildingLoad = (mode: Mode) =>
    degreeDayLoads({
      uaBtuPerHF,
      monthlyDegreeDays: [(mode === "heating" ? heating : cooling).degreeDays],
      sensibleShare: mode === "heating" ? 1 : SENSIBLE_SHARE_OF_COOLING,
    }).yearlyBtu;
  const useKnown = energy?.prefer !== "building";
  const keys = new Map<string, { mode: Mode; fuel: HeatingFuel; systemIndexes: number[] }>();
  systems.forEach((system, index) => {
    for (const mode of ["heating", "cooling"] as const) {
      const fuel =
        mode === "cooling" ? (system.cooling ? ("electricity" as const) : null) : (system.heating?.fuel ?? null);
      if (!fuel) continue;
      const key = `${mode}/${fuel}`;
      const entry = keys.get(key) ?? { mode, fuel, systemIndexes: [] };
      entry.systemIndexes.push(index);
      keys.set(key, entry);
    }
  });
  const groups = [...keys.entries()].map(([key, group]): LoadGroup => {
    const known = useKnown ? knownUseBtu(energy?.knownUse, group.mode, group.fuel) : null;
    const load = buildingLoad(group.mode);
    if (known === null) {
      ledger.take<number>(undefined, {
        path: `#/energy/knownUse/${group.mode}`,
        title: `Yearly ${group.mode} need of the house`,
        value: load / 1e6,
        unit: "million Btu",
        reason: "No bills and no known use, so from the heat loss of the house and its degree days.",
        source: { sourceId: "derived" },
        low: (load / 1e6) * 0.7,
        high: (load / 1e6) * 1.3,
      });
    }
    return {
      ...group,
      knownUseBtu: known,
      buildingLoadBtu: load,
      loadFactorAt: space.add({
        key: `loads/${key}`,
        group: "loads",
        base: 1,
        spread: {
          shape: "relative",
          standardUncertainty: known === null ? LOAD_DOUBT.building : LOAD_DOUBT.known,
          min: 0.2,
          max: 4,
        },
      }),
    };
  });
  return {
    indoor,
    uaBtuPerHF,
    heatingBalanceF,
    coolingBalanceF,
    naturalInfiltrationAt: space.add({
      key: "naturalInfiltrationCfm",
      group: "loads",
      base: building.infiltrationCfm,
      spread: { shape: "relative", standardUncertainty: 0.3, min: 5, max: 2000 },
    }),
    heating,
    cooling,
    groups,
  };
}
