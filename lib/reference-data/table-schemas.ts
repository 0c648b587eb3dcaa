import { z } from "zod";
import { sha256Schema } from "#lib/job/identity.ts";

/** The forms of the files under public/reference. Columns are named by position, since 41,000 rows repeat them. */

export const ZIP_SCHEMA_VERSION = "ductmend.zip-table/1";
export const STATION_INDEX_SCHEMA_VERSION = "ductmend.station-index/1";
export const STATION_SCHEMA_VERSION = "ductmend.station-table/1";
export const ENERGY_SCHEMA_VERSION = "ductmend.energy-table/1";
export const MANIFEST_SCHEMA_VERSION = "ductmend.reference-manifest/1";

const zip = z.string().regex(/^\d{5}$/);
const state = z.string().length(2);
const degrees = z.number().min(-180).max(180);
const climateZone = z.string().regex(/^[1-8][ABC]?$/);
const egridSubregion = z.string().length(4);
const stationId = z.string().regex(/^\d{6}$/);
const twelve = z.array(z.number()).length(12);
const perMonthAndShift = z.array(z.number().int()).length(36);

/** zip/<first three digits>.json: the places of one area. */
export const zipTableSchema = z.strictObject({
  schemaVersion: z.literal(ZIP_SCHEMA_VERSION),
  /**
   * ZIP, town, state, latitude, longitude, climate zone, grid subregion, elevation in feet of the town that tells it
   * (null: none near), miles to that town.
   */
  rows: z.array(
    z.tuple([
      zip,
      z.string(),
      state,
      degrees,
      degrees,
      climateZone,
      egridSubregion,
      z.number().nullable(),
      z.number().nullable(),
    ]),
  ),
});

/** stations.json: every station, enough to choose one. */
export const stationIndexSchema = z.strictObject({
  schemaVersion: z.literal(STATION_INDEX_SCHEMA_VERSION),
  /** Id, title, state, latitude, longitude, elevation in feet, climate zone, grid subregion, 1 if normals stand beside it. */
  rows: z.array(
    z.tuple([
      stationId,
      z.string(),
      state,
      degrees,
      degrees,
      z.number(),
      climateZone,
      egridSubregion,
      z.union([z.literal(0), z.literal(1)]),
    ]),
  ),
  /** Stations that the rule passes over, by id, with the reason. */
  doubts: z.record(stationId, z.string()),
});

/** station/<id>.json: one typical year. Bins of a month and shift stand in ascending order without a gap. */
export const stationTableSchema = z.strictObject({
  schemaVersion: z.literal(STATION_SCHEMA_VERSION),
  stationId,
  title: z.string(),
  elevationFt: z.number(),
  stationPressurePa: z.number(),
  design: z.strictObject({
    heating99F: z.number(),
    heating996F: z.number(),
    cooling1F: z.number(),
    cooling04F: z.number(),
    coolingHumidityRatio: z.number(),
  }),
  meanTemperatureF: twelve,
  meanDailyMaximumF: twelve,
  meanDailyMinimumF: twelve,
  heatingDegreeDaysAt65: twelve,
  coolingDegreeDaysAt65: twelve,
  /** January shift 1, 2, 3, February shift 1 … */
  coldestBinLowF: perMonthAndShift,
  binsCount: perMonthAndShift,
  /** The three columns below hold every bin of every month and shift in that order; empty bins between have 0 hours. */
  hours: z.array(z.number().int()),
  humidityRatioPer100000: z.array(z.number().int()),
  globalIrradianceWPerM2: z.array(z.number().int()),
  normals: z
    .strictObject({
      id: z.string(),
      title: z.string(),
      distanceMiles: z.number(),
      meanTemperatureF: twelve,
      meanDailyMaximumF: twelve,
      meanDailyMinimumF: twelve,
      morningHumidityPercent: twelve.nullable(),
      afternoonHumidityPercent: twelve.nullable(),
    })
    .nullable(),
});

/** energy.json: prices by state, grid factors by subregion, combustion factors by fuel. */
export const energyTableSchema = z.strictObject({
  schemaVersion: z.literal(ENERGY_SCHEMA_VERSION),
  /**
   * Electricity USD/kWh, gas USD/therm, propane USD/gal, heating oil USD/gal, whose propane price it is, whose oil price:
   * the state's own, that of its region, the nation's, or a fill from beyond the state.
   */
  prices: z.record(
    state,
    z.tuple([
      z.number(),
      z.number(),
      z.number(),
      z.number(),
      z.enum(["state", "region", "nation"]),
      z.enum(["state", "beyond"]),
    ]),
  ),
  electricityNotes: z.record(state, z.string()),
  /** Name, average and non-baseload lb CO2e per MWh. */
  egrid: z.record(egridSubregion, z.tuple([z.string(), z.number(), z.number()])),
  fuels: z.strictObject({
    naturalGasLbPerTherm: z.number(),
    propaneLbPerGallon: z.number(),
    fuelOilLbPerGallon: z.number(),
  }),
});

/** manifest.json: SHA-256 of every file, and one over the lines "<digest>  <path>\n" in the order of the paths. */
export const manifestSchema = z.strictObject({
  schemaVersion: z.literal(MANIFEST_SCHEMA_VERSION),
  tablesHash: sha256Schema,
  files: z.record(z.string(), sha256Schema),
});

export type ZipTable = z.output<typeof zipTableSchema>;
export type StationIndex = z.output<typeof stationIndexSchema>;
export type StationTable = z.output<typeof stationTableSchema>;
export type EnergyTable = z.output<typeof energyTableSchema>;
export type Manifest = z.output<typeof manifestSchema>;
