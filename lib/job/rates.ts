import { z } from "zod";
import { numberField } from "#lib/units/field.ts";

export const MONTH_NAMES = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
] as const;

const MOST_STEPS = 8;
const usdPerKWh = (title: string) => numberField({ unit: "USD/kWh", title, above: 0, max: 5 });

/** Prices of the three 8-hour shifts in which the estimate keeps the day. */
const shiftPrices = {
  nightUsdPerKWh: usdPerKWh("Price from midnight to 8 in the morning"),
  dayUsdPerKWh: usdPerKWh("Price from 8 to 16 o'clock"),
  eveningUsdPerKWh: usdPerKWh("Price from 16 o'clock to midnight"),
};

const electricityTierSchema = z
  .strictObject({
    upToKWh: numberField({
      unit: "kWh",
      title: "Up to this use a month",
      description: "Left out for the last step, which has no end.",
      above: 0,
      max: 100_000,
    }).optional(),
    usdPerKWh: usdPerKWh("Price within this step"),
  })
  .meta({ id: "ElectricityTier", title: "Step of the electricity price" });

const gasTierSchema = z
  .strictObject({
    upToTherms: numberField({
      unit: "therm",
      title: "Up to this use a month",
      description: "Left out for the last step, which has no end.",
      above: 0,
      max: 10_000,
    }).optional(),
    usdPerTherm: numberField({ unit: "USD/therm", title: "Price within this step", above: 0, max: 20 }),
  })
  .meta({ id: "GasTier", title: "Step of the gas price" });

const electricityByShiftSchema = z
  .strictObject({
    ...shiftPrices,
    summer: z
      .strictObject({
        firstMonth: z.enum(MONTH_NAMES).meta({ title: "First month of summer prices" }),
        lastMonth: z.enum(MONTH_NAMES).meta({ title: "Last month of summer prices" }),
        ...shiftPrices,
      })
      .optional()
      .meta({ title: "Summer prices" }),
  })
  .meta({ id: "ElectricityByShift", title: "Electricity price by time of day" });

/** What energy costs, without fixed charges: those are the same before and after, and never a saving. */
export const ratesSchema = z
  .strictObject({
    electricityUsdPerKWh: numberField({ unit: "USD/kWh", title: "Electricity price", above: 0, max: 2 }).optional(),
    electricityTiers: z
      .array(electricityTierSchema)
      .max(MOST_STEPS)
      .optional()
      .meta({ title: "Electricity price in steps of use", description: "In the order of the bill, dearest or not." }),
    electricityByShift: electricityByShiftSchema.optional(),
    otherElectricityKWh: numberField({
      unit: "kWh",
      title: "Electricity for everything else, a year",
      description: "All but heating, cooling and blower: it decides which step of the price the saving meets.",
      min: 0,
      max: 100_000,
    }).optional(),
    naturalGasUsdPerTherm: numberField({ unit: "USD/therm", title: "Gas price", above: 0, max: 20 }).optional(),
    naturalGasTiers: z
      .array(gasTierSchema)
      .max(MOST_STEPS)
      .optional()
      .meta({ title: "Gas price in steps of use", description: "In the order of the bill, dearest or not." }),
    otherNaturalGasTherms: numberField({
      unit: "therm",
      title: "Gas for everything else, a year",
      description: "All but heating: it decides which step of the price the saving meets.",
      min: 0,
      max: 10_000,
    }).optional(),
    propaneUsdPerGallon: numberField({ unit: "USD/gal", title: "Propane price", above: 0, max: 30 }).optional(),
    fuelOilUsdPerGallon: numberField({ unit: "USD/gal", title: "Heating oil price", above: 0, max: 30 }).optional(),
    fuelEscalationRate: numberField({
      unit: "ratio",
      title: "Yearly rise of energy prices above inflation",
      min: -0.1,
      max: 0.1,
    }).optional(),
    discountRate: numberField({ unit: "ratio", title: "Discount rate above inflation", min: 0, max: 0.2 }).optional(),
    measureLifeYears: numberField({
      unit: "yr",
      title: "Years the sealing lasts",
      min: 1,
      max: 40,
      isInteger: true,
    }).optional(),
  })
  .meta({ id: "Rates", title: "Rates" });

export type Rates = z.output<typeof ratesSchema>;
