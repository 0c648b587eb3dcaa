import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { citationSchema } from "./evidence-result.ts";
import { ranged } from "./ranged.ts";

/** Heating, cooling and blower use by fuel, before and after the work. */
export const energyByFuelSchema = z
  .strictObject({
    electricity: z.strictObject({
      beforeKWh: ranged({ unit: "kWh", title: "Electricity before" }),
      afterKWh: ranged({ unit: "kWh", title: "Electricity after" }),
      savedKWh: ranged({ unit: "kWh", title: "Electricity saved" }),
    }),
    naturalGas: z.strictObject({
      beforeTherms: ranged({ unit: "therm", title: "Gas before" }),
      afterTherms: ranged({ unit: "therm", title: "Gas after" }),
      savedTherms: ranged({ unit: "therm", title: "Gas saved" }),
    }),
    propane: z.strictObject({
      beforeGallons: ranged({ unit: "gal", title: "Propane before" }),
      afterGallons: ranged({ unit: "gal", title: "Propane after" }),
      savedGallons: ranged({ unit: "gal", title: "Propane saved" }),
    }),
    fuelOil: z.strictObject({
      beforeGallons: ranged({ unit: "gal", title: "Heating oil before" }),
      afterGallons: ranged({ unit: "gal", title: "Heating oil after" }),
      savedGallons: ranged({ unit: "gal", title: "Heating oil saved" }),
    }),
  })
  .meta({ id: "EnergyByFuel", title: "Energy by fuel" });

export const savingsSchema = z
  .strictObject({
    electricityKWh: ranged({ unit: "kWh", title: "Electricity saved a year" }),
    naturalGasTherms: ranged({ unit: "therm", title: "Gas saved a year" }),
    propaneGallons: ranged({ unit: "gal", title: "Propane saved a year" }),
    fuelOilGallons: ranged({ unit: "gal", title: "Heating oil saved a year" }),
    peakKW: ranged({ unit: "kW", title: "Power saved on the hottest afternoons" }),
    costUsdPerYear: ranged({ unit: "USD/yr", title: "Money saved a year" }),
    co2LbPerYear: ranged({ unit: "lb/yr", title: "Carbon dioxide avoided a year" }),
  })
  .meta({ id: "Savings", title: "Savings" });

const usdPerYear = (title: string) => numberField({ unit: "USD/yr", title });

/** The bill of one fuel before and after at the best estimates, fixed charges left out. */
export const fuelChargeSchema = z
  .strictObject({
    fuel: z.enum(["electricity", "naturalGas", "propane", "fuelOil"]),
    rateKind: z.enum(["flat", "tiered", "time-of-use"]),
    beforeUsdPerYear: usdPerYear("Cost of heating, cooling and, with steps, everything else before"),
    afterUsdPerYear: usdPerYear("The same after"),
    savedUsdPerYear: usdPerYear("Saved"),
    explanation: z.string(),
  })
  .meta({ id: "FuelCharge", title: "Charge of a fuel" });

const byMonth = (title: string) => z.array(z.number().meta({ unit: "as stated in `unit`", title })).length(12);

/** Use of one purpose and fuel by month, at the best estimates. */
export const modeEnergySchema = z
  .strictObject({
    purpose: z.enum(["heating", "cooling", "blower"]),
    fuel: z.enum(["electricity", "naturalGas", "propane", "fuelOil"]),
    unit: z.enum(["kWh", "therm", "gal"]),
    beforeByMonth: byMonth("Before, by month"),
    afterByMonth: byMonth("After, by month"),
  })
  .meta({ id: "ModeEnergy", title: "Energy of one purpose" });

export type ModeEnergy = z.output<typeof modeEnergySchema>;

/** Carbon dioxide that the saving avoids, by one way of counting the grid. */
export const carbonSchema = z
  .strictObject({
    id: z.enum(["non-baseload", "average"]),
    co2LbPerYear: numberField({ unit: "lb/yr", title: "Carbon dioxide avoided a year" }),
    electricityLbPerKWh: numberField({ unit: "lb/kWh", title: "Of each kilowatt hour" }),
    /** Region and year of the rate. */
    note: z.string(),
    source: citationSchema,
  })
  .meta({ id: "CarbonAvoided", title: "Carbon avoided" });

export type CarbonAvoided = z.output<typeof carbonSchema>;
export type FuelCharge = z.output<typeof fuelChargeSchema>;
export type EnergyByFuel = z.output<typeof energyByFuelSchema>;
export type Savings = z.output<typeof savingsSchema>;
