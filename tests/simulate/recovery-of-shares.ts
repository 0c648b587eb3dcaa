import { matchedPressureAirflow } from "#lib/air/matched-pressure-airflow.ts";
import { temperatureRiseAirflow } from "#lib/air/temperature-rise-airflow.ts";
import { leakageReconciliation } from "#lib/apportion/leakage-reconciliation.ts";
import { toOutsideShare } from "#lib/apportion/to-outside-share.ts";
import type { Observer } from "#lib/simulate/observer.ts";
import { readZonePressures } from "#lib/simulate/readings/house-at-pressure.ts";
import { readMatchedPressure, readTemperatureRise } from "#lib/simulate/readings/operation.ts";
import { HOUSE, type TrueHouse, type TrueLeak } from "#lib/simulate/true-house.ts";
import { leakageToOutsideAt, trueLeakage, trueOperation } from "#lib/simulate/truth.ts";
import { type Attempt, attempt } from "./recovery.ts";

/** Each zone's share by its measured pressure, beside the share of a small leak in the network. */
export function zoneShares(house: TrueHouse, observer: Observer): { found: number; truth: number }[] {
  return readZonePressures({ house, observer }).map(({ zoneId, houseToZonePressurePa }) => {
    const probe: TrueLeak = { id: "probe", side: "supply", label: "", zoneId, flowCfm25: 0.01, exponent: 0.6 };
    return {
      found: toOutsideShare({ houseToZonePressurePa: Math.min(Math.abs(houseToZonePressurePa), 50) }).share,
      truth: leakageToOutsideAt({ ...house, leaks: [probe] }, 50).supply / (0.01 * 2 ** 0.6),
    };
  });
}

/** A standard thermometer pair: the rise is right within 1.5 °F, so its standard uncertainty is that over √3. */
const RISE_BOUND_F = 1.5;
const FAN_BOUND_SHARE = 0.05;

export function flowByTemperatureRise(house: TrueHouse, observer: Observer): Attempt {
  return attempt(trueOperation(house).fanFlowCfm, () => {
    const riseF = readTemperatureRise(house).temperatureRiseF + RISE_BOUND_F * observer.gauge.errorInBand;
    const { flowCfm } = temperatureRiseAirflow({
      outputBtuPerH: house.airHandler.heatingOutputBtuPerH,
      temperatureRiseF: riseF,
    });
    return { foundCfm: flowCfm, uncertaintyCfm: (flowCfm * RISE_BOUND_F) / Math.sqrt(3) / riseF };
  });
}

export function flowByMatchedPressure(house: TrueHouse, observer: Observer): Attempt {
  return attempt(trueOperation(house).fanFlowCfm, () => {
    const { flowCfm } = matchedPressureAirflow(readMatchedPressure({ house, observer, largestDeviceFlowCfm: 1300 }));
    return { foundCfm: flowCfm, uncertaintyCfm: (flowCfm * FAN_BOUND_SHARE) / Math.sqrt(3) };
  });
}

/** A walker who sees four of five leaks and judges each by eye, half or double as like as not. */
export function reconciledLeaks(
  house: TrueHouse,
  nextNormal: () => number,
): {
  sites: { priorCfm: number; foundCfm: number; uncertaintyCfm: number; truthCfm: number }[];
  unseenFoundCfm: number;
  unseenTruthCfm: number;
} {
  const truth = trueLeakage(house);
  const seen = house.leaks.filter((_, index) => index % 5 !== 4);
  const byId = new Map(house.leaks.map((leak) => [leak.id, leak]));
  const shareOf = (leak: TrueLeak) =>
    leak.zoneId === HOUSE ? 0 : leakageToOutsideAt({ ...house, leaks: [leak] }, 25)[leak.side] / leak.flowCfm25;
  const measured = (cfm25: number) => {
    const u = Math.max(0.03 * cfm25, 1);
    return { cfm25: Math.max(0, cfm25 + u * nextNormal()), standardUncertaintyCfm25: u };
  };
  const priors = new Map(seen.map((leak) => [leak.id, leak.flowCfm25 * Math.exp(0.4 * nextNormal())]));
  const { sites, notYetFound } = leakageReconciliation({
    measurements: {
      total: measured(truth.totalCfm25),
      toOutside: measured(truth.toOutsideCfm25),
      supply: measured(truth.supplyCfm25),
    },
    sites: seen.map((leak) => ({
      id: leak.id,
      side: leak.side,
      toOutsideShare: Math.min(1, Math.max(0, shareOf(leak))),
      priorCfm25: priors.get(leak.id)!,
      priorRelativeUncertainty: 0.5,
    })),
    draws: 60,
  });
  const seenTruthCfm = seen.reduce((sum, leak) => sum + leak.flowCfm25, 0);
  return {
    sites: sites.map(({ id, cfm25, standardUncertaintyCfm25 }) => ({
      priorCfm: priors.get(id)!,
      foundCfm: cfm25,
      uncertaintyCfm: standardUncertaintyCfm25,
      truthCfm: byId.get(id)!.flowCfm25,
    })),
    unseenFoundCfm: notYetFound.reduce((sum, cell) => sum + cell.cfm25, 0),
    unseenTruthCfm: truth.totalCfm25 - seenTruthCfm,
  };
}
