import { houseNetwork } from "#lib/simulate/house-network.ts";
import { type Observer, pressureBehind, shownHouseFlow, shownPressure } from "#lib/simulate/observer.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { AS_FOUND, HOUSE, OUTSIDE, type Situation, SUPPLY, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";

export interface SubtractionReading {
  wholeHouseCfm50: Cfm;
  envelopeCfm50: Cfm;
  ductToHousePressurePa: Pascals;
}

/** What two tests of the house show, air pulled out to −50 Pa: registers open, then sealed. */
export function readBlowerDoorSubtraction({
  house,
  observer,
  mistakes = {},
}: {
  house: TrueHouse;
  observer: Observer;
  mistakes?: Partial<Situation>;
}): SubtractionReading {
  const at50Pa = (areRegistersSealed: boolean) =>
    solveNetwork(
      houseNetwork(house, {
        ...AS_FOUND,
        areRegistersSealed,
        houseFan: { by: "channel", signal: HOUSE, reference: OUTSIDE, targetPa: pressureBehind(observer, -50) },
        ...mistakes,
      }),
    );
  const open = at50Pa(false);
  const sealed = at50Pa(mistakes.areRegistersSealed ?? true);
  return {
    wholeHouseCfm50: shownHouseFlow(observer, -open.flowsCfm["house-fan"]!),
    envelopeCfm50: shownHouseFlow(observer, -sealed.flowsCfm["house-fan"]!),
    ductToHousePressurePa: shownPressure(observer, sealed.pressuresPa[SUPPLY]! - sealed.pressuresPa[HOUSE]!),
  };
}
