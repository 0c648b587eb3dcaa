import { readQuantity } from "#app/design/read-quantity.ts";
import { shownUnitOf, storedFromTyped, type UnitSystem } from "#lib/units/display-unit.ts";

const SYSTEMS: readonly UnitSystem[] = ["us", "si"];

/** "Ft2", "ft²" and " FT ² " are one unit. */
const plain = (unit: string): string =>
  unit
    .toLowerCase()
    .replaceAll(/[\s°·]/g, "")
    .replaceAll("²", "2")
    .replaceAll("³", "3");

/** The units of what was typed: those that it names itself ("150 cfm"), else those of the field. */
function systemOfTyped(typed: string, field: { unit: string; system: UnitSystem }): UnitSystem {
  const named = plain(typed.replace(/^[\s\d.,+−–-]+/u, ""));
  if (named === "") return field.system;
  return SYSTEMS.find((system) => plain(shownUnitOf({ unit: field.unit, system })) === named) ?? field.system;
}

/**
 * What was typed as the job stores it, or undefined when it cannot be read. Whoever types "150 cfm" where liters per
 * second are asked means cfm, and is understood so.
 */
export function readInUnits(typed: string, field: { unit: string; system: UnitSystem }): number | undefined {
  const value = readQuantity(typed);
  if (value === undefined) return undefined;
  return storedFromTyped({ value, unit: field.unit, system: systemOfTyped(typed, field) });
}
