import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Share, SquareFeet } from "#lib/units/quantity.ts";

const formOf152 = { sourceId: "practice", locator: "form of ashrae-152, from memory" } as const;

/** Duct surface of a house that nobody measured, per floor area. */
export const DUCT_AREA_DEFAULTS = {
  supplyPerFloorArea: { value: 0.27, unit: "ft²/ft²", source: formOf152, low: 0.18, high: 0.36 },
  returnPerFloorAreaAndGrille: { value: 0.05, unit: "ft²/ft²", source: formOf152, low: 0.03, high: 0.07 },
  returnLimitPerFloorArea: { value: 0.25, unit: "ft²/ft²", source: formOf152 },
  outsideShareOneStorey: { value: 1, unit: "share", source: formOf152 },
  outsideShareMoreStoreys: { value: 0.65, unit: "share", source: formOf152, low: 0.5, high: 0.8 },
} as const satisfies Record<string, SourcedValue>;

/**
 * Usual outer surface of the ducts of a house.
 * Supply 0.27 × floor; return 0.05 × grilles × floor, at most 0.25 × floor. Valid for houses with ducts in every room.
 * Source: practice (form of ashrae-152, from memory). Left out: layout; measured lengths are always better.
 * @throws InputProblem when the floor area is not above 0 or there is no return grille.
 */
export function defaultDuctAreas({ floorAreaFt2, returnsCount }: { floorAreaFt2: SquareFeet; returnsCount: number }): {
  supplyAreaFt2: SquareFeet;
  returnAreaFt2: SquareFeet;
} {
  requireAbove({ field: "floorAreaFt2", label: "Floor area", value: floorAreaFt2, unit: "ft²" });
  requireBetween({ field: "returnsCount", label: "Return grilles", value: returnsCount, low: 1, high: 100 });
  const { supplyPerFloorArea, returnPerFloorAreaAndGrille, returnLimitPerFloorArea } = DUCT_AREA_DEFAULTS;
  const returnRatio = Math.min(returnPerFloorAreaAndGrille.value * returnsCount, returnLimitPerFloorArea.value);
  return { supplyAreaFt2: supplyPerFloorArea.value * floorAreaFt2, returnAreaFt2: returnRatio * floorAreaFt2 };
}

/** Share of the duct surface outside the rooms where it is not known: all in one storey, 0.65 in more. Source: practice. */
export function defaultOutsideAreaShare(storeysCount: number): Share {
  requireAbove({ field: "storeysCount", label: "Storeys", value: storeysCount });
  return storeysCount >= 2
    ? DUCT_AREA_DEFAULTS.outsideShareMoreStoreys.value
    : DUCT_AREA_DEFAULTS.outsideShareOneStorey.value;
}
