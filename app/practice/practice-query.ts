import { readQuantity } from "#app/design/read-quantity.ts";
import { FAN_DIRECTIONS, type TestFan } from "#lib/job/instrument-schema.ts";
import { FAN_CONNECTIONS, REGISTER_COVERS } from "#lib/setup/setup-answers.ts";
import type { PracticeScenario } from "#lib/simulate/practice-scenarios.ts";
import type { PracticeChannelId, PracticeSetup, PracticeTap } from "#lib/simulate/practice-setup.ts";
import type { Share } from "#lib/units/quantity.ts";

export const PRACTICE_CHANNELS = ["duct", "fan", "house"] as const satisfies readonly PracticeChannelId[];

/** The ends that a hose of the practice gauge can be put on. */
export const PRACTICE_TAPS = [
  "open-port",
  "supply-plenum",
  "return-plenum",
  "house",
  "outside",
  "fan-flow-tap",
  "fan-duct-side",
  "fan-surroundings",
] as const satisfies readonly PracticeTap[];

export type PracticeQuery = Readonly<Record<string, string | readonly string[] | undefined>>;

/** What each button of the speed adds, in percent of full speed. */
export const NUDGES = [-5, -0.5, 0.5, 5] as const;

/** A learner's set-up from the fields of the form; what they do not say is as the scenario begins. */
export function readPracticeQuery({
  query,
  scenario,
  fan,
}: {
  query: PracticeQuery;
  scenario: PracticeScenario;
  fan: TestFan;
}): { setup: PracticeSetup; isDone: boolean } {
  const { start } = scenario;
  const text = (name: string) => {
    const value = query[name];
    return typeof value === "string" ? value : "";
  };
  const oneOf = <T extends string>(name: string, choices: readonly T[], usual: T): T =>
    choices.find((choice) => choice === text(name)) ?? usual;
  const flag = (name: string, usual: boolean): boolean => (text(name) === "" ? usual : text(name) === "yes");
  const direction = oneOf("direction", FAN_DIRECTIONS, start.direction);
  const restrictors = fan.calibrations.filter((row) => row.direction === direction).map((row) => row.restrictorId);
  const ends = (id: PracticeChannelId) => ({
    signal: oneOf(`${id}-signal`, PRACTICE_TAPS, start.hoses[id].signal as (typeof PRACTICE_TAPS)[number]),
    reference: oneOf(`${id}-reference`, PRACTICE_TAPS, start.hoses[id].reference as (typeof PRACTICE_TAPS)[number]),
  });
  return {
    isDone: text("done") === "1",
    setup: {
      testKind: start.testKind,
      direction,
      restrictorId: oneOf("restrictor", restrictors, start.restrictorId),
      hasFlowStraightener: flag("straightener", start.hasFlowStraightener),
      fanConnection: oneOf("connect", FAN_CONNECTIONS, start.fanConnection),
      personAt: oneOf("at", ["house", "attic"], start.personAt),
      hoses: { duct: ends("duct"), fan: ends("fan"), house: ends("house") },
      isOutsideDoorOpen: flag("door", start.isOutsideDoorOpen),
      registerCover: oneOf("cover", REGISTER_COVERS, start.registerCover),
      forgottenBranchIds: flag("walked", false) ? [] : start.forgottenBranchIds,
      isFilterIn: flag("filter", start.isFilterIn),
      isAirHandlerOn: flag("air-handler", start.isAirHandlerOn),
      ductFanSpeedShare: speed("duct-fan", start.ductFanSpeedShare),
      houseFanSpeedShare: speed("house-fan", start.houseFanSpeedShare),
    },
  };

  /** Percent on the dial, with the button that was pressed. */
  function speed(name: string, usual: Share): Share {
    const typed = readQuantity(text(name));
    const nudge = readQuantity(text(`${name}-nudge`)) ?? 0;
    const percent = Math.min(100, Math.max(0, (typed ?? usual * 100) + nudge));
    return Math.round(percent * 10) / 1000;
  }
}
