import { AREAS, type DrawnArea, gaugeHalfWidth, JOINS, PERSON, type Point } from "./drawing-places.ts";
import { type GaugeChannel, gaugeChannels } from "./gauge-channels.ts";
import { type GaugeBox, type HoseRoute, hoseRoutes } from "./hose-routes.ts";
import type { SetupAnswers } from "./setup-answers.ts";
import { TEST_TRAITS } from "./test-traits.ts";

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
  /** Number at both of its ends. */
  number: number;
  /** Its way from the tap to the port, corner by corner. */
  path: readonly Point[];
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
  /** The gauge that the person holds, its channels one below the other. */
  gauge: GaugeBox;
}

/**
 * The set-up as a cut through a house: ducts in the attic, the gauge where the person stands, every hose from its tap to
 * its port. Positions are in hundredths of the drawing. Other channels than the test's own show hoses as somebody put
 * them. Source: own-method.
 */
export function hoseDrawing(
  answers: SetupAnswers,
  channels: readonly GaugeChannel[] = gaugeChannels(answers),
): HoseDrawing {
  const { personAt, fanConnection } = answers;
  const gauge = gaugeBox(PERSON[personAt], channels.length);
  const routes = hoseRoutes({ channels, personAt, gauge, fanX: JOINS[fanConnection].x });
  const nodes = [
    ...ductNodes(answers),
    ...fanNodes(answers),
    ...routes.map(tapNode),
    { id: "person", part: "person" as const, label: "You and the gauge", ...PERSON[personAt] },
    ...channels.flatMap((channel, row) => portsOf(channel, row, gauge)),
  ];
  return {
    areas: AREAS,
    nodes,
    ducts: drawnDucts(answers),
    hoses: routes.map(hoseOf),
    channels,
    gauge,
  };
}

function ductNodes({ testKind }: SetupAnswers): DrawnNode[] {
  const { sealsRegisters } = TEST_TRAITS[testKind];
  const state = sealsRegisters ? ("covered" as const) : ("open" as const);
  return [
    { id: "return-grille", part: "grille", label: "Central return", x: 23, y: 34, state },
    { id: "return-plenum", part: "plenum", label: "Return plenum", x: 28.5, y: 28 },
    { id: "air-handler", part: "air-handler", label: "Air handler", x: 35, y: 28 },
    { id: "supply-plenum", part: "plenum", label: "Supply plenum", x: 43, y: 28 },
    { id: "register-1", part: "register", label: "Register", x: 51, y: 34, state },
    { id: "register-2", part: "register", label: "Register", x: 74, y: 34, state },
    ...(testKind.startsWith("side-leakage")
      ? [{ id: "barrier", part: "barrier" as const, label: "Blank between the sides", x: 31.3, y: 28 }]
      : []),
    ...(testKind === "matched-pressure"
      ? [{ id: "barrier", part: "barrier" as const, label: "Return ducts blanked off", x: 25.2, y: 28 }]
      : []),
    ...(testKind === "temperature-rise"
      ? [
          { id: "thermometer-return", part: "thermometer" as const, label: "Return air", x: 28.5, y: 24 },
          { id: "thermometer-supply", part: "thermometer" as const, label: "Supply air", x: 46, y: 24 },
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
    nodes.push({ id: "restrictor", part: "flow-restrictor", label: "Flow restrictor", x, y: isDuctSide ? 51.5 : 65 });
    if (direction === "pulling" && fan?.needsFlowStraightenerWhenPulling !== false) {
      nodes.push({ id: "flow-straightener", part: "flow-straightener", label: "Flow straightener", x, y: 46 });
    }
  }
  if (usesHouseFan) nodes.push({ id: "house-fan", part: "house-fan", label: "House fan in the door", x: 12, y: 62 });
  if (outsideDoor === "open") nodes.push({ id: "open-door", part: "open-door", label: "Door open", x: 12, y: 62 });
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

/** Signal ports stand at the left of the gauge, reference ports at its right. */
function gaugeBox(person: Point, rowCount: number): GaugeBox {
  const half = gaugeHalfWidth(person);
  const rowsY = Array.from({ length: rowCount }, (_, row) => person.y + 6 + 6 * row);
  return {
    left: person.x - half,
    right: person.x + half,
    top: person.y,
    bottom: person.y + 3 + 6 * Math.max(1, rowCount),
    signalX: person.x - half + 2.6,
    referenceX: person.x + half - 2.6,
    rowsY,
  };
}

function portsOf(
  { id, label, isReferencePortOpen, isSignalPortOpen }: GaugeChannel,
  row: number,
  gauge: GaugeBox,
): DrawnNode[] {
  const y = gauge.rowsY[row]!;
  return [
    {
      id: `${id}-signal`,
      part: "signal-port",
      label: isSignalPortOpen ? `${label}: signal port, left open` : `${label}: signal port`,
      x: gauge.signalX,
      y,
      ...(isSignalPortOpen ? { state: "open" as const } : {}),
    },
    {
      id: `${id}-reference`,
      part: "reference-port",
      label: isReferencePortOpen ? `${label}: reference port, left open` : `${label}: reference port`,
      x: gauge.referenceX,
      y,
      ...(isReferencePortOpen ? { state: "open" as const } : {}),
    },
  ];
}

const tapNodeId = ({ channel, role }: HoseRoute): string => `${channel.id}-${role}-tap`;

function tapNode(route: HoseRoute): DrawnNode {
  const { tap, tapLabel, path } = route;
  return { id: tapNodeId(route), part: tap === "pan" ? "pan" : "tap", label: tapLabel, ...path[0]! };
}

function hoseOf(route: HoseRoute, index: number): DrawnHose {
  const { channel, role, tapLabel, path } = route;
  return {
    id: `${channel.id}-${role}-hose`,
    from: tapNodeId(route),
    to: `${channel.id}-${role}`,
    role,
    channelId: channel.id,
    label: `${channel.label}: ${role} hose from ${tapLabel.charAt(0).toLowerCase()}${tapLabel.slice(1)}`,
    number: index + 1,
    path,
  };
}
