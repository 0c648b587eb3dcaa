import { refuse } from "#lib/errors/input-problem.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { TestFan } from "#lib/job/instrument-schema.ts";
import { fanFlow } from "#lib/measure/fan-flow.ts";
import { leakageAtPressure } from "#lib/measure/leakage-at-pressure.ts";
import type { TapPoint } from "#lib/setup/gauge-channels.ts";
import { isFilmPushedOff } from "#lib/setup/register-cover.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";
import type { NetworkSolution } from "./flow-network.ts";
import { channelReading, type HoseEnds } from "./hoses.ts";
import { houseNetwork } from "./house-network.ts";
import { type Observer, PERFECT_OBSERVER } from "./observer.ts";
import { diagnosePractice } from "./practice-diagnosis.ts";
import type { PracticeScenario } from "./practice-scenarios.ts";
import type { PracticeChannelId, PracticeSetup, PracticeTap } from "./practice-setup.ts";
import { hoseEnds } from "./read-sheet.ts";
import { calibrationOf, trueRestrictor } from "./readings/duct-fan-reading.ts";
import { solveNetwork } from "./solve-network.ts";
import { AS_FOUND, type FanStrength, type Situation, type TrueHouse } from "./true-house.ts";
import { trueLeakage } from "./truth.ts";

/** What the practice fans can do; invented. */
const DUCT_FAN: FanStrength = { freeFlowCfm: 1800, shutOffPa: 400 };
const HOUSE_FAN: FanStrength = { freeFlowCfm: 6000, shutOffPa: 160 };
/** Cling film lets go of a register when the ducts push on it with more than this. Source: practice, a guess. */
const CLING_FILM_HOLDS_PA: Pascals = 5;
/** Swirling air makes the flow tap show this much more. Invented for practice. */
const SWIRL_FACTOR: Ratio = 1.2;

/** What the learner sees, finds out, and would write down. */
export interface PracticeView {
  /** What the gauge shows, with its sign. */
  readings: Readonly<Record<PracticeChannelId, Pascals>>;
  hasFilmBlownOff: boolean;
  /** What is wrong, in the order in which to put it right; empty when the reading can be trusted. */
  diagnoses: readonly ValidityNote[];
  /** The result that these readings give, right or wrong; absent while there is no reading to calculate with. */
  resultCfm25?: Cfm;
}

/**
 * The readings that a learner's set-up would show, why they are wrong, and the result they would give.
 * Readings come from the house's air flows, not from a list of mistakes. Valid for the fans of this practice house.
 * Source: derived. Left out: wind, leaks of the fan's own duct.
 * @throws InputProblem when the fan has no such flow restrictor.
 */
export function viewPractice({
  scenario,
  setup,
  fan,
  observer = PERFECT_OBSERVER,
}: {
  scenario: PracticeScenario;
  setup: PracticeSetup;
  fan: TestFan;
  observer?: Observer;
}): PracticeView {
  const { house } = scenario;
  const ends = hoseEnds(house, setup.fanConnection);
  const calibration = calibrationOf(fan, setup.direction, setup.restrictorId);
  const solve = (openBranchIds: readonly string[]) =>
    solveNetwork(
      houseNetwork(house, {
        ...practiceSituation(setup, openBranchIds),
        ductFan: {
          direction: setup.direction,
          joins: ends.fanJoins,
          standsIn: ends.fanStandsIn,
          restrictor: trueRestrictor(calibration, observer),
          control: { by: "speed", direction: setup.direction, speedShare: setup.ductFanSpeedShare, ...DUCT_FAN },
        },
      }),
    );
  const covered = solve(setup.forgottenBranchIds);
  const blownOff = filmsBlownOff(setup, house, covered);
  const solution = blownOff.length > 0 ? solve([...setup.forgottenBranchIds, ...blownOff]) : covered;
  const readings = shownReadings({ setup, fan, ends, solution, observer });
  const view = { readings, hasFilmBlownOff: blownOff.length > 0 };
  const diagnoses = diagnosePractice({ setup, fan, calibration, ...view });
  return { ...view, diagnoses, resultCfm25: resultOf(setup, readings, calibration) };
}

/** The truth beside the learner's result. */
export interface PracticeOutcome {
  truthCfm25: Cfm;
  resultCfm25: Cfm;
  /** Result over truth less one. */
  missRatio: Ratio;
  isTrusted: boolean;
}

/** How far a learner's result lies from what the house's leaks add up to. @throws InputProblem without a result. */
export function finishPractice({
  scenario,
  view,
  testKind,
}: {
  scenario: PracticeScenario;
  view: PracticeView;
  testKind: PracticeSetup["testKind"];
}): PracticeOutcome {
  if (view.resultCfm25 === undefined) {
    return refuse({
      field: "readings",
      detail: "There is no result yet: the gauge shows no pressure",
      fix: "Turn the fan up until the ducts and the fan show a pressure.",
    });
  }
  const truth = trueLeakage(scenario.house);
  const truthCfm25 = testKind === "total-leakage" ? truth.totalCfm25 : truth.toOutsideCfm25;
  return {
    truthCfm25,
    resultCfm25: view.resultCfm25,
    missRatio: view.resultCfm25 / truthCfm25 - 1,
    isTrusted: view.diagnoses.every(({ severity }) => severity !== "problem"),
  };
}

function practiceSituation(setup: PracticeSetup, openBranchIds: readonly string[]): Situation {
  return {
    ...AS_FOUND,
    areRegistersSealed: true,
    openBranchIds,
    isOutsideDoorOpen: setup.isOutsideDoorOpen,
    isFilterIn: setup.isFilterIn,
    isAirHandlerOn: setup.isAirHandlerOn,
    houseFan:
      setup.testKind === "leakage-to-outside"
        ? { by: "speed", direction: setup.direction, speedShare: setup.houseFanSpeedShare, ...HOUSE_FAN }
        : undefined,
  };
}

function filmsBlownOff(setup: PracticeSetup, house: TrueHouse, { pressuresPa }: NetworkSolution): string[] {
  if (setup.registerCover === "adhesive-film" || !isFilmPushedOff(setup)) return [];
  return house.branches
    .filter(({ id }) => pressuresPa[id]! - pressuresPa.house! > CLING_FILM_HOLDS_PA)
    .map(({ id }) => id);
}

function shownReadings({
  setup,
  fan,
  ends,
  solution,
  observer,
}: {
  setup: PracticeSetup;
  fan: TestFan;
  ends: HoseEnds;
  solution: NetworkSolution;
  observer: Observer;
}): PracticeView["readings"] {
  const tapOf = (tap: PracticeTap): TapPoint => (tap === "open-port" ? surroundings(setup) : tap);
  const shown = (id: PracticeChannelId) => {
    const { signal, reference } = setup.hoses[id];
    return channelReading({
      channel: { signal: tapOf(signal), reference: tapOf(reference) },
      ends,
      solution,
      observer,
    });
  };
  const swirls = setup.direction === "pulling" && fan.needsFlowStraightenerWhenPulling && !setup.hasFlowStraightener;
  return { duct: shown("duct"), house: shown("house"), fan: shown("fan") * (swirls ? SWIRL_FACTOR : 1) };
}

/** The attic is the first zone of each practice house. */
const surroundings = ({ personAt }: PracticeSetup): TapPoint => (personAt === "attic" ? "zone" : "house");

function resultOf(
  { testKind }: PracticeSetup,
  readings: PracticeView["readings"],
  { coefficient, exponent }: { coefficient: number; exponent: Ratio },
): Cfm | undefined {
  const ductPressurePa = Math.abs(testKind === "total-leakage" ? readings.duct : readings.house + readings.duct);
  const fanPressurePa = Math.abs(readings.fan);
  // Outside what the leakage can be calculated from: no reading to speak of, or the air handler drowns it.
  if (!(ductPressurePa >= 1 && ductPressurePa <= 250 && fanPressurePa >= 1)) return undefined;
  const { flowCfm } = fanFlow({ coefficient, exponent, fanPressurePa });
  return leakageAtPressure({ flowCfm, ductPressurePa }).leakageCfm;
}
