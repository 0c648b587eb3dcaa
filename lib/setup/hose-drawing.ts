import { type GaugeChannel, gaugeChannels, type TapPoint } from "./gauge-channels.ts";
import type { FanConnection, SetupAnswers, Standpoint } from "./setup-answers.ts";
import { TEST_TRAITS } from "./test-traits.ts";

/** A point of the drawing: 0 to 100 from left to right and from top to bottom. */
export interface Point {
  x: number;
  y: number;
}

/** A place with its own air. */
export interface DrawnArea {
  id: "outside" | "attic" | "house" | "under" | "garage";
  label: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

export type DrawnPart =
  | "tap"
  | "register"
  | "grille"
  | "air-handler"
  | "plenum"
  | "duct-fan"
  | "house-fan"
  | "flow-straightener"
  | "flow-restrictor"
  | "barrier"
  | "open-door"
  | "person"
  | "pan"
  | "thermometer"
  | "signal-port"
  | "reference-port";

export interface DrawnNode extends Point {
  id: string;
  part: DrawnPart;
  label: string;
  /** A register under its cover, a port without a hose. */
  state?: "covered" | "open";
}

/** A pressure hose. The reference hose is drawn another way than the signal hose, not in another color alone. */
export interface DrawnHose {
  id: string;
  from: string;
  to: string;
  role: "signal" | "reference";
  channelId: GaugeChannel["id"];
  label: string;
}

/** Sheet metal, flexible duct to the fan, or the way the fan blows. */
export interface DrawnDuct {
  from: string;
  to: string;
  kind: "duct" | "flexible-duct" | "air-flow";
}

/** A set-up as data; whoever draws it decides how it looks. */
export interface HoseDrawing {
  areas: readonly DrawnArea[];
  nodes: readonly DrawnNode[];
  ducts: readonly DrawnDuct[];
  hoses: readonly DrawnHose[];
  channels: readonly GaugeChannel[];
}

const AREAS: readonly DrawnArea[] = [
  { id: "outside", label: "Outdoors", x: 0, y: 0, width: 100, height: 100 },
  { id: "attic", label: "Attic", x: 16, y: 8, width: 60, height: 22 },
  { id: "house", label: "Rooms", x: 16, y: 30, width: 60, height: 46 },
  { id: "under", label: "Crawlspace or basement", x: 16, y: 76, width: 60, height: 16 },
  { id: "garage", label: "Garage", x: 76, y: 44, width: 18, height: 32 },
];

const PERSON: Readonly<Record<Standpoint, Point>> = {
  house: { x: 66, y: 52 },
  attic: { x: 68, y: 11 },
  crawlspace: { x: 66, y: 78 },
  basement: { x: 66, y: 78 },
  garage: { x: 85, y: 54 },
  outdoors: { x: 8, y: 40 },
};

/** Where the test fan joins; it stands in the rooms straight below. */
const JOINS: Readonly<Record<FanConnection, { node: string; x: number }>> = {
  "central-return": { node: "return-grille", x: 28 },
  "air-handler-cabinet": { node: "air-handler", x: 42 },
  "supply-plenum": { node: "supply-plenum", x: 50 },
  "branch-register": { node: "register-1", x: 60 },
};

/**
 * The set-up as a cut through a house: ducts in the attic, the gauge where the person stands, every hose from its tap to
 * its port. Positions are in hundredths of the drawing. Source: own-method.
 */
export function hoseDrawing(answers: SetupAnswers): HoseDrawing {
  const channels = gaugeChannels(answers);
  const person = PERSON[answers.personAt];
  const ports = channels.flatMap((channel, index) => portsOf(channel, index, person));
  const nodes = [
    ...ductNodes(answers),
    ...fanNodes(answers),
    ...tapNodes(channels, JOINS[answers.fanConnection].x),
    { id: "person", part: "person" as const, label: "You and the gauge", ...person },
    ...ports,
  ];
  const hoses = channels.flatMap((channel) => hosesOf(channel));
  return { areas: AREAS, nodes, ducts: drawnDucts(answers), hoses, channels };
}

function ductNodes({ testKind }: SetupAnswers): DrawnNode[] {
  const { sealsRegisters } = TEST_TRAITS[testKind];
  const state = sealsRegisters ? ("covered" as const) : ("open" as const);
  return [
    { id: "return-grille", part: "grille", label: "Central return", x: 28, y: 30, state },
    { id: "return-plenum", part: "plenum", label: "Return plenum", x: 34, y: 20 },
    { id: "air-handler", part: "air-handler", label: "Air handler", x: 42, y: 20 },
    { id: "supply-plenum", part: "plenum", label: "Supply plenum", x: 50, y: 20 },
    { id: "register-1", part: "register", label: "Register", x: 60, y: 30, state },
    { id: "register-2", part: "register", label: "Register", x: 72, y: 30, state },
    ...(testKind.startsWith("side-leakage")
      ? [{ id: "barrier", part: "barrier" as const, label: "Blank between the sides", x: 38, y: 20 }]
      : []),
    ...(testKind === "matched-pressure"
      ? [{ id: "barrier", part: "barrier" as const, label: "Return ducts blanked off", x: 31, y: 24 }]
      : []),
    ...(testKind === "temperature-rise"
      ? [
          { id: "thermometer-return", part: "thermometer" as const, label: "Return air", x: 34, y: 16 },
          { id: "thermometer-supply", part: "thermometer" as const, label: "Supply air", x: 52, y: 16 },
        ]
      : []),
  ];
}

/** The duct fan with what stands before its inlet, the house fan, the open door. */
function fanNodes({ testKind, direction, fan, fanConnection }: SetupAnswers): DrawnNode[] {
  const { usesDuctFan, usesHouseFan, outsideDoor } = TEST_TRAITS[testKind];
  const nodes: DrawnNode[] = [];
  if (usesDuctFan) {
    const { x } = JOINS[fanConnection];
    nodes.push({ id: "duct-fan", part: "duct-fan", label: "Duct fan", x, y: 58 });
    const isDuctSide = (direction === "pulling") === ((fan?.restrictorSide ?? "inlet") === "inlet");
    nodes.push({ id: "restrictor", part: "flow-restrictor", label: "Flow restrictor", x, y: isDuctSide ? 53 : 64 });
    if (direction === "pulling" && fan?.needsFlowStraightenerWhenPulling !== false) {
      nodes.push({ id: "flow-straightener", part: "flow-straightener", label: "Flow straightener", x, y: 47 });
    }
  }
  if (usesHouseFan) nodes.push({ id: "house-fan", part: "house-fan", label: "House fan in the door", x: 16, y: 64 });
  if (outsideDoor === "open") nodes.push({ id: "open-door", part: "open-door", label: "Door open", x: 16, y: 68 });
  return nodes;
}

function drawnDucts({ testKind, direction, fanConnection }: SetupAnswers): DrawnDuct[] {
  const { usesDuctFan, usesHouseFan } = TEST_TRAITS[testKind];
  const chain = ["return-grille", "return-plenum", "air-handler", "supply-plenum"];
  const ducts: DrawnDuct[] = chain.slice(1).map((to, index) => ({ from: chain[index]!, to, kind: "duct" }));
  for (const to of ["register-1", "register-2"]) ducts.push({ from: "supply-plenum", to, kind: "duct" });
  const isPushing = direction === "pushing";
  if (usesDuctFan) {
    const joins = JOINS[fanConnection].node;
    ducts.push({ from: "duct-fan", to: joins, kind: "flexible-duct" });
    ducts.push({ from: isPushing ? "duct-fan" : joins, to: isPushing ? joins : "duct-fan", kind: "air-flow" });
  }
  if (usesHouseFan && testKind !== "delta-q") {
    ducts.push({
      from: isPushing ? "outside" : "house-fan",
      to: isPushing ? "house-fan" : "outside",
      kind: "air-flow",
    });
  }
  return ducts;
}

const TAPS: Readonly<Record<TapPoint, Point & { label: string }>> = {
  "supply-plenum": { x: 50, y: 24, label: "Tap in the supply plenum" },
  "return-plenum": { x: 34, y: 25, label: "Tap in the return plenum" },
  house: { x: 52, y: 46, label: "Air of the rooms" },
  outside: { x: 90, y: 34, label: "Outdoors, out of the wind" },
  zone: { x: 24, y: 84, label: "The zone" },
  room: { x: 22, y: 40, label: "Under the door of the room" },
  pan: { x: 72, y: 34, label: "Pan over the register" },
  "combustion-zone": { x: 24, y: 70, label: "Room of the appliance" },
  // From the middle of the fan.
  "fan-flow-tap": { x: 4, y: 58, label: "Flow tap of the fan" },
  "fan-duct-side": { x: 4, y: 42, label: "Flexible duct before the fan" },
  "fan-surroundings": { x: 8, y: 66, label: "Air around the fan" },
};

export const tapNodeId = (tap: TapPoint): string => `tap-${tap}`;

/** One node for each air that a hose reaches; a port left open needs none. */
function tapNodes(channels: readonly GaugeChannel[], fanX: number): DrawnNode[] {
  const used = new Set(
    channels.flatMap(({ signal, reference, isReferencePortOpen }) =>
      isReferencePortOpen ? [signal] : [signal, reference],
    ),
  );
  const placed = (tap: TapPoint) => (tap.startsWith("fan-") ? { ...TAPS[tap], x: fanX + TAPS[tap].x } : TAPS[tap]);
  return [...used].map((tap) => ({ id: tapNodeId(tap), part: tap === "pan" ? "pan" : "tap", ...placed(tap) }));
}

function portsOf({ id, label, isReferencePortOpen }: GaugeChannel, index: number, person: Point): DrawnNode[] {
  const y = person.y + 4 + 5 * index;
  return [
    { id: `${id}-signal`, part: "signal-port", label: `${label}: signal port`, x: person.x - 4, y },
    {
      id: `${id}-reference`,
      part: "reference-port",
      label: isReferencePortOpen ? `${label}: reference port, left open` : `${label}: reference port`,
      x: person.x + 4,
      y,
      ...(isReferencePortOpen ? { state: "open" as const } : {}),
    },
  ];
}

function hosesOf({ id, label, signal, reference, isReferencePortOpen }: GaugeChannel): DrawnHose[] {
  const hose = (role: DrawnHose["role"], tap: TapPoint): DrawnHose => ({
    id: `${id}-${role}-hose`,
    from: tapNodeId(tap),
    to: `${id}-${role}`,
    role,
    channelId: id,
    label: `${label}: ${role} hose from ${TAPS[tap].label.toLowerCase()}`,
  });
  return [hose("signal", signal), ...(isReferencePortOpen ? [] : [hose("reference", reference)])];
}
