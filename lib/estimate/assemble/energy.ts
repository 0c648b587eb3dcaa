import type { EnergyByFuel, Savings } from "#lib/job/result/energy-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Fuel } from "../fuels.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import { type Outcome, type OutputLayout, rangedOf, rangedOfFunction } from "../output-layout.ts";

/** The outputs of an evaluated house under their names. */
export interface Evaluated {
  layout: OutputLayout;
  outcome: Outcome;
}

export const readRanged = ({ layout, outcome }: Evaluated, key: string): Ranged => rangedOf(outcome, layout.at(key));

function fuelOf(
  evaluated: Evaluated,
  fuel: Fuel,
  month: number | "year",
): { before: Ranged; after: Ranged; saved: Ranged } {
  const { layout, outcome } = evaluated;
  const beforeAt = layout.at(outputKey.energy(fuel, "before", month));
  const afterAt = layout.at(outputKey.energy(fuel, "after", month));
  return {
    before: rangedOf(outcome, beforeAt),
    after: rangedOf(outcome, afterAt),
    saved: rangedOfFunction(outcome, (read) => read(beforeAt) - read(afterAt)),
  };
}

/** Use before and after, and what is saved, of one month or the year. */
export function energyOf(evaluated: Evaluated, month: number | "year"): EnergyByFuel {
  const electricity = fuelOf(evaluated, "electricity", month);
  const naturalGas = fuelOf(evaluated, "naturalGas", month);
  const propane = fuelOf(evaluated, "propane", month);
  const fuelOil = fuelOf(evaluated, "fuelOil", month);
  return {
    electricity: { beforeKWh: electricity.before, afterKWh: electricity.after, savedKWh: electricity.saved },
    naturalGas: { beforeTherms: naturalGas.before, afterTherms: naturalGas.after, savedTherms: naturalGas.saved },
    propane: { beforeGallons: propane.before, afterGallons: propane.after, savedGallons: propane.saved },
    fuelOil: { beforeGallons: fuelOil.before, afterGallons: fuelOil.after, savedGallons: fuelOil.saved },
  };
}

/** What the first plan saves a year. */
export function savingsOf(evaluated: Evaluated, energy: EnergyByFuel): Savings {
  return {
    electricityKWh: energy.electricity.savedKWh,
    naturalGasTherms: energy.naturalGas.savedTherms,
    propaneGallons: energy.propane.savedGallons,
    fuelOilGallons: energy.fuelOil.savedGallons,
    peakKW: readRanged(evaluated, outputKey.plan(0, "peakKW")),
    costUsdPerYear: readRanged(evaluated, outputKey.plan(0, "savedUsd")),
    co2LbPerYear: readRanged(evaluated, outputKey.plan(0, "co2Lb")),
  };
}
