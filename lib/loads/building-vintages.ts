import type { Citation } from "#lib/sources/source.ts";
import type { CubicFeet, SquareFeet, ThermalTransmittance } from "#lib/units/quantity.ts";

/** Usual heat transmission and air tightness of a house by the time it was built. */
export interface BuildingVintage {
  /** First year that the row no longer holds. */
  builtBeforeYear: number;
  wallUValue: ThermalTransmittance;
  ceilingUValue: ThermalTransmittance;
  floorUValue: ThermalTransmittance;
  windowUValue: ThermalTransmittance;
  /** Air changes per hour at 50 Pa. */
  airChangesAt50Pa: number;
}

export const VINTAGE_SOURCE: Citation = {
  sourceId: "practice",
  locator: "from memory: usual construction by decade; a single house may be off by 40 %",
};

/**
 * From memory, U in Btu/(h·ft²·°F), whole assemblies with framing; later retrofits of attics counted in the older rows.
 * A heat loss coefficient told by the user, or bills, always go before.
 */
const BUILDING_VINTAGES: readonly BuildingVintage[] = [
  {
    builtBeforeYear: 1940,
    wallUValue: 0.2,
    ceilingUValue: 0.07,
    floorUValue: 0.12,
    windowUValue: 0.8,
    airChangesAt50Pa: 16,
  },
  {
    builtBeforeYear: 1960,
    wallUValue: 0.17,
    ceilingUValue: 0.06,
    floorUValue: 0.12,
    windowUValue: 0.8,
    airChangesAt50Pa: 13,
  },
  {
    builtBeforeYear: 1980,
    wallUValue: 0.1,
    ceilingUValue: 0.05,
    floorUValue: 0.09,
    windowUValue: 0.7,
    airChangesAt50Pa: 10,
  },
  {
    builtBeforeYear: 2000,
    wallUValue: 0.08,
    ceilingUValue: 0.036,
    floorUValue: 0.06,
    windowUValue: 0.52,
    airChangesAt50Pa: 8,
  },
  {
    builtBeforeYear: 2012,
    wallUValue: 0.065,
    ceilingUValue: 0.031,
    floorUValue: 0.05,
    windowUValue: 0.38,
    airChangesAt50Pa: 6,
  },
  {
    builtBeforeYear: Number.POSITIVE_INFINITY,
    wallUValue: 0.057,
    ceilingUValue: 0.026,
    floorUValue: 0.045,
    windowUValue: 0.31,
    airChangesAt50Pa: 4,
  },
];

export function vintageOf(builtYear: number): BuildingVintage {
  return BUILDING_VINTAGES.find((row) => builtYear < row.builtBeforeYear) ?? BUILDING_VINTAGES.at(-1)!;
}

/** Outer surfaces of a plain house of its size. */
export interface EnvelopeAreas {
  wallFt2: SquareFeet;
  ceilingFt2: SquareFeet;
  floorFt2: SquareFeet;
  windowFt2: SquareFeet;
  volumeFt3: CubicFeet;
}

/** Window area over floor area, story height, and length over width of a plain house. Source: practice. */
const WINDOW_TO_FLOOR_RATIO = 0.15;
const STORY_HEIGHT_FT = 8.5;
const LENGTH_TO_WIDTH_RATIO = 1.5;

/**
 * Surfaces of a rectangular house, one and a half times as long as wide.
 * P = 2 (1 + r) √(A/(n r)), walls P·h·n less windows, ceiling and floor A/n, windows 0.15 A. Source: practice.
 */
export function envelopeAreas({
  conditionedFloorAreaFt2,
  storeysCount,
}: {
  conditionedFloorAreaFt2: SquareFeet;
  storeysCount: number;
}): EnvelopeAreas {
  const footprintFt2 = conditionedFloorAreaFt2 / storeysCount;
  const perimeterFt = 2 * (1 + LENGTH_TO_WIDTH_RATIO) * Math.sqrt(footprintFt2 / LENGTH_TO_WIDTH_RATIO);
  const windowFt2 = WINDOW_TO_FLOOR_RATIO * conditionedFloorAreaFt2;
  return {
    wallFt2: Math.max(0, perimeterFt * STORY_HEIGHT_FT * storeysCount - windowFt2),
    ceilingFt2: footprintFt2,
    floorFt2: footprintFt2,
    windowFt2,
    volumeFt3: conditionedFloorAreaFt2 * STORY_HEIGHT_FT,
  };
}
