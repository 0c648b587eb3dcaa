import type { Pascals } from "#lib/units/quantity.ts";
import type { SetupTestKind } from "./setup-answers.ts";

/** What a kind of test needs, which the rules and the drawing build on. */
export interface TestTraits {
  title: string;
  /** What the test tells, in one sentence. */
  purpose: string;
  usesDuctFan: boolean;
  usesHouseFan: boolean;
  sealsRegisters: boolean;
  airHandler: "off" | "running" | "off-then-running";
  /** A door or window to outside. */
  outsideDoor: "open" | "shut";
  filter: "out" | "as-used";
  usualTargetPa: Pascals;
}

const HOUSE_TEST = { usesDuctFan: false, usesHouseFan: true, outsideDoor: "shut", usualTargetPa: 50 } as const;
const DUCT_TEST = {
  usesDuctFan: true,
  sealsRegisters: true,
  airHandler: "off",
  filter: "out",
  usualTargetPa: 25,
} as const;
const RUNNING_TEST = {
  usesDuctFan: false,
  usesHouseFan: false,
  sealsRegisters: false,
  airHandler: "running",
  outsideDoor: "shut",
  filter: "as-used",
  usualTargetPa: 25,
} as const;

export const TEST_TRAITS: Readonly<Record<SetupTestKind, TestTraits>> = {
  "total-leakage": {
    ...DUCT_TEST,
    title: "Total leakage",
    purpose: "How much air leaves the ducts at 25 Pa, wherever it goes.",
    usesHouseFan: false,
    outsideDoor: "open",
  },
  "leakage-to-outside": {
    ...DUCT_TEST,
    title: "Leakage to outside",
    purpose: "How much duct air goes outdoors: with house and ducts at one pressure, leaks into the rooms rest.",
    usesHouseFan: true,
    outsideDoor: "shut",
  },
  "side-leakage": {
    ...DUCT_TEST,
    title: "Leakage of one side",
    purpose: "The total leakage of the supply or the return ducts alone.",
    usesHouseFan: false,
    outsideDoor: "open",
  },
  "side-leakage-to-outside": {
    ...DUCT_TEST,
    title: "Leakage of one side to outside",
    purpose: "How much air the supply or the return ducts alone lose to outdoors.",
    usesHouseFan: true,
    outsideDoor: "shut",
  },
  "blower-door-subtraction": {
    ...HOUSE_TEST,
    title: "Blower-door subtraction",
    purpose: "Leakage to outside as the difference of two house tests: rough, and blind to small leaks.",
    sealsRegisters: true,
    airHandler: "off",
    filter: "out",
  },
  "delta-q": {
    ...HOUSE_TEST,
    title: "Delta-Q",
    purpose: "Leakage to outside at operating pressures, from the house fan with the air handler on and off.",
    sealsRegisters: false,
    airHandler: "off-then-running",
    filter: "as-used",
  },
  "static-pressures": {
    ...RUNNING_TEST,
    title: "Operating static pressures",
    purpose: "How hard the blower works, and the pressure behind the leaks while it runs.",
  },
  "temperature-rise": {
    ...RUNNING_TEST,
    title: "Fan flow by temperature rise",
    purpose: "Air flow from the heat put in and how much warmer the air gets.",
  },
  "matched-pressure": {
    ...RUNNING_TEST,
    title: "Fan flow by matched pressure",
    purpose: "Air flow of the system, read on a calibrated fan that feeds the air handler.",
    usesDuctFan: true,
  },
  "pressure-pan": {
    ...HOUSE_TEST,
    title: "Pressure pan",
    purpose: "Which runs leak to outside: ranks the branches, does not size them.",
    sealsRegisters: false,
    airHandler: "off",
    filter: "out",
  },
  "zone-pressures": {
    ...HOUSE_TEST,
    title: "Zone pressures",
    purpose: "How far attic, crawlspace, basement or garage belong to outdoors.",
    sealsRegisters: false,
    airHandler: "off",
    filter: "as-used",
  },
  "room-to-hall": {
    ...RUNNING_TEST,
    title: "Room to hall, doors shut",
    purpose: "Which rooms get air in but have no way for it to go back.",
  },
  "combustion-safety": {
    ...RUNNING_TEST,
    title: "Combustion safety, before and after",
    purpose: "Whether fans and ducts can pull flue gas into the house, now and after the work.",
  },
};
