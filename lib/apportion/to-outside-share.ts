import { DUCT_LEAK_EXPONENT, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Pascals, Ratio, Share } from "#lib/units/quantity.ts";

/**
 * Share of a leak into a zone that a test of the leakage to outside sees.
 * share = (z/P)^n, z the pressure between house and zone while the house stands at P to outside: the leak into the
 * zone and the zone's own leaks to outside are in series. Valid 0 ≤ z ≤ P. Source: derived. Left out: zones that
 * leak into each other.
 * @throws InputProblem when the zone pressure is not between 0 and the house pressure.
 */
export function toOutsideShare({
  houseToZonePressurePa,
  houseToOutsidePressurePa = 50,
  exponent = DUCT_LEAK_EXPONENT.value,
}: {
  houseToZonePressurePa: Pascals;
  houseToOutsidePressurePa?: Pascals;
  exponent?: Ratio;
}): { share: Share } {
  requireAbove({
    field: "houseToOutsidePressurePa",
    label: "House to outside",
    value: houseToOutsidePressurePa,
    unit: "Pa",
    limit: 0,
  });
  requireBetween({
    field: "houseToZonePressurePa",
    label: "House to zone",
    value: houseToZonePressurePa,
    unit: "Pa",
    low: 0,
    high: houseToOutsidePressurePa,
    fix: "Enter the size of the pressure between house and zone; it cannot exceed the one to outside.",
  });
  requireLeakExponent(exponent);
  return { share: (houseToZonePressurePa / houseToOutsidePressurePa) ** exponent };
}
