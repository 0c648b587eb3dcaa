import { numberField } from "#lib/units/field.ts";
import type { MethodDefault } from "./method-card.ts";

const temperature = (title: string, description?: string) =>
  numberField({ unit: "°F", title, ...(description ? { description } : {}), min: -80, max: 200 });
const leakage = (title: string) =>
  numberField({
    unit: "cfm",
    title,
    description: "To the place around the duct, at operating pressure.",
    min: 0,
    max: 8000,
  });
const rValue = (title: string) =>
  numberField({
    unit: "h·ft²·°F/Btu",
    title,
    description: "Effective: nominal plus 0.7; bare metal 1.0.",
    above: 0,
    max: 1e9,
  });

/** Inputs that the methods of duct systems share, so that a name means the same in each. */
export const ductFields = {
  fanFlowCfm: numberField({ unit: "cfm", title: "Fan flow", above: 0, max: 8000 }),
  supplyLeakageCfm: leakage("Supply leakage"),
  returnLeakageCfm: leakage("Return leakage"),
  supplyAreaFt2: numberField({ unit: "ft²", title: "Surface of the supply ducts", min: 0, max: 20000 }),
  returnAreaFt2: numberField({ unit: "ft²", title: "Surface of the return ducts", min: 0, max: 20000 }),
  supplyRValue: rValue("R-value of the supply ducts"),
  returnRValue: rValue("R-value of the return ducts"),
  indoorTemperatureF: temperature("Indoor temperature"),
  outdoorTemperatureF: temperature("Outdoor temperature"),
  supplyZoneTemperatureF: temperature("Temperature around the supply ducts"),
  returnZoneTemperatureF: temperature("Temperature around the return ducts"),
  capacityBtuPerH: numberField({ unit: "Btu/h", title: "Capacity", above: 0, max: 1e6 }),
  airDensityLbPerFt3: numberField({ unit: "lb/ft³", title: "Air density", min: 0.03, max: 0.12 }).optional(),
};

/** A ratio that may leave 0 to 1 when the ducts lose more than the equipment gives. */
export const ratio = (title: string, limits: { min?: number; max?: number; above?: number } = {}) =>
  numberField({ unit: "ratio", title, ...limits });

export const enthalpyField = (title: string) =>
  numberField({
    unit: "Btu/lb",
    title,
    description: "Per pound of dry air, counted from 0 °F.",
    min: -20,
    max: 200,
  });

export const standardDensityDefault: MethodDefault = {
  value: 0.075,
  unit: "lb/ft³",
  reason: "Standard air; take air-density of the house's elevation above 1,500 ft.",
  source: { sourceId: "practice", locator: "standard air" },
};
