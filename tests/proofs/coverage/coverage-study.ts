import { estimate } from "#lib/estimate/estimate.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { trueLeakage } from "#lib/simulate/truth.ts";
import { chanceOf } from "./chance.ts";
import { studyHouse } from "./study-house.ts";
import { repairedNetwork, studyJob } from "./study-job.ts";
import { trueAir } from "./true-air.ts";
import { type TrueWeather, trueWeather } from "./true-weather.ts";
import { type TrueUse, trueYear } from "./true-year.ts";

/** What the estimate says with a range, and the simulated house knows. */
export const JUDGED = ["savings", "totalLeakage", "leakageToOutside", "electricityBefore", "gasBefore"] as const;
export type Judged = (typeof JUDGED)[number];

/** A house of the study: the truth of each quantity beside the range that the estimate gave. */
export interface StudyRow {
  house: number;
  climate: string;
  equipment: string;
  place: string;
  evidence: string;
  /** Null where the house has none of it. */
  judged: Readonly<Record<Judged, { truth: number; range: Ranged } | null>>;
  /** Largest miss of the simulated house's own account of heat, over its need: 0 but for rounding. */
  largestMiss: number;
}

const SITES = [
  { climate: "cold", zip: "53711" },
  { climate: "cold", zip: "55401" },
  { climate: "mixed", zip: "37211" },
  { climate: "mixed", zip: "21201" },
  { climate: "hot-humid", zip: "77002" },
  { climate: "hot-humid", zip: "33125" },
  { climate: "hot-dry", zip: "85004" },
  { climate: "marine", zip: "98101" },
] as const;
const DRAWS = 1000;
const BTU_PER_KWH = 3412.14;
const BTU_PER_THERM = 100_000;

interface Site {
  climate: string;
  zip: string;
  reference: ReferenceData;
  weather: TrueWeather;
}

async function loadSites(): Promise<Site[]> {
  return Promise.all(
    SITES.map(async ({ climate, zip }) => {
      const reference = await loadReferenceData({ house: { zip } } as Parameters<typeof loadReferenceData>[0]);
      return { climate, zip, reference, weather: trueWeather(reference.climate) };
    }),
  );
}

const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);

function yearOf(use: TrueUse, isGas: boolean) {
  const heating = sum(use.heatingBtu);
  return {
    therms: isGas ? heating / BTU_PER_THERM : 0,
    kWh:
      (sum(use.coolingBtu) + (isGas ? 0 : heating)) / BTU_PER_KWH +
      sum(use.blowerHeatingKWh) +
      sum(use.blowerCoolingKWh),
  };
}

async function studyRow(seed: number, k: number, sites: readonly Site[]): Promise<StudyRow> {
  const chance = chanceOf(seed, k);
  const { climate, zip, reference, weather } = sites[k % sites.length]!;
  const house = studyHouse(chance, reference.climate.design);
  const airBefore = trueAir(house, house.network);
  const useBefore = trueYear(house, airBefore, weather);
  const { job, truePrices, trueRemaining, evidence } = studyJob({
    chance,
    house,
    reference,
    zip,
    use: useBefore,
    fanFlowCfm: airBefore.fanFlowCfm,
  });
  const airAfter = trueAir(house, repairedNetwork(house.network, trueRemaining));
  const powerRatio = (airAfter.fanFlowCfm / airBefore.fanFlowCfm) ** house.blowerExponent;
  const useAfter = trueYear({ ...house, blowerW: house.blowerW * powerRatio }, airAfter, weather);
  const isGas = house.heating === "gas-furnace";
  const before = yearOf(useBefore, isGas);
  const after = yearOf(useAfter, isGas);
  const usd = ({ kWh, therms }: { kWh: number; therms: number }) =>
    kWh * truePrices.electricityUsdPerKWh + therms * truePrices.naturalGasUsdPerTherm;
  const result = await estimate(job, reference, { draws: DRAWS, seed: 1 });
  const largest = house.zones.reduce((most, zone) => (zone.supplyAreaFt2 > most.supplyAreaFt2 ? zone : most));
  const leakage = trueLeakage(house.network);
  return {
    house: k,
    climate,
    equipment: house.heating,
    place: largest.kind,
    evidence,
    judged: {
      savings: { truth: usd(before) - usd(after), range: result.savings.costUsdPerYear },
      totalLeakage: { truth: leakage.totalCfm25, range: result.leakage.totalCfm25 },
      leakageToOutside: { truth: leakage.toOutsideCfm25, range: result.leakage.toOutsideCfm25 },
      electricityBefore: { truth: before.kWh, range: result.energy.electricity.beforeKWh },
      gasBefore: isGas ? { truth: before.therms, range: result.energy.naturalGas.beforeTherms } : null,
    },
    largestMiss: Math.max(useBefore.largestMiss, useAfter.largestMiss),
  };
}

/** Every house of a seeded set. The same seed gives the same houses and the same answer. */
export async function coverageStudy({
  seed,
  houses,
  from = 0,
}: {
  seed: number;
  houses: number;
  from?: number;
}): Promise<StudyRow[]> {
  const sites = await loadSites();
  const rows: StudyRow[] = [];
  for (let k = from; k < from + houses; k++) rows.push(await studyRow(seed, k, sites));
  return rows;
}

export interface Coverage {
  name: string;
  houses: number;
  coveredShare: number;
  /** Truth below the 10th percentile, and above the 90th. */
  belowShare: number;
  aboveShare: number;
  meanWidth: number;
  meanTruth: number;
  meanEstimate: number;
}

/**
 * How often the 80 % range holds the truth. `widthFactor` narrows or widens every range about its median: 1 but for the
 * planted failure.
 */
export function coverageOf(
  name: string,
  rows: readonly StudyRow[],
  judged: Judged = "savings",
  widthFactor = 1,
): Coverage {
  const all = rows
    .flatMap((row) => row.judged[judged] ?? [])
    .map(({ truth, range }) => {
      const middle = range.p50!;
      return {
        truth,
        middle,
        low: middle - widthFactor * (middle - range.p10!),
        high: middle + widthFactor * (range.p90! - middle),
      };
    });
  const share = (is: (each: (typeof all)[number]) => boolean) => all.filter(is).length / all.length;
  const mean = (of: (each: (typeof all)[number]) => number) => sum(all.map(of)) / all.length;
  const belowShare = share(({ truth, low }) => truth < low);
  const aboveShare = share(({ truth, high }) => truth > high);
  return {
    name,
    houses: all.length,
    coveredShare: 1 - belowShare - aboveShare,
    belowShare,
    aboveShare,
    meanWidth: mean(({ low, high }) => high - low),
    meanTruth: mean(({ truth }) => truth),
    meanEstimate: mean(({ middle }) => middle),
  };
}

export const KINDS = ["climate", "equipment", "place", "evidence"] as const;

export function coverageBy(rows: readonly StudyRow[], by: (typeof KINDS)[number]): Coverage[] {
  const names = [...new Set(rows.map((row) => row[by]))].sort();
  return names.map((name) =>
    coverageOf(
      name,
      rows.filter((row) => row[by] === name),
    ),
  );
}
