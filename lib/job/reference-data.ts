import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { Citation } from "#lib/sources/source.ts";

/** A figure of the reference data with what a reader must know of it. */
export interface ReferenceFigure {
  value: number;
  unit: string;
  /** One sentence: what it is, of which year. */
  note: string;
  source: Citation;
}

/** Everything the estimate needs that is not in the job. */
export interface ReferenceData {
  /** SHA-256 over the canonical form of what was used. */
  hash: string;
  place: { title: string; zip: string | null; state: string | null; climateZone: string | null; egridSubregion: string | null };
  station: { id: string; title: string; distanceMiles: number | null; alternatives: readonly { id: string; title: string; distanceMiles: number; elevationFt: number }[] };
  climate: ClimateYear;
  prices: { electricityUsdPerKWh: ReferenceFigure; naturalGasUsdPerTherm: ReferenceFigure; propaneUsdPerGallon: ReferenceFigure; fuelOilUsdPerGallon: ReferenceFigure };
  carbon: {
    electricityAverageLbPerKWh: ReferenceFigure;
    electricityNonBaseloadLbPerKWh: ReferenceFigure;
    naturalGasLbPerTherm: ReferenceFigure;
    propaneLbPerGallon: ReferenceFigure;
    fuelOilLbPerGallon: ReferenceFigure;
  };
}
