import type { EnergyUse } from "#lib/job/energy-use.ts";
import type { SeasonPrior } from "#lib/loads/weigh-seasons.ts";
import { BTU_PER_KWH, HOURS_PER_DAY } from "#lib/units/conversions.ts";
import { BTU_PER_UNIT, FUEL_LABELS, type Fuel, SALE_UNIT } from "../fuels.ts";
import type { Ledger } from "../ledger.ts";
import { BALANCE_DOUBT_F, type BuildingModel } from "./complete-building.ts";
import type { MeterUse } from "./read-bills.ts";

const practice = { sourceId: "practice" } as const;
/** Hot water and cooking of a household by bedrooms, Btu of fuel a day. Source: practice. */
const HOT_WATER_BTU_PER_DAY = { fixed: 30_000, perBedroom: 10_000 } as const;
/** Relative standard uncertainty of a household's base use: usual by what it is, and told. Source: practice. */
const BASE_DOUBT = { electricity: 0.3, fuel: 0.45, told: 0.1 } as const;
/** Colder mains and darker evenings: how far base use is above its mean in midwinter. Source: practice. */
const WINTER_SWING = { electricity: 0.07, fuel: 0.12 } as const;
const WINTER_SWING_DOUBT = 0.08;

const TOLD_FIELDS = {
  electricity: "electricityPerDayKWh",
  naturalGas: "naturalGasPerDayTherms",
  propane: "propanePerDayGallons",
  fuelOil: "fuelOilPerDayGallons",
} as const satisfies Record<Fuel, keyof NonNullable<EnergyUse["baseUse"]>>;

/** What a household of this size uses beside heating and cooling: lights and appliances, or hot water and cooking. */
function usualBtuPerDay(fuel: Fuel, { internalGainsBtuPerH, bedroomsCount }: BuildingModel): number {
  return fuel === "electricity"
    ? HOURS_PER_DAY * internalGainsBtuPerH
    : HOT_WATER_BTU_PER_DAY.fixed + HOT_WATER_BTU_PER_DAY.perBedroom * bedroomsCount;
}

/**
 * What is known of a meter before its bills are read, each assumed value listed. A furnace's blower is on the electricity
 * meter in winter, so a house that heats at all is looked at for it there.
 */
export function seasonPrior({
  fuel,
  meter,
  building,
  told,
  ledger,
}: {
  fuel: Fuel;
  meter: MeterUse;
  building: BuildingModel;
  told: EnergyUse["baseUse"];
  ledger: Ledger;
}): SeasonPrior {
  const isElectricity = fuel === "electricity";
  const field = TOLD_FIELDS[fuel];
  const usual = usualBtuPerDay(fuel, building) / (isElectricity ? BTU_PER_KWH : BTU_PER_UNIT[fuel]);
  const usualDoubt = isElectricity ? BASE_DOUBT.electricity : BASE_DOUBT.fuel;
  const wasTold = told?.[field] !== undefined;
  const baseUsePerDay = ledger.take<number>(told?.[field], {
    path: `#/energy/baseUse/${field}`,
    title: `${FUEL_LABELS[fuel]} a day that neither heats nor cools`,
    value: usual,
    unit: SALE_UNIT[fuel],
    reason: isElectricity
      ? "Lights and appliances of a house of this size; the bills correct it where they can tell."
      : "Hot water and cooking of a house of this size; the bills correct it where they can tell.",
    source: practice,
    low: usual * (1 - 1.28 * usualDoubt),
    high: usual * (1 + 1.28 * usualDoubt),
  });
  const swingField = isElectricity ? "electricityWinterSwingShare" : "fuelWinterSwingShare";
  const usualSwing = isElectricity ? WINTER_SWING.electricity : WINTER_SWING.fuel;
  const swing = ledger.take<number>(told?.[swingField], {
    path: `#/energy/baseUse/${swingField}`,
    title: isElectricity
      ? "Electricity for lights and appliances: midwinter above the mean"
      : "Hot water and cooking: midwinter above the mean",
    value: usualSwing,
    unit: "share",
    reason: isElectricity
      ? "Longer evenings; without it that use would count as heating."
      : "Colder water from the mains; without it that use would count as heating.",
    source: practice,
    low: 0,
    high: usualSwing + 1.28 * WINTER_SWING_DOUBT,
  });
  return {
    baseUsePerDay,
    baseStandardUncertainty: (wasTold ? BASE_DOUBT.told : usualDoubt) * baseUsePerDay,
    winterSwingShare: swing,
    winterSwingDoubt: told?.[swingField] === undefined ? WINTER_SWING_DOUBT : WINTER_SWING_DOUBT / 4,
    heatingBalanceF: meter.heats ? building.balanceF.heating : null,
    coolingBalanceF: meter.cools ? building.balanceF.cooling : null,
    balanceStandardUncertaintyF: BALANCE_DOUBT_F,
  };
}
