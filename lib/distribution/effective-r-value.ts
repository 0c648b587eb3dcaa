import { requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { ThermalResistance } from "#lib/units/quantity.ts";

const unit = "h·ft²·°F/Btu";

/** Air films inside and around an insulated duct. */
const AIR_FILMS_R_VALUE = {
  value: 0.7,
  unit,
  source: { sourceId: "practice", locator: "insulated duct" },
  low: 0.5,
  high: 1,
} as const satisfies SourcedValue;

/** Bare metal: its air films only, more than beside insulation since a shiny surface radiates little. */
const BARE_METAL_R_VALUE = {
  value: 1,
  unit,
  source: { sourceId: "practice", locator: "bare metal duct" },
  low: 0.7,
  high: 1.5,
} as const satisfies SourcedValue;

/**
 * Resistance that loose-fill insulation over a duct on the attic floor adds. A fully covered duct gains more, one whose
 * top shows gains little, so the depth found in the attic decides. Buried ducts in humid places need their own vapor
 * retarder, or they drip.
 */
export const BURIED_R_VALUE_GAIN = {
  value: 10,
  unit,
  source: { sourceId: "practice", locator: "duct covered by loose-fill on the attic floor, from memory" },
  reason: "Between a duct half covered (about 5) and one deeply buried (about 17).",
  low: 5,
  high: 17,
} as const satisfies SourcedValue;

/**
 * Effective resistance of a duct's wall, from inside air to the air around it.
 * Nominal + 0.7; bare metal (nominal 0) 1.0; buried in attic insulation 10 more. Never 0, so conduction stays finite.
 * Valid 0 to 60 nominal. Source: practice. Left out: compression and gaps; the round duct's smaller inner surface.
 * @throws InputProblem when the nominal value is below 0 or above 60.
 */
export function effectiveRValue({
  insulationRValue,
  isBuried = false,
  buriedRValue = BURIED_R_VALUE_GAIN.value,
}: {
  insulationRValue: ThermalResistance;
  isBuried?: boolean;
  buriedRValue?: ThermalResistance;
}): ThermalResistance {
  requireBetween({ field: "insulationRValue", label: "Duct insulation", value: insulationRValue, low: 0, high: 60 });
  const inAir = insulationRValue === 0 ? BARE_METAL_R_VALUE.value : insulationRValue + AIR_FILMS_R_VALUE.value;
  return isBuried ? inAir + buriedRValue : inAir;
}
