import { refuse } from "#lib/errors/input-problem.ts";
import type { FanCalibration, FanDirection, TestFan } from "#lib/job/instrument-schema.ts";
import { planRestrictor } from "#lib/setup/restrictor-plan.ts";
import type { NetworkSolution } from "#lib/simulate/flow-network.ts";
import { houseNetwork } from "#lib/simulate/house-network.ts";
import { type Observer, pressureBehind, shownPressure } from "#lib/simulate/observer.ts";
import { solveNetwork } from "#lib/simulate/solve-network.ts";
import { FAN_INLET, HOUSE, type Situation, SUPPLY, type TrueHouse } from "#lib/simulate/true-house.ts";
import type { Pascals } from "#lib/units/quantity.ts";

/** Two hoses on one gauge channel: it shows the signal hose's pressure less the reference hose's. */
export interface Channel {
  signal: string;
  reference: string;
}

export const DUCT_TO_HOUSE: Channel = { signal: SUPPLY, reference: HOUSE };

/** How the duct fan is set up. Whatever is left out is right. */
export interface DuctFanSetUp {
  fan: TestFan;
  direction: FanDirection;
  /** Channel that is held, and at what; 25 Pa with the sign of the direction unless said otherwise. */
  held?: Channel;
  targetPa?: Pascals;
  joins?: string;
  standsIn?: string;
  /** What the flow tap is read against: node; by the fan's record unless said otherwise. */
  tapReference?: string;
  /** Taken instead of the one that fits. */
  restrictorId?: string;
}

export interface DuctFanReading {
  heldPressurePa: Pascals;
  /** Flow tap less its reference: below zero when the hoses are right, for the air speeds up at the tap. */
  flowTapPressurePa: Pascals;
  /** The same without its sign, as it enters the calibration. */
  fanPressurePa: Pascals;
  calibration: FanCalibration;
  solution: NetworkSolution;
}

/** Plus when air is pushed into the ducts, minus when it is pulled out. */
export const signOf = (direction: FanDirection): 1 | -1 => (direction === "pushing" ? 1 : -1);

/**
 * What the gauge shows while a duct fan holds its target in a house of known leaks.
 * The restrictor is the one that fits the true flow, as a tester finds it by trying. Source: derived.
 * @throws InputProblem when the fan has no calibration for the direction or no restrictor fits.
 */
export function readDuctFan({
  house,
  situation,
  observer,
  setUp,
}: {
  house: TrueHouse;
  situation: Situation;
  observer: Observer;
  setUp: DuctFanSetUp;
}): DuctFanReading {
  const { fan, direction, held = DUCT_TO_HOUSE, joins = centralReturn(house), standsIn = HOUSE } = setUp;
  const targetPa = pressureBehind(observer, setUp.targetPa ?? 25 * signOf(direction));
  const solveWith = (calibration: FanCalibration) =>
    solveNetwork(
      houseNetwork(house, {
        ...situation,
        ductFan: {
          direction,
          joins,
          standsIn,
          restrictor: trueRestrictor(calibration, observer),
          control: { by: "channel", ...held, targetPa },
        },
      }),
    );
  const open = largestOpening(fan, direction);
  const calibration = setUp.restrictorId
    ? calibrationOf(fan, direction, setUp.restrictorId)
    : fittingRestrictor(fan, direction, solveWith(open).flowsCfm["duct-fan"]!);
  const solution = solveWith(calibration);
  const ductSide = fan.tapReference[direction] === "duct-side-air";
  const reference = setUp.tapReference ?? (ductSide ? joins : standsIn);
  const at = (node: string) => solution.pressuresPa[node]!;
  const flowTapPressurePa = shownPressure(observer, at(FAN_INLET) - at(reference));
  return {
    heldPressurePa: shownPressure(observer, at(held.signal) - at(held.reference)),
    flowTapPressurePa,
    fanPressurePa: Math.abs(flowTapPressurePa),
    calibration,
    solution,
  };
}

/** The return with the widest duct: the opening nearest the air handler. */
export function centralReturn(house: TrueHouse): string {
  const returns = house.branches.filter((branch) => branch.side === "return");
  return returns.reduce((best, branch) => (branch.duct.flowCfm25 > best.duct.flowCfm25 ? branch : best)).id;
}

/** The hole that really stands before the fan: the calibration's, off by the fan's error. */
export function trueRestrictor(calibration: Pick<FanCalibration, "coefficient" | "exponent">, observer: Observer) {
  return {
    coefficient: calibration.coefficient * (1 + observer.ductFanErrorShare),
    exponent: calibration.exponent,
  };
}

function largestOpening(fan: TestFan, direction: FanDirection): FanCalibration {
  const [first, ...rest] = fan.calibrations.filter((calibration) => calibration.direction === direction);
  if (!first) return noRestrictor(`${fan.name} has no calibration for ${direction}`);
  return rest.reduce((best, calibration) => (calibration.coefficient > best.coefficient ? calibration : best), first);
}

export function calibrationOf(fan: TestFan, direction: FanDirection, restrictorId: string): FanCalibration {
  return (
    fan.calibrations.find((row) => row.direction === direction && row.restrictorId === restrictorId) ??
    noRestrictor(`${fan.name} has no flow restrictor “${restrictorId}” for ${direction}`)
  );
}

function fittingRestrictor(fan: TestFan, direction: FanDirection, flowCfm: number): FanCalibration {
  if (!(flowCfm > 0)) return noRestrictor(`No air would go through the fan (${flowCfm} cfm)`);
  const { chosen, verdict } = planRestrictor({ fan, direction, expectedFlowCfm: flowCfm });
  return chosen?.calibration ?? noRestrictor(`${flowCfm.toFixed(0)} cfm: ${verdict}`);
}

function noRestrictor(detail: string): never {
  return refuse({
    field: "fan",
    detail,
    fix: "Take another fan or flow restrictor, or a lower target.",
    code: "no-restrictor",
  });
}

/** The house made ready for a test with a fan on the ducts. */
export const ductFanSituation = (asFound: Situation): Situation => ({
  ...asFound,
  isFilterIn: false,
  areRegistersSealed: true,
  isAirHandlerOn: false,
  areRoomDoorsShut: false,
});
