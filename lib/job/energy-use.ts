import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { isoDateSchema } from "./identity.ts";

const billSchema = z
  .strictObject({
    startDate: isoDateSchema.meta({ title: "First day" }),
    endDate: isoDateSchema.meta({ title: "Last day" }),
    electricityKWh: numberField({ unit: "kWh", title: "Electricity", min: 0, max: 100000 }).optional(),
    naturalGasTherms: numberField({ unit: "therm", title: "Natural gas", min: 0, max: 10000 }).optional(),
    propaneGallons: numberField({ unit: "gal", title: "Propane", min: 0, max: 10000 }).optional(),
    fuelOilGallons: numberField({ unit: "gal", title: "Heating oil", min: 0, max: 10000 }).optional(),
    isEstimated: z.boolean().optional().meta({ title: "Estimated by the utility" }),
    meanOutdoorF: numberField({
      unit: "°F",
      title: "Mean outdoor temperature of the billed days",
      description: "As many bills print it. Absent: the typical year's weather stands in.",
      min: -60,
      max: 120,
    }).optional(),
  })
  .meta({ id: "Bill", title: "Bill" });

/** What is known of the house's yearly use for heating and cooling alone, without hot water, cooking, lights. */
const knownUseSchema = z
  .strictObject({
    heatingNaturalGasTherms: numberField({
      unit: "therm",
      title: "Gas for heating, a year",
      min: 0,
      max: 20000,
    }).optional(),
    heatingPropaneGallons: numberField({
      unit: "gal",
      title: "Propane for heating, a year",
      min: 0,
      max: 20000,
    }).optional(),
    heatingFuelOilGallons: numberField({
      unit: "gal",
      title: "Oil for heating, a year",
      min: 0,
      max: 20000,
    }).optional(),
    heatingElectricityKWh: numberField({
      unit: "kWh",
      title: "Electricity for heating, a year",
      description: "Heat pump or resistance, without the blower.",
      min: 0,
      max: 100000,
    }).optional(),
    coolingElectricityKWh: numberField({
      unit: "kWh",
      title: "Electricity for cooling, a year",
      description: "Without the blower.",
      min: 0,
      max: 100000,
    }).optional(),
  })
  .meta({ id: "KnownUse", title: "Known yearly use" });

/** What a household uses that neither heats nor cools: it tells base use from season where the bills alone cannot. */
const baseUseSchema = z
  .strictObject({
    electricityPerDayKWh: numberField({ unit: "kWh", title: "Electricity a day", min: 0, max: 500 }).optional(),
    naturalGasPerDayTherms: numberField({ unit: "therm", title: "Gas a day", min: 0, max: 50 }).optional(),
    propanePerDayGallons: numberField({ unit: "gal", title: "Propane a day", min: 0, max: 50 }).optional(),
    fuelOilPerDayGallons: numberField({ unit: "gal", title: "Heating oil a day", min: 0, max: 50 }).optional(),
    electricityWinterSwingShare: numberField({
      unit: "share",
      title: "Electricity: how far midwinter is above the mean",
      min: 0,
      max: 0.6,
    }).optional(),
    fuelWinterSwingShare: numberField({
      unit: "share",
      title: "Gas, propane, oil: how far midwinter is above the mean",
      min: 0,
      max: 0.6,
    }).optional(),
  })
  .meta({ id: "BaseUse", title: "Use that neither heats nor cools" });

export const energyUseSchema = z
  .strictObject({
    prefer: z.enum(["bills", "known-use", "building"]).optional().meta({
      title: "Which evidence to use",
      description: "Absent: the best there is, bills before known use before the building.",
    }),
    knownUse: knownUseSchema.optional(),
    baseUse: baseUseSchema.optional(),
    bills: z.array(billSchema).max(120).optional(),
  })
  .meta({ id: "EnergyUse", title: "Energy use" });

export type EnergyUse = z.output<typeof energyUseSchema>;
export type Bill = z.output<typeof billSchema>;
export type KnownUse = z.output<typeof knownUseSchema>;
