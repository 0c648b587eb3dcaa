import type { Observer } from "#lib/simulate/observer.ts";
import { AS_FOUND, type Situation, SUPPLY, type TrueHouse } from "#lib/simulate/true-house.ts";
import { type DuctFanReading, type DuctFanSetUp, ductFanSituation, readDuctFan } from "./duct-fan-reading.ts";

/** What a test of the whole leakage shows: registers sealed, a door open, the ducts held at the target. */
export function readTotalLeakage({
  house,
  observer,
  setUp,
  mistakes = {},
}: {
  house: TrueHouse;
  observer: Observer;
  setUp: DuctFanSetUp;
  /** What was left as it should not be. */
  mistakes?: Partial<Situation>;
}): DuctFanReading {
  const situation = { ...ductFanSituation(AS_FOUND), isOutsideDoorOpen: true, ...mistakes };
  return readDuctFan({ house, situation, observer, setUp });
}

/** The same with a blank at the equipment, one side at a time; the supply side is reached through its plenum. */
export function readSideLeakage({
  side,
  ...test
}: Parameters<typeof readTotalLeakage>[0] & { side: "supply" | "return" }): DuctFanReading {
  const { setUp, mistakes } = test;
  return readTotalLeakage({
    ...test,
    setUp:
      side === "supply" ? { joins: SUPPLY, ...setUp } : { held: { signal: "return", reference: "house" }, ...setUp },
    mistakes: { hasBarrierAtEquipment: true, ...mistakes },
  });
}
