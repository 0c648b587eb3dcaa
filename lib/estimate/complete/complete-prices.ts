import type { Citation } from "#lib/sources/source.ts";
import { FUELS } from "../fuels.ts";
import type { HouseModelInput } from "./complete-house.ts";
import { completeTariffs, type TariffModel } from "./complete-tariffs.ts";
import type { BilledFuel } from "./read-bills.ts";

/** What a unit of each fuel costs and emits, in the order of FUELS. Prices are parameters; factors are figures of a year. */
export interface PriceModel {
  /** By fuel: the price of a unit; where there is a tariff, what its prices are multiplied by. */
  priceAt: readonly number[];
  tariffs: readonly (TariffModel | null)[];
  carbonLbPerUnit: readonly number[];
  escalationRate: number;
  discountRate: number;
  measureLifeYears: number;
}

const practice = { sourceId: "practice" } as const;
/** A price from a bill may still hold fixed charges; a state's mean surely does. Source: practice. */
const PRICE_DOUBT = { told: 0.05, assumed: 0.15 } as const;

/** Prices as told, or the state's mean, listed; carbon by the grid region's non-baseload rate, since savings are marginal. */
export function completePrices(input: HouseModelInput & { billed: readonly BilledFuel[] }): PriceModel {
  const { job, reference, ledger, space } = input;
  const tariffs = completeTariffs(input, input.billed);
  const { rates } = job;
  const { prices, carbon } = reference;
  const price = (
    key: "electricityUsdPerKWh" | "naturalGasUsdPerTherm" | "propaneUsdPerGallon" | "fuelOilUsdPerGallon",
    title: string,
    unit: string,
    isUsed: boolean,
    tariff?: TariffModel,
  ) => {
    const known = prices[key];
    const told = tariff ? 1 : rates?.[key];
    if (isUsed)
      ledger.take(told, {
        path: `#/rates/${key}`,
        title,
        value: known.value,
        unit,
        reason: known.note,
        source: known.source as Citation,
        low: 0.8 * known.value,
        high: 1.2 * known.value,
      });
    return space.add({
      key: `prices/${key}`,
      group: "prices",
      base: told ?? known.value,
      spread: {
        shape: "relative",
        standardUncertainty: isUsed ? (told === undefined ? PRICE_DOUBT.assumed : PRICE_DOUBT.told) : 0,
        min: 0,
        max: 100,
      },
    });
  };
  const burns = (kind: string) => job.systems.some((system) => system.heating?.kind === kind);
  return {
    priceAt: [
      price("electricityUsdPerKWh", "Electricity price", "USD/kWh", true, tariffs.electricity),
      price("naturalGasUsdPerTherm", "Gas price", "USD/therm", burns("gas-furnace"), tariffs.naturalGas),
      price("propaneUsdPerGallon", "Propane price", "USD/gal", burns("propane-furnace")),
      price("fuelOilUsdPerGallon", "Heating oil price", "USD/gal", burns("oil-furnace")),
    ],
    tariffs: FUELS.map((fuel) => tariffs[fuel] ?? null),
    carbonLbPerUnit: [
      carbon.electricityNonBaseloadLbPerKWh.value,
      carbon.naturalGasLbPerTherm.value,
      carbon.propaneLbPerGallon.value,
      carbon.fuelOilLbPerGallon.value,
    ],
    escalationRate: ledger.take(rates?.fuelEscalationRate, {
      path: "#/rates/fuelEscalationRate",
      title: "Yearly rise of energy prices above inflation",
      value: 0.005,
      unit: "ratio",
      reason: "Close to the long-run forecast for households.",
      source: practice,
      low: -0.01,
      high: 0.02,
    }),
    discountRate: ledger.take(rates?.discountRate, {
      path: "#/rates/discountRate",
      title: "Discount rate above inflation",
      value: 0.03,
      unit: "ratio",
      reason: "The rate of the federal life-cycle costing rules, from memory.",
      source: { sourceId: "nist-hb-135" },
      low: 0.01,
      high: 0.07,
    }),
    measureLifeYears: ledger.take(rates?.measureLifeYears, {
      path: "#/rates/measureLifeYears",
      title: "Years the sealing lasts",
      value: 18,
      unit: "yr",
      reason: "A common measure life of duct sealing in program rules, from memory.",
      source: practice,
      low: 10,
      high: 25,
    }),
  };
}
