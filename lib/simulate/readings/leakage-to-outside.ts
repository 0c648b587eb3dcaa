import { type Observer, pressureBehind, shownPressure } from "#lib/simulate/observer.ts";
import { AS_FOUND, HOUSE, OUTSIDE, RETURN, type Situation, SUPPLY, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import { type DuctFanReading, type DuctFanSetUp, ductFanSituation, readDuctFan, signOf } from "./duct-fan-reading.ts";

export interface ToOutsideReading extends DuctFanReading {
  houseToOutsidePressurePa: Pascals;
}

/** What a test of the leakage to outside shows: the house fan holds the house, the duct fan the ducts at the same. */
export function readLeakageToOutside({
  house,
  observer,
  setUp,
  housePressurePa = 25,
  side,
  mistakes = {},
}: {
  house: TrueHouse;
  observer: Observer;
  setUp: DuctFanSetUp;
  /** Without sign: it follows the direction. */
  housePressurePa?: Pascals;
  /** With a blank at the equipment: only this side. */
  side?: "supply" | "return";
  mistakes?: Partial<Situation>;
}): ToOutsideReading {
  const situation: Situation = {
    ...ductFanSituation(AS_FOUND),
    hasBarrierAtEquipment: side !== undefined,
    houseFan: {
      by: "channel",
      signal: HOUSE,
      reference: OUTSIDE,
      targetPa: pressureBehind(observer, signOf(setUp.direction) * housePressurePa),
    },
    ...mistakes,
  };
  const reading = readDuctFan({
    house,
    situation,
    observer,
    setUp: {
      targetPa: 0,
      held: { signal: side === "return" ? RETURN : SUPPLY, reference: HOUSE },
      ...(side === "supply" ? { joins: SUPPLY } : {}),
      ...setUp,
    },
  });
  const { pressuresPa } = reading.solution;
  return { ...reading, houseToOutsidePressurePa: shownPressure(observer, pressuresPa[HOUSE]! - pressuresPa[OUTSIDE]!) };
}
