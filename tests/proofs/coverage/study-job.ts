import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { fittingRepairs } from "#lib/scope/fitting-repairs.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import { readZonePressures } from "#lib/simulate/readings/house-at-pressure.ts";
import { readStaticPressures } from "#lib/simulate/readings/operation.ts";
import type { TrueHouse } from "#lib/simulate/true-house.ts";
import type { Chance } from "./chance.ts";
import { energyOf, type StudyEvidence } from "./study-energy.ts";
import type { StudyHouse } from "./study-house.ts";
import { siteOf, trueRemainingShare } from "./study-sites.ts";
import { observerOf, testsOf } from "./study-tests.ts";
import type { TrueUse } from "./true-year.ts";

export interface Prices {
  electricityUsdPerKWh: number;
  naturalGasUsdPerTherm: number;
}

export interface StudyJob {
  job: Job;
  truePrices: Prices;
  /** What the work really leaves of each leak, by its id. */
  trueRemaining: ReadonlyMap<string, number>;
  evidence: StudyEvidence;
}

/** What a contractor would write down in this house: some of it measured, some judged by eye, some not known at all. */
export function studyJob({
  chance,
  house,
  reference,
  zip,
  use,
  fanFlowCfm,
}: {
  chance: Chance;
  house: StudyHouse;
  reference: ReferenceData;
  zip: string;
  use: TrueUse;
  fanFlowCfm: number;
}): StudyJob {
  const { network } = house;
  const observer = observerOf(chance);
  const evidence = chance.pick(["bills", "bills", "known-use", "building"] as const);
  const isTold = (probability = 0.7) => chance.isTrue(probability);
  const rates = isTold();
  const marginal = {
    electricity: rates ? chance.uniform(0.92, 1.06) : chance.lognormal(0.13),
    naturalGas: rates ? chance.uniform(0.92, 1.06) : chance.lognormal(0.13),
  };
  const truePrices: Prices = {
    electricityUsdPerKWh: reference.prices.electricityUsdPerKWh.value * marginal.electricity,
    naturalGasUsdPerTherm: reference.prices.naturalGasUsdPerTherm.value * marginal.naturalGas,
  };
  const zonePressures = isTold(0.4) ? readZonePressures({ house: network, observer }) : [];
  const statics = isTold() ? readStaticPressures({ house: network, observer }) : null;
  const flowBasis = chance.pick(["measured-temperature-rise", "measured-matched-pressure", null] as const);
  const areRunsMeasured = isTold(0.6);
  const isHeatPump = house.heating === "heat-pump";
  const runs = [
    ...house.zones.map((zone) => ({ placeId: zone.id, supply: zone.supplyAreaFt2, back: zone.returnAreaFt2 })),
    { placeId: "rooms", supply: house.roomsSupplyAreaFt2, back: house.roomsReturnAreaFt2 },
  ].flatMap(({ placeId, supply, back }) =>
    [
      { side: "supply" as const, area: supply },
      { side: "return" as const, area: back },
    ]
      .filter(({ area }) => area > 2)
      .map(({ side, area }) => ({
        id: `${side}-${placeId}`,
        side,
        placeId,
        ...(areRunsMeasured ? { areaFt2: area * chance.lognormal(0.12) } : {}),
        ...(isTold(0.85) ? { insulationRValue: house.nominalRValue } : {}),
        ...(isTold(0.85) ? { material: house.material } : {}),
      })),
  );
  const seen = network.leaks.filter(() => chance.isTrue(0.85));
  const sites = seen.map((leak) => siteOf(chance, network, leak));
  const trueRemaining = new Map<string, number>();
  const chosenMeasures = sites.flatMap((site) => {
    const [repair] = fittingRepairs({ catalogue: STARTING_CATALOGUE, site }).filter(
      ({ reachesWholeSystem }) => !reachesWholeSystem,
    );
    if (!repair || chance.isTrue(0.1)) return [];
    trueRemaining.set(site.id, trueRemainingShare(chance, repair.remainingShare));
    return [{ siteId: site.id, repairId: repair.id }];
  });
  const document = {
    schemaVersion: "ductmend.job/1",
    id: "study",
    title: "A house of the coverage study (invented)",
    isInvented: true,
    house: {
      label: "Study",
      kind: "site-built",
      zip,
      conditionedFloorAreaFt2: Math.round(house.floorAreaFt2),
      storeysCount: house.storeysCount,
      ...(isTold(0.85) ? { builtYear: house.builtYear } : {}),
      ...(isTold(0.5)
        ? { heatingSetpointF: Math.round(house.heatingF), coolingSetpointF: Math.round(house.coolingF) }
        : {}),
      ...(isTold(0.6)
        ? {
            envelopeLeakageCfm50:
              network.envelope.flowCfm25 * 2 ** network.envelope.exponent * (1 + 0.03 * chance.uniform(-1, 1)),
          }
        : {}),
    },
    places: [
      ...house.zones.map((zone) => {
        const reading = zonePressures.find(({ zoneId }) => zoneId === zone.id);
        return {
          id: zone.id,
          kind: zone.kind,
          ...(reading
            ? { houseToZonePressurePa: Math.abs(reading.houseToZonePressurePa), houseToOutsidePressurePa: 50 }
            : {}),
          ...(zone.kind === "attic" && isTold() ? { ceilingRValue: zone.ceilingRValue } : {}),
          ...(zone.kind === "attic" && isTold() ? { roofColor: zone.roofColor } : {}),
          ...(zone.kind !== "attic" && zone.kind !== "garage" && isTold() ? { insulation: zone.insulation } : {}),
        };
      }),
      { id: "rooms", kind: "conditioned" },
    ],
    systems: [
      {
        id: "main",
        label: "Main",
        returnsCount: network.branches.filter(({ side }) => side === "return").length,
        heating: {
          kind: house.heating,
          outputBtuPerH: house.heatingBtuPerH / chance.uniform(0.94, 1.03),
          ...(house.heating === "gas-furnace" && isTold(0.8)
            ? { annualEfficiency: Math.min(1, house.furnaceEfficiency / chance.uniform(0.95, 1.01)) }
            : {}),
          ...(isHeatPump && isTold(0.5)
            ? {
                copAt47Ratio: house.cop47,
                copAt17Ratio: house.cop17,
                capacityAt17BtuPerH: house.heatingBtuPerH * house.capacity17Ratio,
              }
            : {}),
        },
        cooling: {
          kind: isHeatPump ? "heat-pump" : "air-conditioner",
          capacityBtuPerH: house.coolingBtuPerH,
          ...(isTold(0.8) ? { seer: house.seer } : {}),
        },
        blower: {
          ...(flowBasis
            ? {
                fanFlowCfm: fanFlowCfm * chance.lognormal(flowBasis === "measured-temperature-rise" ? 0.08 : 0.04),
                fanFlowBasis: flowBasis,
              }
            : {}),
          ...(statics
            ? {
                supplyStaticPa: Math.max(2, Math.abs(statics.supplyStaticPa)),
                returnStaticPa: Math.max(2, Math.abs(statics.returnStaticPa)),
              }
            : {}),
          ...(isTold(0.4) ? { powerW: house.blowerW } : {}),
        },
        runs,
      },
    ],
    instruments: { fans: [DEMO_FAN], gauges: [DEMO_GAUGE] },
    tests: testsOf(chance, network, observer),
    sites,
    energy: energyOf(chance, house, use, evidence),
    ...(rates
      ? {
          rates: {
            electricityUsdPerKWh: reference.prices.electricityUsdPerKWh.value,
            ...(house.heating === "gas-furnace"
              ? { naturalGasUsdPerTherm: reference.prices.naturalGasUsdPerTherm.value }
              : {}),
          },
        }
      : {}),
    plan: { chosenMeasures },
  };
  return { job: parseJob(JSON.parse(JSON.stringify(document))), truePrices, trueRemaining, evidence };
}

/** The network after the work, each repaired leak as small as it really got. */
export function repairedNetwork(network: TrueHouse, remaining: ReadonlyMap<string, number>): TrueHouse {
  return {
    ...network,
    leaks: network.leaks.map((leak) => ({
      ...leak,
      flowCfm25: leak.flowCfm25 * (remaining.get(leak.id) ?? 1),
    })),
  };
}
