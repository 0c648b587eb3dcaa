import { readQuantity } from "#app/design/read-quantity.ts";
import { readInUnits } from "#app/units/read-in-units.ts";
import { SIDES } from "#lib/job/duct-system.ts";
import { FAN_DIRECTIONS, type Gauge, type TestFan } from "#lib/job/instrument-schema.ts";
import {
  FAN_CONNECTIONS,
  type FanConnection,
  REGISTER_COVERS,
  SETUP_TEST_KINDS,
  type SetupAnswers,
  type SetupTestKind,
  STANDPOINTS,
} from "#lib/setup/setup-answers.ts";
import { fieldNumberOf, type UnitSystem } from "#lib/units/display-unit.ts";
import { formatNumber } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";

/** What the address of the page says; every name is a field of the form. */
export type SetupQuery = Readonly<Record<string, string | readonly string[] | undefined>>;

export interface SetupInstruments {
  fans: readonly TestFan[];
  gauges: readonly Gauge[];
}

export interface SetupForm {
  /** The units that a typed flow is in, and is shown in. */
  units: UnitSystem;
  answers: SetupAnswers;
  /** What stands in the fields of numbers, as it was typed. */
  typed: { registers: string; expect: string };
  errors: readonly { fieldId: string; text: string }[];
}

/** The stage and whether the air handler is in place, as one question. */
const STAGES = ["existing", "rough-in", "rough-in-without", "final"] as const;
export type SetupStage = (typeof STAGES)[number];

const MOST_REGISTERS = 80;
const MOST_FLOW_CFM = 8000;
const USUAL_REGISTERS = 10;

/** For the fan flow the test fan feeds the cabinet; the tests of one supply side need the supply side. */
function usualConnection(testKind: SetupTestKind, side: SetupAnswers["side"]): FanConnection {
  if (testKind === "matched-pressure") return "air-handler-cabinet";
  return testKind.startsWith("side-leakage") && side === "supply" ? "supply-plenum" : "central-return";
}

/** The answers for a sheet from the address of the page. What it does not say is as the trade usually does it. */
export function readSetupQuery({
  query,
  instruments,
  date,
  units = "us",
}: {
  query: SetupQuery;
  instruments: SetupInstruments;
  date: string;
  /** The units of the reader; the address tells those in which its flow was typed. */
  units?: UnitSystem;
}): SetupForm {
  const text = (name: string) => {
    const value = query[name];
    return typeof value === "string" ? value.trim() : "";
  };
  const oneOf = <T extends string>(name: string, choices: readonly T[], usual: T): T =>
    choices.find((choice) => choice === text(name)) ?? usual;
  const testKind = oneOf("test", SETUP_TEST_KINDS, "total-leakage");
  const side = testKind.startsWith("side-leakage") ? oneOf("side", SIDES, "supply") : undefined;
  const stage = oneOf("stage", STAGES, "existing");
  const errors: { fieldId: string; text: string }[] = [];
  const registers = readNumber(text("registers"));
  const registersFit = Number.isInteger(registers) && registers! >= 1 && registers! <= MOST_REGISTERS;
  if (text("registers") !== "" && !registersFit) {
    errors.push({
      fieldId: "registers",
      text: `Registers and grilles must be a whole number from 1 to ${MOST_REGISTERS}`,
    });
  }
  const typedIn = text("units") === "si" ? "si" : "us";
  const expect = readInUnits(text("expect"), { unit: "cfm", system: typedIn });
  const expectFits = expect !== undefined && expect > 0 && expect <= MOST_FLOW_CFM;
  if (text("expect") !== "" && !expectFits) {
    errors.push({
      fieldId: "expect",
      text: sentenceInSystem(`Flow to expect must be above 0 and at most ${formatNumber(MOST_FLOW_CFM)} cfm`, units),
    });
  }
  const fan = instruments.fans.find(({ id }) => id === text("fan"));
  const gauge = instruments.gauges.find(({ id }) => id === text("gauge"));
  const shownFlow =
    typedIn === units || expect === undefined
      ? text("expect")
      : String(fieldNumberOf({ value: expect, unit: "cfm", system: units }));
  return {
    units,
    answers: {
      testKind,
      stage: stage === "rough-in-without" ? "rough-in" : stage,
      hasAirHandler: stage !== "rough-in-without",
      ...(side ? { side } : {}),
      direction: oneOf("direction", FAN_DIRECTIONS, "pushing"),
      fanConnection: oneOf("connect", FAN_CONNECTIONS, usualConnection(testKind, side)),
      personAt: oneOf("at", STANDPOINTS, "house"),
      registerCover: oneOf("cover", REGISTER_COVERS, "adhesive-film"),
      registerCount: registersFit ? registers! : USUAL_REGISTERS,
      // Safety first: as if something burned, until somebody says that nothing does.
      hasCombustionAppliance: text("burns") !== "no",
      ...(expectFits ? { expectedLeakageCfm: expect } : {}),
      ...(fan ? { fan } : {}),
      ...(gauge ? { gauge } : {}),
      date,
    },
    typed: { registers: text("registers") || String(USUAL_REGISTERS), expect: shownFlow },
    errors,
  };
}

const readNumber = (typed: string): number | undefined => (typed === "" ? undefined : readQuantity(typed));

export const stageOf = ({ stage, hasAirHandler }: SetupAnswers): SetupStage => {
  if (stage === "rough-in") return hasAirHandler ? "rough-in" : "rough-in-without";
  return stage === "final" ? "final" : "existing";
};
