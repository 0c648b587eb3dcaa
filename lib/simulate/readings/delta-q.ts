import { houseNetwork } from "#lib/simulate/house-network.ts";
import { type Observer, pressureBehind, shownHouseFlow, shownPressure } from "#lib/simulate/observer.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { AS_FOUND, HOUSE, OUTSIDE, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";

export interface DeltaQPoint {
  envelopePressurePa: Pascals;
  /** Flow into the house with the air handler on, less the flow with it off. */
  deltaFlowCfm: Cfm;
}

/**
 * Stations of a usual test, both signs. None within 5 Pa of zero: there the flow of the house hangs on every gust, and a
 * few such points pull the whole fit. Source: own-method (simulated houses in wind).
 */
export const DELTA_Q_STATIONS_PA: readonly Pascals[] = [
  -50, -45, -40, -35, -30, -25, -20, -15, -10, 10, 15, 20, 25, 30, 35, 40, 45, 50,
];

/**
 * What a Delta-Q test shows: at each house pressure the house fan's flow with the air handler on and off.
 * In wind the outside changes between the two, by `gustPa` of standard deviation, and nobody sees it.
 */
export function readDeltaQ({
  house,
  observer,
  stationsPa = DELTA_Q_STATIONS_PA,
  gustPa = 0,
}: {
  house: TrueHouse;
  observer: Observer;
  stationsPa?: readonly Pascals[];
  gustPa?: Pascals;
}): DeltaQPoint[] {
  const flowAt = (stationPa: Pascals, isAirHandlerOn: boolean) => {
    const { flowsCfm, pressuresPa } = solveNetwork(
      houseNetwork(house, {
        ...AS_FOUND,
        isAirHandlerOn,
        windPressurePa: gustPa === 0 ? 0 : gustPa * observer.nextNormal(),
        houseFan: { by: "channel", signal: HOUSE, reference: OUTSIDE, targetPa: pressureBehind(observer, stationPa) },
      }),
    );
    return {
      flowCfm: shownHouseFlow(observer, flowsCfm["house-fan"]!),
      shownPa: shownPressure(observer, pressuresPa[HOUSE]! - pressuresPa[OUTSIDE]!),
    };
  };
  return stationsPa.map((stationPa) => {
    const [on, off] = [flowAt(stationPa, true), flowAt(stationPa, false)];
    return { envelopePressurePa: (on.shownPa + off.shownPa) / 2, deltaFlowCfm: on.flowCfm - off.flowCfm };
  });
}
