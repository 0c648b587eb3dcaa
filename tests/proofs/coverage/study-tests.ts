import { InputProblem } from "#lib/errors/input-problem.ts";
import type { DuctTest, FanTest } from "#lib/job/duct-test.ts";
import { DEMO_FAN, DEMO_GAUGE } from "#lib/setup/demo-instruments.ts";
import type { Observer } from "#lib/simulate/observer.ts";
import { signOf } from "#lib/simulate/readings/duct-fan-reading.ts";
import { readLeakageToOutside } from "#lib/simulate/readings/leakage-to-outside.ts";
import { readTotalLeakage } from "#lib/simulate/readings/total-leakage.ts";
import type { TrueHouse } from "#lib/simulate/true-house.ts";
import type { Chance } from "./chance.ts";

/** A tester whose gauge and fans are off by what their kind allows. */
export function observerOf(chance: Chance): Observer {
  return {
    gauge: {
      errorInBand: chance.uniform(-1, 1),
      accuracyShare: 0.01,
      accuracyPa: 0,
      resolutionPa: 0.1,
      noisePa: 0.1,
    },
    ductFanErrorShare: 0.05 * chance.uniform(-1, 1),
    houseFanErrorShare: 0.03 * chance.uniform(-1, 1),
    nextNormal: () => chance.normal(),
  };
}

/** The reading, or nothing where the fan has no restrictor for it: then the tester goes without. */
function ifItCanBeRead<Value>(read: () => Value): Value | null {
  try {
    return read();
  } catch (problem) {
    if (problem instanceof InputProblem) return null;
    throw problem;
  }
}

/** The tests as read in the flow network of the house: total leakage always, to outside in two houses of three. */
export function testsOf(chance: Chance, house: TrueHouse, observer: Observer): DuctTest[] {
  const direction = chance.isTrue(0.5) ? ("pushing" as const) : ("pulling" as const);
  const common = {
    systemId: "main",
    stage: "existing",
    direction,
    fanId: DEMO_FAN.id,
    gaugeId: DEMO_GAUGE.id,
    indoorTemperatureF: 69.2,
  } as const;
  const stepsPa = chance.isTrue(0.5) ? [25] : [15, 20, 25, 30, 40];
  const total = ifItCanBeRead((): FanTest => {
    const points = stepsPa.map((pressurePa) => {
      const setUp = { fan: DEMO_FAN, direction, targetPa: signOf(direction) * pressurePa };
      const { heldPressurePa, fanPressurePa, calibration } = readTotalLeakage({ house, observer, setUp });
      return { ductPressurePa: heldPressurePa, fanPressurePa, restrictorId: calibration.restrictorId };
    });
    return { ...common, id: "total", kind: "total-leakage", points };
  });
  const outside = chance.isTrue(0.65)
    ? ifItCanBeRead((): FanTest => {
        const reading = readLeakageToOutside({ house, observer, setUp: { fan: DEMO_FAN, direction } });
        return {
          ...common,
          id: "outside",
          kind: "leakage-to-outside",
          houseToOutsidePressurePa: reading.houseToOutsidePressurePa,
          ductToHousePressurePa: reading.heldPressurePa,
          points: [
            {
              ductPressurePa: reading.heldPressurePa === 0 ? 0.1 : reading.heldPressurePa,
              fanPressurePa: reading.fanPressurePa,
              restrictorId: reading.calibration.restrictorId,
            },
          ],
        };
      })
    : null;
  return [total, outside].filter((test) => test !== null);
}
