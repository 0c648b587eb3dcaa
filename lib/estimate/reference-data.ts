import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { Warning } from "#lib/job/result/evidence-result.ts";
import type { Citation } from "#lib/sources/source.ts";
import type { Fahrenheit, FahrenheitDifference, Feet, Share } from "#lib/units/quantity.ts";

export const REFERENCE_DATA_SCHEMA_VERSION = "ductmend.reference/1";

/** A figure of the reference data with what a reader must know of it. */
export interface ReferenceFigure {
  value: number;
  unit: string;
  /** One sentence: what it is, of which year. */
  note: string;
  source: Citation;
}

/** Where the house stands, as far as the tables know. */
export interface ReferencePlace {
  title: string;
  zip: string | null;
  state: string | null;
  latitudeDegrees: number;
  longitudeDegrees: number;
  /** The job's own figure, else that of the town; null where no town is near. */
  elevation: ReferenceFigure | null;
  climateZone: string | null;
  egridSubregion: string | null;
}

/** A weather station that could stand for a place, with why it ranks where it does. */
export interface StationCandidate {
  id: string;
  title: string;
  distanceMiles: number;
  elevationFt: Feet;
  reason: string;
}

/** Official means of 1991-2020 at the weather station itself, January first. */
export interface ClimateNormals {
  id: string;
  title: string;
  /** From the weather station, not from the house. */
  distanceMiles: number;
  meanTemperatureF: readonly Fahrenheit[];
  meanDailyMaximumF: readonly Fahrenheit[];
  meanDailyMinimumF: readonly Fahrenheit[];
  /** Long-term means of morning and afternoon, null where not observed. */
  morningHumidityShare: readonly Share[] | null;
  afternoonHumidityShare: readonly Share[] | null;
  /** How far each month of the typical year was moved to reach this level. */
  monthlyShiftF: readonly FahrenheitDifference[];
}

/** Whose data is shown, in the words that they ask for. */
export interface Credit {
  sourceId: Citation["sourceId"];
  title: string;
  text: string;
  license: string;
  link: string | null;
}

/** Everything the estimate needs that is not in the job. */
export interface ReferenceData {
  schemaVersion: typeof REFERENCE_DATA_SCHEMA_VERSION;
  /** SHA-256 over the canonical form of what was used. */
  hash: string;
  place: ReferencePlace;
  station: {
    id: string;
    title: string;
    /** From the house; null when the weather is the job's own file. */
    distanceMiles: number | null;
    reason: string;
    /** True when the rule chose it, false when the job names it. */
    isChosenByRule: boolean;
    alternatives: readonly StationCandidate[];
  };
  /** At the level of 1991-2020 where `normals` is not null. */
  climate: ClimateYear;
  normals: ClimateNormals | null;
  prices: {
    electricityUsdPerKWh: ReferenceFigure;
    naturalGasUsdPerTherm: ReferenceFigure;
    propaneUsdPerGallon: ReferenceFigure;
    fuelOilUsdPerGallon: ReferenceFigure;
  };
  carbon: {
    electricityAverageLbPerKWh: ReferenceFigure;
    electricityNonBaseloadLbPerKWh: ReferenceFigure;
    naturalGasLbPerTherm: ReferenceFigure;
    propaneLbPerGallon: ReferenceFigure;
    fuelOilLbPerGallon: ReferenceFigure;
  };
  /** What makes these data doubtful for this house. */
  warnings: readonly Warning[];
  credits: readonly Credit[];
}
