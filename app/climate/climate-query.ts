import { readInUnits } from "#app/units/read-in-units.ts";
import { DEGREE_DAY_BASE_RANGE_F } from "#lib/climate/degree-days-by-month.ts";
import { fahrenheitFromCelsius } from "#lib/units/conversions.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import { unitText } from "#lib/units/unit-text.ts";

/** The base that weather services tabulate degree days to: 65 °F, and 18 °C where they read SI. Source: practice. */
const USUAL_BASE_F = { us: 65, si: fahrenheitFromCelsius(18) } as const satisfies Record<UnitSystem, Fahrenheit>;
const DEGREES = { us: "F", si: "C" } as const satisfies Record<UnitSystem, string>;

/** What the address of the page may hold, as typed. */
export type RawQuery = Readonly<Record<string, string | string[] | undefined>>;

export interface ClimateQuery {
  /** As typed, for the field. */
  typedZip: string;
  zip: string | undefined;
  stationId: string | undefined;
  heatingBaseF: Fahrenheit;
  coolingBaseF: Fahrenheit;
  /** As typed where it cannot be used. */
  typedBases: { heating?: string; cooling?: string };
  errors: readonly { fieldId: "zip" | "heating" | "cooling"; text: string }[];
}

/** Reads the fields. Bases are in the degrees that the address names, else in those of whoever asks. */
export function readClimateQuery(raw: RawQuery, units: UnitSystem): ClimateQuery {
  const text = (name: string) => {
    const value = raw[name];
    return (Array.isArray(value) ? value[0] : value)?.trim() ?? "";
  };
  const typedZip = text("zip");
  const zip = /^(\d{5})(?:-\d{4})?$/.exec(typedZip)?.[1];
  const system = text("degrees") === DEGREES.si ? "si" : text("degrees") === DEGREES.us ? "us" : units;
  const heating = readBase({ typed: text("heating"), label: "Heating base", system, units });
  const cooling = readBase({ typed: text("cooling"), label: "Cooling base", system, units });
  const zipError =
    typedZip !== "" && zip === undefined ? `Enter a ZIP code of five digits, not “${typedZip}”` : undefined;
  const stationId = text("station") || undefined;
  const hasPlace = zip !== undefined || stationId !== undefined;
  return {
    typedZip,
    zip,
    stationId,
    heatingBaseF: heating.baseF,
    coolingBaseF: cooling.baseF,
    typedBases: {
      ...(heating.error ? { heating: text("heating") } : {}),
      ...(cooling.error ? { cooling: text("cooling") } : {}),
    },
    errors: [
      ...(zipError ? [{ fieldId: "zip" as const, text: zipError }] : []),
      // Without a place there are no such fields to lead to.
      ...(hasPlace && heating.error ? [{ fieldId: "heating" as const, text: heating.error }] : []),
      ...(hasPlace && cooling.error ? [{ fieldId: "cooling" as const, text: cooling.error }] : []),
    ],
  };
}

function readBase({
  typed,
  label,
  system,
  units,
}: {
  typed: string;
  label: string;
  system: UnitSystem;
  units: UnitSystem;
}): { baseF: Fahrenheit; error?: string } {
  if (typed === "") return { baseF: USUAL_BASE_F[units] };
  const baseF = readInUnits(typed, { unit: "°F", system });
  const { low, high } = DEGREE_DAY_BASE_RANGE_F;
  if (baseF !== undefined && baseF >= low && baseF <= high) return { baseF };
  const shown = unitText(units);
  return {
    baseF: USUAL_BASE_F[units],
    error: `${label} must be a temperature from ${shown.number(low, "°F")} to ${shown.quantity(high, "°F")}, not “${typed}”`,
  };
}

/** What stands in the fields when nothing was entered. */
export const usualBaseF = (units: UnitSystem): Fahrenheit => USUAL_BASE_F[units];

/** Which degrees a form of this reader sends. */
export const degreesOf = (units: UnitSystem): string => DEGREES[units];
