import { airDensity, standardPressure } from "#lib/air/air-density.ts";
import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import type { Ledger } from "../ledger.ts";
import { createParameterSpace, type ParameterSpace } from "../parameter-space.ts";
import { designBin, type SeasonBins } from "../season-bins.ts";
import { completeIndoor } from "./complete-indoor.ts";
import { completeLeakGroups, type LeakGroup } from "./complete-leak-groups.ts";
import { completeLoads, type LoadModel } from "./complete-loads.ts";
import { completeOutsideShares } from "./complete-outside-shares.ts";
import { completePlaces, type PlaceModel } from "./complete-places.ts";
import { completePrices, type PriceModel } from "./complete-prices.ts";
import { completeSites, type SiteModel } from "./complete-sites.ts";
import { completeSystems, type SystemModel } from "./complete-systems.ts";

export interface HouseModelInput {
  job: Job;
  reference: ReferenceData;
  climate: ClimateYear;
  ledger: Ledger;
  space: ParameterSpace;
}

/** A house without gaps: what the kernel evaluates. Every filled gap stands in the ledger. */
export interface HouseModel {
  job: Job;
  space: ParameterSpace;
  elevationFt: number;
  airDensityLbPerFt3: number;
  floorAreaFt2: number;
  places: readonly PlaceModel[];
  systems: readonly SystemModel[];
  sites: readonly SiteModel[];
  groups: readonly LeakGroup[];
  loads: LoadModel;
  designHeating: SeasonBins;
  designCooling: SeasonBins;
  prices: PriceModel;
  /** A parameter that is always 0: nothing left of a leak that is closed wholly. */
  zeroAt: number;
}

/** Indoor air moves through the blower at about this temperature over the year. Source: practice. */
const DUCT_AIR_F = 70;

/** Fills every gap of a job aloud: each assumed value is listed with its reason, source and spread. */
export function completeHouse({
  job,
  reference,
  measurements,
  ledger,
}: {
  job: Job;
  reference: ReferenceData;
  measurements: readonly Measurement[];
  ledger: Ledger;
}): HouseModel {
  const space = createParameterSpace();
  const { climate } = reference;
  const elevationFt = ledger.take(job.house.elevationFt, {
    path: "#/house/elevationFt",
    title: "Elevation of the house",
    value: reference.place.elevation?.value ?? climate.elevationFt,
    unit: "ft",
    reason: reference.place.elevation?.note ?? `Taken from the weather station ${climate.stationName}.`,
    source: reference.place.elevation?.source ?? { sourceId: "nrel-tmy3" },
  });
  const { densityLbPerFt3 } = airDensity({ temperatureF: DUCT_AIR_F, elevationFt });
  const input: HouseModelInput = { job, reference, climate, ledger, space };
  const placesBefore = completePlaces(input);
  const indoor = completeIndoor(input, standardPressure(elevationFt));
  const systems = completeSystems({ ...input, places: placesBefore, indoor });
  const measuredTotal = measurements
    .filter((each) => each.measure === "total")
    .reduce<number | null>((sum, each) => (sum ?? 0) + each.cfm25, null);
  const sites = completeSites({ ...input, places: placesBefore, measuredTotalCfm25: measuredTotal });
  const places = completeOutsideShares({ ...input, places: placesBefore, sites, measurements });
  const groups = completeLeakGroups({ systems, sites, measurements, ledger, space });
  const loads = completeLoads({
    ...input,
    systems,
    airDensityLbPerFt3: densityLbPerFt3,
    indoor,
  });
  return {
    job,
    space,
    elevationFt,
    airDensityLbPerFt3: densityLbPerFt3,
    floorAreaFt2: job.house.conditionedFloorAreaFt2,
    places,
    systems,
    sites,
    groups,
    loads,
    designHeating: designBin({ climate, mode: "heating" }),
    designCooling: designBin({ climate, mode: "cooling" }),
    prices: completePrices({ ...input, billed: loads.billed }),
    zeroAt: space.add({
      key: "constant/zero",
      group: "repairs",
      base: 0,
      spread: { shape: "absolute", standardUncertainty: 0, min: 0, max: 0 },
    }),
  };
}
