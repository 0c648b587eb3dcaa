import { ENVELOPE_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { balanceTemperature } from "#lib/loads/building-loads.ts";
import { buildingUa } from "#lib/loads/building-ua.ts";
import { internalGains } from "#lib/loads/internal-gains.ts";
import { formatNumber } from "#lib/units/format.ts";
import { BTU_PER_UNIT, FUEL_LABELS } from "../fuels.ts";
import type { Mode } from "../season-bins.ts";
import type { HouseModelInput } from "./complete-house.ts";
import type { IndoorModel } from "./complete-indoor.ts";
import type { BilledFuel } from "./read-bills.ts";

/** What the house loses for each degree, and from which outdoor temperature on it would need heat or cold. */
export interface BuildingModel {
  uaBtuPerHF: number;
  infiltrationCfm: number;
  /** Measured, or usual for its age. */
  envelopeLeakageCfm50: number;
  envelopeExponent: number;
  internalGainsBtuPerH: number;
  bedroomsCount: number;
  /** From setting, gains and heat loss; as told where it was. */
  balanceF: Readonly<Record<Mode, number>>;
}

const practice = { sourceId: "practice" } as const;
/** Sun through windows, mean over the season, Btu/h a ft² of floor. Source: practice, from memory. */
const SUN_GAIN_BTU_PER_H_FT2 = { heating: 1.5, cooling: 3 } as const;
/** A balance temperature that no house in use has; what bills say beyond is held here. Source: practice. */
const BALANCE_SPAN = {
  heating: { lowF: 48, highF: 66, billedLowF: 45, billedHighF: 70 },
  cooling: { lowF: 62, highF: 74, billedLowF: 55, billedHighF: 80 },
} as const;

/** Relative standard uncertainty of the heat loss of a house by its age, and part by part. Source: practice. */
export const LOSS_DOUBT = { byAge: 0.3, byParts: 0.15 } as const;
/** Relative standard uncertainty of the mean infiltration by leakage at 50 Pa. Source: practice. */
export const INFILTRATION_DOUBT = 0.3;
/** Standard uncertainty of a balance temperature that follows from setting, gains and heat loss. Source: practice. */
export const BALANCE_DOUBT_F = 5;

const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** The balance temperature that the bills of a season show, of the fuel with the most use. */
function billedBalance(billed: readonly BilledFuel[], mode: Mode): { valueF: number; reason: string } | null {
  const rows = billed.flatMap(({ fuel, yearly, periodsCount }) => {
    const valueF = mode === "heating" ? yearly.heatingBalanceF : yearly.coolingBalanceF;
    const use = mode === "heating" ? yearly.heatingUse : yearly.coolingUse;
    return valueF === null || !(use > 0) ? [] : [{ fuel, valueF, periodsCount, useBtu: use * BTU_PER_UNIT[fuel] }];
  });
  const [first] = rows.sort((one, other) => other.useBtu - one.useBtu);
  if (!first) return null;
  const { billedLowF, billedHighF } = BALANCE_SPAN[mode];
  return {
    valueF: within(first.valueF, billedLowF, billedHighF),
    reason: `From ${first.periodsCount} ${FUEL_LABELS[first.fuel]} bills: where their use begins to follow the weather (${formatNumber(first.valueF)} °F).`,
  };
}

/** Heat loss of the house: as told, or from size and age. Each gap is listed. */
export function completeBuilding({
  job,
  ledger,
  indoor,
  airDensityLbPerFt3,
}: HouseModelInput & { indoor: IndoorModel; airDensityLbPerFt3: number }): BuildingModel {
  const { house } = job;
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
    naturalInfiltrationCfm: house.naturalInfiltrationCfm,
    parts: house.envelopeParts,
    airDensityLbPerFt3,
  });
  const hasParts = (house.envelopeParts ?? []).length > 0;
  const lossDoubt = hasParts ? LOSS_DOUBT.byParts : LOSS_DOUBT.byAge;
  const uaBtuPerHF = ledger.take(house.envelopeUaBtuPerHF, {
    path: "#/house/envelopeUaBtuPerHF",
    title: "Heat loss coefficient of the house",
    value: building.uaBtuPerHF,
    unit: "Btu/(h·°F)",
    reason: hasParts
      ? `From the parts of the envelope as told; air tightness ${building.tightness}.`
      : `From floor area and the usual construction of ${builtYear}; air tightness ${building.tightness}.`,
    source: practice,
    low: (1 - lossDoubt) * building.uaBtuPerHF,
    high: (1 + lossDoubt) * building.uaBtuPerHF,
  });
  const infiltrationCfm = ledger.take(house.naturalInfiltrationCfm, {
    path: "#/house/naturalInfiltrationCfm",
    title: "Mean air through the house's own leaks",
    value: building.infiltrationCfm,
    unit: "cfm",
    reason: `From the house's leakage at 50 Pa (${building.tightness}), divided by 17 for one story and less for more.`,
    source: practice,
    low: building.infiltrationCfm * Math.exp(-1.28 * INFILTRATION_DOUBT),
    high: building.infiltrationCfm * Math.exp(1.28 * INFILTRATION_DOUBT),
  });
  const envelopeExponent = ledger.take<number>(house.envelopeExponentRatio, {
    path: "#/house/envelopeExponentRatio",
    title: "Exponent of the house's air leaks",
    value: ENVELOPE_LEAK_EXPONENT.value,
    unit: ENVELOPE_LEAK_EXPONENT.unit,
    reason: `${ENVELOPE_LEAK_EXPONENT.reason} It turns unequal duct leaks into the pressure of the house.`,
    source: ENVELOPE_LEAK_EXPONENT.source,
    low: ENVELOPE_LEAK_EXPONENT.low,
    high: ENVELOPE_LEAK_EXPONENT.high,
  });
  const gains = internalGains({
    conditionedFloorAreaFt2: house.conditionedFloorAreaFt2,
    bedroomsCount,
  }).internalGainsBtuPerH;
  const sunGain = (mode: Mode): number => {
    const key = mode === "heating" ? "sunGainHeatingBtuPerHFt2" : "sunGainCoolingBtuPerHFt2";
    const usual = SUN_GAIN_BTU_PER_H_FT2[mode];
    return ledger.take<number>(house[key], {
      path: `#/house/${key}`,
      title: `Sun through the windows in the ${mode} season, for each square foot of floor`,
      value: usual,
      unit: "Btu/(h·ft²)",
      reason: "A common figure; it sets from which outdoor temperature on the house needs heat or cold.",
      source: practice,
      low: 0.5 * usual,
      high: 1.5 * usual,
    });
  };
  const balanceOf = (mode: Mode, told: number | undefined) =>
    told ??
    within(
      balanceTemperature({
        setpointF: mode === "heating" ? indoor.heatingF : indoor.coolingF,
        gainsBtuPerH: gains + sunGain(mode) * house.conditionedFloorAreaFt2,
        uaBtuPerHF,
      }).balanceF,
      BALANCE_SPAN[mode].lowF,
      BALANCE_SPAN[mode].highF,
    );
  return {
    uaBtuPerHF,
    infiltrationCfm,
    envelopeLeakageCfm50: building.envelopeLeakageCfm50,
    envelopeExponent,
    internalGainsBtuPerH: gains,
    bedroomsCount,
    balanceF: {
      heating: balanceOf("heating", house.heatingBalanceF),
      cooling: balanceOf("cooling", house.coolingBalanceF),
    },
  };
}

/** The balance temperature of a season: as told, as the bills show, or the building's; listed where assumed. */
export function takeBalance({
  job,
  ledger,
  mode,
  building,
  billed,
}: Pick<HouseModelInput, "job" | "ledger"> & {
  mode: Mode;
  building: BuildingModel;
  /** Of the fuels that serve this season. */
  billed: readonly BilledFuel[];
}): number {
  const fromBills = billedBalance(billed, mode);
  const value = fromBills?.valueF ?? building.balanceF[mode];
  return ledger.take(job.house[mode === "heating" ? "heatingBalanceF" : "coolingBalanceF"], {
    path: `#/house/${mode}BalanceF`,
    title: `Outdoor temperature ${mode === "heating" ? "below which the house needs heat" : "above which the house needs cooling"}`,
    value,
    unit: "°F",
    reason: fromBills?.reason ?? "From the thermostat setting less what people, lights, appliances and the sun bring.",
    source: { sourceId: fromBills ? ("ashrae-guideline-14" as const) : ("derived" as const) },
    low: value - BALANCE_DOUBT_F,
    high: value + BALANCE_DOUBT_F,
  });
}
