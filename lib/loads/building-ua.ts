import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR } from "#lib/air/standard-air.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Citation } from "#lib/sources/source.ts";
import type { Cfm, CubicFeet, PoundsPerCubicFoot, Quantity, SquareFeet } from "#lib/units/quantity.ts";
import { envelopeAreas, VINTAGE_SOURCE, vintageOf } from "./building-vintages.ts";
import { naturalInfiltration } from "./natural-infiltration.ts";

/** A wall, ceiling, floor or window whose size and U-value are known. */
export interface EnvelopePart {
  areaFt2: SquareFeet;
  partUValue: Quantity<"Btu/(h·ft²·°F)">;
}

/** Heat a house loses for each degree between inside and outside, and of what it is made. */
export interface BuildingUa {
  uaBtuPerHF: Quantity<"Btu/(h·°F)">;
  transmissionBtuPerHF: Quantity<"Btu/(h·°F)">;
  infiltrationBtuPerHF: Quantity<"Btu/(h·°F)">;
  infiltrationCfm: Cfm;
  envelopeLeakageCfm50: Cfm;
  /** Where the air tightness came from. */
  tightness: "measured" | "usual for its age";
  source: Citation;
}

/**
 * Heat loss coefficient of a house, part by part where they are told, else from its size and age.
 * UA = Σ A·U (walls, ceiling, floor, windows) + 60 ρ cp Q_nat. Valid for 150 to 30,000 ft², 1 to 4 stories.
 * Source: practice (U values and tightness by vintage, from memory); derived (the sum).
 * Left out: shape, orientation, shading, heat to the ground: a measured or billed value goes before. Off by up to 40 %.
 * @throws InputProblem when a value is outside its range.
 */
export function buildingUa({
  conditionedFloorAreaFt2,
  storeysCount,
  builtYear,
  envelopeLeakageCfm50,
  volumeFt3,
  naturalInfiltrationCfm,
  parts,
  airDensityLbPerFt3,
}: {
  conditionedFloorAreaFt2: SquareFeet;
  storeysCount: number;
  builtYear: number;
  envelopeLeakageCfm50?: Cfm;
  volumeFt3?: CubicFeet;
  /** Where known better than by the leakage at 50 Pa. */
  naturalInfiltrationCfm?: Cfm;
  /** All parts of the envelope; none or left out takes the usual construction of its age. */
  parts?: readonly EnvelopePart[];
  airDensityLbPerFt3: PoundsPerCubicFoot;
}): BuildingUa {
  requireBetween({
    field: "conditionedFloorAreaFt2",
    label: "Conditioned floor area",
    value: conditionedFloorAreaFt2,
    unit: "ft²",
    low: 150,
    high: 30000,
  });
  requireBetween({ field: "storeysCount", label: "Stories", value: storeysCount, low: 1, high: 4 });
  requireBetween({ field: "builtYear", label: "Year built", value: builtYear, low: 1700, high: 2100 });
  requireAbove({ field: "airDensityLbPerFt3", label: "Air density", value: airDensityLbPerFt3, unit: "lb/ft³" });

  const vintage = vintageOf(builtYear);
  const areas = envelopeAreas({ conditionedFloorAreaFt2, storeysCount });
  const usualBtuPerHF =
    areas.wallFt2 * vintage.wallUValue +
    areas.ceilingFt2 * vintage.ceilingUValue +
    areas.floorFt2 * vintage.floorUValue +
    areas.windowFt2 * vintage.windowUValue;
  const transmissionBtuPerHF =
    parts && parts.length > 0
      ? parts.reduce((sum, { areaFt2, partUValue }) => sum + areaFt2 * partUValue, 0)
      : usualBtuPerHF;
  const cfm50 = envelopeLeakageCfm50 ?? (vintage.airChangesAt50Pa * (volumeFt3 ?? areas.volumeFt3)) / MINUTES_PER_HOUR;
  const infiltrationCfm =
    naturalInfiltrationCfm ?? naturalInfiltration({ envelopeLeakageCfm50: cfm50, storeysCount }).infiltrationCfm;
  const infiltrationBtuPerHF = MINUTES_PER_HOUR * airDensityLbPerFt3 * AIR_SPECIFIC_HEAT.value * infiltrationCfm;
  return {
    uaBtuPerHF: transmissionBtuPerHF + infiltrationBtuPerHF,
    transmissionBtuPerHF,
    infiltrationBtuPerHF,
    infiltrationCfm,
    envelopeLeakageCfm50: cfm50,
    tightness: envelopeLeakageCfm50 === undefined ? "usual for its age" : "measured",
    source: VINTAGE_SOURCE,
  };
}
