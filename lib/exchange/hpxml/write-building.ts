import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Feet } from "#lib/units/quantity.ts";
import { identifier, type Tree, xmlIds } from "./hpxml-ids.ts";
import { DUCT_LOCATIONS, DUCT_MATERIALS, EVENTS, FACILITIES, type Moment } from "./hpxml-words.ts";
import { writeLeakage } from "./write-leakage.ts";
import { writePlant } from "./write-plant.ts";

export interface BuildingContext {
  job: Job;
  result: Result;
  elevationFt: Feet;
  moment: Moment;
  /** Of the visit or of the retest; YYYY-MM-DD. */
  date: string;
}

/** An efficiency outside 0 to 1 (a house that gains through its ducts) has no place in the standard. */
const fraction = (value: number | undefined) => (value !== undefined && value > 0 && value <= 1 ? value : undefined);

function distribution(context: BuildingContext, index: number): Tree {
  const { job, result, moment } = context;
  const ids = xmlIds(moment);
  const system = job.systems[index]!;
  const number = index + 1;
  const kinds = new Map(job.places.map(({ id, kind }) => [id, kind]));
  const found = result.systems.find(({ id }) => id === system.id)?.distribution;
  const season = moment === "before" ? "seasonalBefore" : "seasonalAfter";
  const { supplyStaticPa, returnStaticPa } = system.blower ?? {};
  const share = system.servedFloorShare;
  return {
    SystemIdentifier: identifier(ids.ducts(number), system.id),
    DistributionSystemType: {
      AirDistribution: {
        DuctLeakageMeasurement: writeLeakage({ ...context, systemId: system.id }),
        Ducts: system.runs.map((run, at) => ({
          SystemIdentifier: identifier(ids.run(number, at + 1), run.id),
          DuctType: run.side,
          DuctMaterial: run.material && DUCT_MATERIALS[run.material],
          DuctInsulationRValue: run.insulationRValue,
          DuctBuriedInsulationLevel:
            run.isBuried === undefined ? undefined : run.isBuried ? "fully buried" : "not buried",
          DuctLocation: DUCT_LOCATIONS[kinds.get(run.placeId)!],
          DuctSurfaceArea: run.areaFt2,
        })),
        NumberofReturnRegisters: system.returnsCount,
        TotalExternalStaticPressureMeasurement:
          supplyStaticPa === undefined && returnStaticPa === undefined
            ? undefined
            : {
                Supply: supplyStaticPa === undefined ? undefined : { StaticPressure: supplyStaticPa },
                // The standard counts the return side below zero.
                Return: returnStaticPa === undefined ? undefined : { StaticPressure: -returnStaticPa },
              },
      },
    },
    ConditionedFloorAreaServed: share === undefined ? undefined : share * job.house.conditionedFloorAreaFt2,
    AnnualHeatingDistributionSystemEfficiency: fraction(found?.heating?.[season].value),
    AnnualCoolingDistributionSystemEfficiency: fraction(found?.cooling?.[season].value),
  };
}

/** Air through the house's own leaks: measured at 50 Pa, and its mean over a season where somebody knows it. */
function enclosure(house: Job["house"], ids: ReturnType<typeof xmlIds>): Tree | undefined {
  const { envelopeLeakageCfm50, naturalInfiltrationCfm } = house;
  const measurements: Tree[] = [
    ...(envelopeLeakageCfm50 === undefined
      ? []
      : [
          {
            SystemIdentifier: identifier(ids.infiltration),
            HousePressure: 50,
            BuildingAirLeakage: { UnitofMeasure: "CFM", AirLeakage: envelopeLeakageCfm50 },
          },
        ]),
    ...(naturalInfiltrationCfm === undefined
      ? []
      : [
          {
            SystemIdentifier: identifier(ids.naturalInfiltration),
            BuildingAirLeakage: { UnitofMeasure: "CFMnatural", AirLeakage: naturalInfiltrationCfm },
          },
        ]),
  ];
  return measurements.length === 0 ? undefined : { AirInfiltration: { AirInfiltrationMeasurement: measurements } };
}

/** The house at one moment. Its air leakage was measured before the work, and is not claimed to be the same after. */
export function writeBuilding(context: BuildingContext): Tree {
  const { job, moment, date } = context;
  const { house } = job;
  const ids = xmlIds(moment);
  const kinds = new Map(job.places.map(({ id, kind }) => [id, kind]));
  const plants = job.systems.map((system, index) =>
    writePlant(system, { number: index + 1, moment, handlerPlace: kinds.get(system.airHandlerPlaceId ?? "") }),
  );
  const hasSetpoint = house.heatingSetpointF !== undefined || house.coolingSetpointF !== undefined;
  return {
    BuildingID: identifier(ids.building, job.id),
    Site: {
      SiteID: identifier(ids.site),
      Address: house.zip && { ZipCode: house.zip },
      Elevation: house.elevationFt,
    },
    ProjectStatus: { EventType: EVENTS[moment], Date: date },
    BuildingDetails: {
      BuildingSummary: {
        BuildingConstruction: {
          YearBuilt: house.builtYear,
          ResidentialFacilityType: FACILITIES[house.kind],
          NumberofConditionedFloorsAboveGrade: house.storeysCount,
          NumberofBedrooms: house.bedroomsCount,
          ConditionedFloorArea: house.conditionedFloorAreaFt2,
          ConditionedBuildingVolume: house.volumeFt3,
        },
      },
      ClimateandRiskZones:
        house.stationId === undefined
          ? undefined
          : {
              WeatherStation: {
                SystemIdentifier: identifier(ids.station, house.stationId),
                Name: context.result.place.stationTitle,
              },
            },
      Enclosure: moment === "before" ? enclosure(house, ids) : undefined,
      Systems: {
        HVAC: {
          HVACPlant: {
            HeatingSystem: plants.flatMap(({ heating }) => heating ?? []),
            CoolingSystem: plants.flatMap(({ cooling }) => cooling ?? []),
            HeatPump: plants.flatMap(({ heatPump }) => heatPump ?? []),
          },
          HVACControl: hasSetpoint
            ? {
                SystemIdentifier: identifier(ids.control),
                SetpointTempHeatingSeason: house.heatingSetpointF,
                SetpointTempCoolingSeason: house.coolingSetpointF,
              }
            : undefined,
          HVACDistribution: job.systems.map((_, index) => distribution(context, index)),
        },
      },
    },
  };
}
