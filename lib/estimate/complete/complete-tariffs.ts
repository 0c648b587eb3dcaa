import { MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import { MONTH_NAMES, type Rates } from "#lib/job/rates.ts";
import type { EnergyRate } from "#lib/savings/rates.ts";
import type { Fuel } from "../fuels.ts";
import type { HouseModelInput } from "./complete-house.ts";
import type { BilledFuel } from "./read-bills.ts";

/** A price that depends on how much or when; a flat price needs none. */
export interface TariffModel {
  rate: Exclude<EnergyRate, { kind: "flat" }>;
  /** Use of everything but heating, cooling and blower, so that the steps are met where they are. */
  otherUnitsPerMonth: number;
}

export type Tariffs = Readonly<Partial<Record<Fuel, TariffModel>>>;

/**
 * Use beside heating and cooling where no bill tells it. Source: practice, from the U.S. household survey of energy use
 * as remembered: about half of a home's electricity, and the gas of a water heater and a range.
 */
const OTHER_USE = {
  electricity: { path: "otherElectricityKWh", value: 5500, low: 3000, high: 9000, unit: "kWh", title: "Electricity" },
  naturalGas: { path: "otherNaturalGasTherms", value: 200, low: 0, high: 350, unit: "therm", title: "Gas" },
} as const;

type ShiftPrices = { nightUsdPerKWh: number; dayUsdPerKWh: number; eveningUsdPerKWh: number };
const shiftRow = (prices: ShiftPrices): readonly [number, number, number] => [
  prices.nightUsdPerKWh,
  prices.dayUsdPerKWh,
  prices.eveningUsdPerKWh,
];

/** A summer may run over the end of the year. */
function isBetween(month: number, first: number, last: number): boolean {
  return first <= last ? month >= first && month <= last : month >= first || month <= last;
}

function byShift(prices: NonNullable<Rates["electricityByShift"]>): EnergyRate & { kind: "time-of-use" } {
  const { summer } = prices;
  return {
    kind: "time-of-use",
    usdPerUnitByShift: MONTH_NAMES.map((_, month) =>
      shiftRow(
        summer && isBetween(month, MONTH_NAMES.indexOf(summer.firstMonth), MONTH_NAMES.indexOf(summer.lastMonth))
          ? summer
          : prices,
      ),
    ),
  };
}

function rateOf(rates: Rates | undefined, fuel: Fuel): TariffModel["rate"] | null {
  if (fuel === "electricity" && rates?.electricityByShift) return byShift(rates.electricityByShift);
  const steps =
    fuel === "electricity"
      ? rates?.electricityTiers?.map(({ upToKWh, usdPerKWh }) => ({ upTo: upToKWh, usdPerUnit: usdPerKWh }))
      : fuel === "naturalGas"
        ? rates?.naturalGasTiers?.map(({ upToTherms, usdPerTherm }) => ({ upTo: upToTherms, usdPerUnit: usdPerTherm }))
        : undefined;
  if (!steps || steps.length === 0) return null;
  return { kind: "tiered", steps: steps.map(({ upTo, usdPerUnit }) => ({ upToUnits: upTo ?? null, usdPerUnit })) };
}

/** Where the steps of a price are met: what the bills hold beside the weather, else as told, else assumed aloud. */
function otherUnitsAYear(
  { job, ledger }: HouseModelInput,
  fuel: "electricity" | "naturalGas",
  billed: readonly BilledFuel[],
): number {
  const { path, title, ...usual } = OTHER_USE[fuel];
  const bill = billed.find((each) => each.fuel === fuel);
  const told = job.rates?.[path];
  if (told === undefined && bill) return 365 * (bill.yearly.baseUsePerDay ?? bill.totalUsePerYear / 365);
  return ledger.take(told, {
    ...usual,
    path: `#/rates/${path}`,
    title: `${title} for everything else, a year`,
    reason: "Decides which step of the price the saving meets; a usual home, for no bill is there.",
    source: { sourceId: "practice" },
  });
}

/** The prices that depend on how much or when. Fixed charges are in none of them. */
export function completeTariffs(input: HouseModelInput, billed: readonly BilledFuel[]): Tariffs {
  const entries = (["electricity", "naturalGas"] as const).flatMap((fuel): [Fuel, TariffModel][] => {
    const rate = rateOf(input.job.rates, fuel);
    if (!rate) return [];
    const otherUnitsPerMonth = rate.kind === "tiered" ? otherUnitsAYear(input, fuel, billed) / MONTHS_PER_YEAR : 0;
    return [[fuel, { rate, otherUnitsPerMonth }]];
  });
  return Object.fromEntries(entries);
}
