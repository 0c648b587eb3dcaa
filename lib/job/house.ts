import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, shortTextSchema } from "./identity.ts";
import { weatherYearSchema } from "./weather-year.ts";

const envelopePartSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema.meta({ title: "Part" }),
    areaFt2: numberField({ unit: "ft²", title: "Area", above: 0, max: 20000 }),
    partUValue: numberField({
      unit: "Btu/(h·ft²·°F)",
      title: "Heat it lets through (U-value)",
      description: "One over its R-value, frames and studs included.",
      above: 0,
      max: 2,
    }),
  })
  .meta({ id: "EnvelopePart", title: "Part of the envelope" });

/** The house: where it stands, how large it is, how it is kept. */
export const houseSchema = z
  .strictObject({
    label: shortTextSchema.meta({ title: "What to call this house" }),
    kind: z.enum(["site-built", "manufactured", "multifamily"]).meta({ title: "Kind of house" }),
    zip: z
      .string()
      .regex(/^\d{5}$/, "Enter the five digits of the ZIP code")
      .optional()
      .meta({ title: "ZIP code" }),
    stationId: idSchema
      .optional()
      .meta({ title: "Weather station", description: "Overrides the station chosen from the ZIP code." }),
    weatherYear: weatherYearSchema.optional(),
    elevationFt: numberField({ unit: "ft", title: "Elevation", min: -300, max: 14000 }).optional(),
    conditionedFloorAreaFt2: numberField({ unit: "ft²", title: "Conditioned floor area", min: 150, max: 30000 }),
    volumeFt3: numberField({ unit: "ft³", title: "Conditioned volume", min: 1000, max: 500000 }).optional(),
    storeysCount: numberField({ unit: "count", title: "Stories", min: 1, max: 4, isInteger: true }).optional(),
    builtYear: z.number().int().min(1700).max(2100).optional().meta({ title: "Year built", unit: "yr" }),
    bedroomsCount: numberField({ unit: "count", title: "Bedrooms", min: 0, max: 12, isInteger: true }).optional(),
    heatingSetpointF: numberField({ unit: "°F", title: "Heating thermostat setting", min: 50, max: 80 }).optional(),
    coolingSetpointF: numberField({ unit: "°F", title: "Cooling thermostat setting", min: 65, max: 90 }).optional(),
    coolingHumidityShare: numberField({
      unit: "share",
      title: "Indoor relative humidity in summer",
      min: 0.2,
      max: 0.8,
    }).optional(),
    coilMoistureShare: numberField({
      unit: "share",
      title: "Part of the moisture from leaks that the air conditioner takes out",
      min: 0,
      max: 1,
    }).optional(),
    sensibleLoadShare: numberField({
      unit: "share",
      title: "Part of the house's cooling need that is heat, not moisture",
      min: 0.4,
      max: 1,
    }).optional(),
    sunGainHeatingBtuPerHFt2: numberField({
      unit: "Btu/(h·ft²)",
      title: "Sun through the windows in the heating season, for each square foot of floor",
      min: 0,
      max: 10,
    }).optional(),
    sunGainCoolingBtuPerHFt2: numberField({
      unit: "Btu/(h·ft²)",
      title: "Sun through the windows in the cooling season, for each square foot of floor",
      min: 0,
      max: 15,
    }).optional(),
    envelopeLeakageCfm50: numberField({
      unit: "cfm",
      title: "House air leakage at 50 Pa",
      min: 100,
      max: 30000,
    }).optional(),
    envelopeExponentRatio: numberField({
      unit: "ratio",
      title: "Exponent of the house's air leaks",
      description: "Of a house test at several pressures.",
      min: 0.5,
      max: 1,
    }).optional(),
    naturalInfiltrationCfm: numberField({
      unit: "cfm",
      title: "Mean air through the house's own leaks over a season",
      min: 5,
      max: 2000,
    }).optional(),
    envelopeUaBtuPerHF: numberField({
      unit: "Btu/(h·°F)",
      title: "Heat loss coefficient of the house",
      min: 20,
      max: 5000,
    }).optional(),
    envelopeParts: z.array(envelopePartSchema).max(20).optional().meta({
      title: "Walls, ceiling, floor and windows one by one",
      description: "Instead of the usual construction of its age; air leakage is counted apart.",
    }),
    heatingBalanceF: numberField({ unit: "°F", title: "Heating balance temperature", min: 40, max: 70 }).optional(),
    coolingBalanceF: numberField({ unit: "°F", title: "Cooling balance temperature", min: 55, max: 85 }).optional(),
    hasCombustionAppliance: z
      .boolean()
      .optional()
      .meta({ title: "Any appliance that burns fuel and vents in or near the house" }),
  })
  .meta({ id: "House", title: "House" });

export type House = z.output<typeof houseSchema>;
