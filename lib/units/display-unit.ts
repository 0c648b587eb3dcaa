import {
  BTU_PER_KWH,
  BTU_PER_THERM,
  JOULES_PER_BTU,
  KG_PER_LB,
  LITERS_PER_GALLON,
  M2_PER_FT2,
  M3_PER_FT3,
  METERS_PER_FOOT,
  METERS_PER_INCH,
  METERS_PER_MILE,
  PASCALS_PER_IN_HG,
} from "./conversions.ts";

/** What a person wants to read and type. Inside lib there is one unit per dimension, and these change nothing there. */
export type UnitSystem = "us" | "si";

/** shown = stored · factor + offset. */
interface DisplayUnit {
  unit: string;
  factor: number;
  offset?: number;
}

const LITERS_PER_S_PER_CFM = (M3_PER_FT3 * 1000) / 60;
const KELVIN_PER_FAHRENHEIT = 5 / 9;
const WATTS_PER_BTU_PER_H = JOULES_PER_BTU / 3600;
const KWH_PER_THERM = BTU_PER_THERM / BTU_PER_KWH;

/** What stands in SI for a unit of the job; every factor from exact definitions. A unit that is not here stays. */
const SI: Readonly<Record<string, DisplayUnit>> = {
  cfm: { unit: "L/s", factor: LITERS_PER_S_PER_CFM },
  "cfm at 25 Pa": { unit: "L/s at 25 Pa", factor: LITERS_PER_S_PER_CFM },
  "cfm/Pa": { unit: "L/(s·Pa)", factor: LITERS_PER_S_PER_CFM },
  "cfm/Pa^n": { unit: "L/(s·Pa^n)", factor: LITERS_PER_S_PER_CFM },
  "cfm/ft²": { unit: "L/(s·m²)", factor: LITERS_PER_S_PER_CFM / M2_PER_FT2 },
  "cfm/100 ft²": { unit: "L/(s·m²)", factor: LITERS_PER_S_PER_CFM / (100 * M2_PER_FT2) },
  "W/cfm": { unit: "W per L/s", factor: 1 / LITERS_PER_S_PER_CFM },
  inHg: { unit: "kPa", factor: PASCALS_PER_IN_HG / 1000 },
  "°F": { unit: "°C", factor: KELVIN_PER_FAHRENHEIT, offset: -32 * KELVIN_PER_FAHRENHEIT },
  "Δ°F": { unit: "K", factor: KELVIN_PER_FAHRENHEIT },
  "°F·d": { unit: "K·d", factor: KELVIN_PER_FAHRENHEIT },
  ft: { unit: "m", factor: METERS_PER_FOOT },
  "ft²": { unit: "m²", factor: M2_PER_FT2 },
  "ft³": { unit: "m³", factor: M3_PER_FT3 },
  in: { unit: "mm", factor: METERS_PER_INCH * 1000 },
  "in²": { unit: "cm²", factor: METERS_PER_INCH ** 2 * 10_000 },
  mi: { unit: "km", factor: METERS_PER_MILE / 1000 },
  lb: { unit: "kg", factor: KG_PER_LB },
  "lb/yr": { unit: "kg/yr", factor: KG_PER_LB },
  "lb/ft³": { unit: "kg/m³", factor: KG_PER_LB / M3_PER_FT3 },
  "Btu/h": { unit: "kW", factor: WATTS_PER_BTU_PER_H / 1000 },
  "Btu/(h·°F)": { unit: "W/K", factor: WATTS_PER_BTU_PER_H / KELVIN_PER_FAHRENHEIT },
  "Btu/(h·ft²)": { unit: "W/m²", factor: WATTS_PER_BTU_PER_H / M2_PER_FT2 },
  "Btu/(h·ft²·°F)": { unit: "W/(m²·K)", factor: WATTS_PER_BTU_PER_H / (M2_PER_FT2 * KELVIN_PER_FAHRENHEIT) },
  "Btu/lb": { unit: "kJ/kg", factor: JOULES_PER_BTU / KG_PER_LB / 1000 },
  "million Btu": { unit: "GJ", factor: JOULES_PER_BTU / 1000 },
  "h·ft²·°F/Btu": { unit: "m²·K/W", factor: (M2_PER_FT2 * KELVIN_PER_FAHRENHEIT) / WATTS_PER_BTU_PER_H },
  therm: { unit: "kWh", factor: KWH_PER_THERM },
  therms: { unit: "kWh", factor: KWH_PER_THERM },
  gal: { unit: "L", factor: LITERS_PER_GALLON },
  "USD/therm": { unit: "USD/kWh", factor: 1 / KWH_PER_THERM },
  "USD/gal": { unit: "USD/L", factor: 1 / LITERS_PER_GALLON },
};

interface InSystem {
  unit: string;
  system: UnitSystem;
}

const siOf = ({ unit, system }: InSystem): DisplayUnit | undefined =>
  system === "si" && Object.hasOwn(SI, unit) ? SI[unit] : undefined;

/** The unit in which a person of this system reads it. */
export function shownUnitOf(of: InSystem): string {
  return siOf(of)?.unit ?? of.unit;
}

/** The number as a person of this system reads it. shown = stored · factor + offset, exact definitions. */
export function shownFromStored({ value, ...of }: InSystem & { value: number }): number {
  const si = siOf(of);
  return si ? value * si.factor + (si.offset ?? 0) : value;
}

/** Digits in which a number stands in a field: fewer than a double holds, so that the dust of a factor is not seen. */
const FIELD_DIGITS = 12;
/** Near zero an offset (°C) leaves dust that digits alone do not take away. */
const FIELD_DECIMALS = 9;
const DOUBLE_DIGITS = 17;

const withoutDust = (value: number): number => Number(Number(value.toFixed(FIELD_DECIMALS)).toPrecision(FIELD_DIGITS));

/** The number as it stands in a field, without the dust that a factor leaves in the last digits. */
export function fieldNumberOf({ value, ...of }: InSystem & { value: number }): number {
  return siOf(of) ? withoutDust(shownFromStored({ value, ...of })) : value;
}

/**
 * What a typed number is in the unit of the job: of all numbers that a field would show as typed, the one with the
 * fewest digits. So what was entered in one system and typed anew in the other comes back as it was, and what is typed
 * is shown as typed. Valid for any finite number of up to ten digits. Source: derived.
 */
export function storedFromTyped({ value, ...of }: InSystem & { value: number }): number {
  const si = siOf(of);
  if (!si) return value;
  const stored = (value - (si.offset ?? 0)) / si.factor;
  const typed = withoutDust(value);
  for (let digits = 1; digits < DOUBLE_DIGITS; digits++) {
    const candidate = Number(stored.toPrecision(digits));
    if (fieldNumberOf({ value: candidate, ...of }) === typed) return candidate;
  }
  return stored;
}
