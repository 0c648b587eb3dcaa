import type { FanConnection, Standpoint } from "#lib/setup/setup-answers.ts";
import { DERIVED, DUCT_STANDARD, PRACTICE, RATING_STANDARD, type RuleContext, type SetupRule } from "./rule.ts";

export const CONNECTION_LABELS: Readonly<Record<FanConnection, string>> = {
  "central-return": "the central return grille",
  "air-handler-cabinet": "the air handler's cabinet",
  "supply-plenum": "the supply plenum",
  "branch-register": "a register at the end of a branch",
};

export const STANDPOINT_LABELS: Readonly<Record<Standpoint, string>> = {
  house: "in the rooms",
  attic: "in the attic",
  crawlspace: "in the crawlspace",
  basement: "in the basement",
  garage: "in the garage",
  outdoors: "outdoors",
};

const usesDuctFan = ({ traits }: RuleContext) => traits.usesDuctFan;

/** Fans, flow restrictor and hoses, in the order in which hands do them. */
export const CONNECT_RULES: readonly SetupRule[] = [
  {
    id: "fan-connection",
    phase: "connect",
    applies: usesDuctFan,
    step: ({ fanConnection }) => `Connect the duct fan to ${CONNECTION_LABELS[fanConnection]} and tape all edges.`,
    why: ({ testKind }) =>
      testKind === "matched-pressure"
        ? "The fan stands in for the return ducts: all air that the blower moves comes through it."
        : "At the largest opening nearest the air handler, normally the central return, all ducts come to one pressure. A branch end throttles the test air.",
    basis: PRACTICE,
  },
  {
    id: "fan-faces",
    phase: "connect",
    applies: usesDuctFan,
    step: ({ direction }) =>
      direction === "pushing"
        ? "Point the fan so that its outlet blows into the flexible duct; its inlet stays open to the room."
        : "Point the fan so that its inlet draws from the flexible duct; its outlet blows into the room.",
    why: ({ direction }) =>
      direction === "pushing" ? "Pushing: room air enters the ducts." : "Pulling: duct air comes out into the room.",
    basis: DERIVED,
  },
  {
    id: "flow-straightener",
    phase: "connect",
    applies: (context) => usesDuctFan(context) && context.direction === "pulling",
    step: ({ fan }) =>
      fan?.needsFlowStraightenerWhenPulling === false
        ? "No flow straightener: the fan's record says that it needs none. Keep the flexible duct straight all the same."
        : "Put the flow straightener between flexible duct and fan, the duct straight for its last feet.",
    why: ({ fan }) =>
      fan
        ? "By the fan's own record. Air that turns in the flexible duct upsets the flow tap."
        : "Most test fans need it when air reaches them through flexible duct. Enter your fan to follow its record.",
    basis: PRACTICE,
  },
  {
    id: "no-flow-straightener",
    phase: "connect",
    applies: (context) => usesDuctFan(context) && context.direction === "pushing",
    step: () => "No flow straightener: keep 2 ft of free room before the inlet.",
    why: () => "The inlet is open to the room, so the air arrives straight and the flow tap needs no help.",
    basis: PRACTICE,
  },
  {
    id: "restrictor-first",
    phase: "connect",
    applies: usesDuctFan,
    step: ({ fan }) =>
      `Fit the flow restrictor on the ${fan?.restrictorSide ?? "inlet"} side${fan ? ", as the fan's record says," : ""} before you close up; note which one.`,
    why: () => "Changing it later opens the set-up. A change in mid-test is recorded with the step.",
    basis: PRACTICE,
  },
  {
    id: "house-fan",
    phase: "connect",
    applies: ({ traits }) => traits.usesHouseFan,
    step: ({ direction, testKind }) =>
      testKind === "delta-q"
        ? "Set the house fan in a door frame, able to turn either way."
        : `Set the house fan in a door frame, ${direction === "pushing" ? "blowing in" : "blowing out"}.`,
    why: () => "It brings the house to the pressure that the test is read at.",
    basis: RATING_STANDARD,
  },
  {
    id: "duct-tap",
    phase: "connect",
    applies: ({ traits, testKind }) => traits.usesDuctFan || testKind === "blower-door-subtraction",
    step: ({ testKind, side }) => {
      const place = testKind.startsWith("side-leakage") && side === "return" ? "return plenum" : "supply plenum";
      return `Signal hose of the duct channel: into the ${place}, away from the fan, the end square to the air stream.`;
    },
    why: () =>
      "Beside the fan the air is fast and its pressure false; far from it stands the pressure that leaks feel.",
    basis: DUCT_STANDARD,
  },
  {
    id: "duct-reference-house",
    phase: "connect",
    applies: ({ traits, testKind }) => traits.usesDuctFan || testKind === "blower-door-subtraction",
    step: ({ personAt }) =>
      personAt === "house"
        ? "Reference port of the duct channel: leave it open, the gauge stands in the house."
        : `Reference hose of the duct channel: run it into the rooms; you stand ${STANDPOINT_LABELS[personAt]}.`,
    why: () =>
      "Duct pressure is read against the house, wherever the person stands; an attic has a pressure of its own.",
    basis: DUCT_STANDARD,
  },
  {
    id: "fan-tap",
    phase: "connect",
    applies: usesDuctFan,
    step: ({ fan, direction }) => {
      const isDuctSide =
        (fan?.tapReference[direction] ?? (direction === "pulling" ? "duct-side-air" : "")) === "duct-side-air";
      return isDuctSide
        ? "Fan channel: signal hose on the fan's flow tap, reference hose into the flexible duct just before the fan."
        : "Fan channel: signal hose on the fan's flow tap, reference taken from the air around the fan.";
    },
    why: ({ direction }) =>
      direction === "pulling"
        ? "The tap is read against the air that enters the fan; read against the room, the ducts' own pressure is added."
        : "The tap is read against the air that enters the fan, and that is the room's.",
    basis: PRACTICE,
  },
  {
    id: "house-to-outside",
    phase: "connect",
    applies: ({ traits, testKind }) => traits.usesHouseFan || testKind === "combustion-safety",
    step: ({ testKind }) =>
      testKind === "combustion-safety"
        ? "Signal port open in the appliance's room, reference hose outdoors, its end shielded from wind."
        : "House channel: signal from the rooms, away from the fan; reference hose outdoors, its end shielded from wind.",
    why: () => "The pressure that drives air through the shell is inside less outside.",
    basis: RATING_STANDARD,
  },
  {
    id: "static-taps",
    phase: "connect",
    applies: ({ testKind }) => testKind === "static-pressures",
    step: () =>
      "Static tips into the supply plenum and the return plenum, pointing into the air stream; reference: the house.",
    why: () => "A bare hose in moving air reads part of its speed. Supply shows plus, return minus.",
    basis: PRACTICE,
  },
  {
    id: "thermometers",
    phase: "connect",
    applies: ({ testKind }) => testKind === "temperature-rise",
    step: () =>
      "One thermometer in the return near the cabinet, two or more across the supply, out of sight of the burner.",
    why: () => "Radiant heat makes the rise too large and the flow too small; mixed air needs more than one point.",
    basis: PRACTICE,
  },
  {
    id: "pan",
    phase: "connect",
    applies: ({ testKind }) => testKind === "pressure-pan",
    step: () => "Signal hose on the pan, reference port open to the room; the pan tight over one register at a time.",
    why: () => "Behind a tight run the pan reads near 0; the more the run leaks to outside, the nearer 50 Pa.",
    basis: PRACTICE,
  },
  {
    id: "zone-hose",
    phase: "connect",
    applies: ({ testKind }) => testKind === "zone-pressures",
    step: () =>
      "Zone channel: signal from the house, reference hose into the zone through a small gap, sealed round it.",
    why: () => "House to zone near 0 means the zone is indoors; near the house's own pressure, outdoors.",
    basis: PRACTICE,
  },
  {
    id: "room-hose",
    phase: "connect",
    applies: ({ testKind }) => testKind === "room-to-hall",
    step: () => "Shut every room door. Signal hose under one door after another, the gauge in the hall.",
    why: () => "A room that is fed but cannot give back air rises above the hall and starves the return.",
    basis: PRACTICE,
  },
];
