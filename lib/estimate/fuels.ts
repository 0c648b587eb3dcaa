import { BTU_PER_KWH, BTU_PER_THERM } from "#lib/units/conversions.ts";

export const FUELS = ["electricity", "naturalGas", "propane", "fuelOil"] as const;
export type Fuel = (typeof FUELS)[number];

/** Heat content of a sale unit, Btu. Propane and oil: eia-co2. */
export const BTU_PER_UNIT: Readonly<Record<Fuel, number>> = {
  electricity: BTU_PER_KWH,
  naturalGas: BTU_PER_THERM,
  propane: 91_300,
  fuelOil: 138_900,
};

export const SALE_UNIT = { electricity: "kWh", naturalGas: "therm", propane: "gal", fuelOil: "gal" } as const;

export const FUEL_LABELS: Readonly<Record<Fuel, string>> = {
  electricity: "electricity",
  naturalGas: "gas",
  propane: "propane",
  fuelOil: "heating oil",
};
