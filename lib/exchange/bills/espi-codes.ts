import { BTU_PER_THERM, LITERS_PER_GALLON } from "#lib/units/conversions.ts";
import type { BilledField } from "./billed-use.ts";

/** Codes of the ESPI schema, as its own annotations list them. Source: naesb-req21-espi. */
const FUEL_OF_COMMODITY: Readonly<Record<string, BilledField>> = {
  "1": "electricityKWh",
  "2": "electricityKWh",
  "7": "naturalGasTherms",
  "8": "propaneGallons",
};

/** What one of a unit is in the unit of a bill. Volumes of gas are not here: their heat is not in the file. */
const UNITS: Readonly<Record<string, Partial<Record<BilledField, number>>>> = {
  "72": { electricityKWh: 1e-3 },
  "128": { propaneGallons: 1 },
  "132": { naturalGasTherms: 1 / BTU_PER_THERM },
  "134": { propaneGallons: 1 / LITERS_PER_GALLON },
  "169": { naturalGasTherms: 1 },
};

export const ALLOWED_UNITS =
  "72 (Wh) for electricity, 169 (therm) or 132 (Btu) for natural gas, 128 (US gallon) or 134 (liter) for propane";

/** Delivered to the house. Fed back is 19. */
export const DELIVERED = "1";
/** Estimated from a reference day, by interpolation, or projected. */
export const ESTIMATED_QUALITIES: readonly string[] = ["8", "9", "12"];
/** Not said, or the use of each interval by itself; registers that run on are not summed. */
export const INTERVAL_BEHAVIORS: readonly string[] = ["0", "4"];

/** What is measured, in the unit of a bill; or why it is no fuel that a bill holds. */
export function measureOf(
  commodity: string | undefined,
  uom: string | undefined,
): { field: BilledField; perUnit: number } | string {
  const units = UNITS[uom ?? ""];
  const isOpen = commodity === undefined || commodity === "0";
  const only = Object.keys(units ?? {}) as BilledField[];
  const field = isOpen ? (uom === "72" || uom === "169" ? only[0] : undefined) : FUEL_OF_COMMODITY[commodity];
  if (field === undefined) return `commodity ${commodity ?? "not said"} with uom ${uom ?? "not said"} is no fuel`;
  const perUnit = units?.[field];
  return perUnit === undefined ? `uom ${uom ?? "not said"} is not read for this commodity` : { field, perUnit };
}
