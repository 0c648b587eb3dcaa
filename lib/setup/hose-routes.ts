import { type Point, TAP_PLACES } from "./drawing-places.ts";
import type { GaugeChannel, TapPoint } from "./gauge-channels.ts";
import type { Standpoint } from "./setup-answers.ts";

/** The gauge of a drawing: its frame, and where the ports of each channel are. */
export interface GaugeBox {
  left: number;
  right: number;
  top: number;
  bottom: number;
  signalX: number;
  referenceX: number;
  rowsY: readonly number[];
}

/** A hose with its way from the tap to its port, in right angles. */
export interface HoseRoute {
  channel: GaugeChannel;
  role: "signal" | "reference";
  tap: TapPoint;
  tapLabel: string;
  path: readonly Point[];
}

/** From the gauge to the nearest hose, and from one hose to the next. */
const FIRST_LANE = 2;
const LANE_STEP = 1.4;

/** Hoses hang this far below the ceiling. */
const UNDER_CEILING = 43;

interface Course {
  row: number;
  port: Point;
  laneX: number;
  personAt: Standpoint;
  fanX: number;
}

/**
 * The way of each hose of a test. Hoses come up to the gauge in lanes, signal at its left and reference at its right, so
 * that two hoses cross at right angles where they must and never run on top of each other. Source: own-method.
 */
export function hoseRoutes({
  channels,
  personAt,
  gauge,
  fanX,
}: {
  channels: readonly GaugeChannel[];
  personAt: Standpoint;
  gauge: GaugeBox;
  fanX: number;
}): HoseRoute[] {
  return channels.flatMap((channel, row) => {
    const route = (role: HoseRoute["role"], tap: TapPoint): HoseRoute => {
      const isSignal = role === "signal";
      const port = { x: isSignal ? gauge.signalX : gauge.referenceX, y: gauge.rowsY[row]! };
      // In the attic hoses come from below, so the upper channels take the outer lanes.
      const isOuter = personAt === "attic" && isSignal;
      const place = isSignal ? row : channels.slice(0, row).filter((each) => !each.isReferencePortOpen).length;
      const lane = FIRST_LANE + LANE_STEP * (isOuter ? channels.length - 1 - place : place);
      const laneX = isSignal ? gauge.left - lane : gauge.right + lane;
      const path = pathOf(tap, role, { row, port, laneX, personAt, fanX });
      return { channel, role, tap, tapLabel: TAP_PLACES[tap].label, path };
    };
    return [
      ...(channel.isSignalPortOpen ? [] : [route("signal", channel.signal)]),
      ...(channel.isReferencePortOpen ? [] : [route("reference", channel.reference)]),
    ];
  });
}

function pathOf(tap: TapPoint, role: HoseRoute["role"], course: Course): Point[] {
  const { port, laneX, personAt, row, fanX } = course;
  const { leaves, at, isAtFan } = TAP_PLACES[tap];
  const start = isAtFan && at ? { ...at, x: fanX + at.x } : at;
  if (leaves === "hanging" || !start) return hanging(role, course);
  if (tap === "outside" && personAt === "attic") return [{ ...start, y: port.y }, port];
  const isRoomGauge = personAt === "house" || personAt === "garage";
  const turnY = leaves === "level" ? start.y : isRoomGauge ? UNDER_CEILING + 2 * row : port.y;
  return corners([start, { x: start.x, y: turnY }, { x: laneX, y: turnY }, { x: laneX, y: port.y }, port]);
}

/** An end that hangs in the rooms, as near to the gauge as the rooms are. */
function hanging(role: HoseRoute["role"], { personAt, laneX, port, row }: Course): Point[] {
  if (personAt === "garage" || personAt === "outdoors") {
    const start = { x: (role === "signal" ? 76 : 72) - 5 * row, y: (role === "signal" ? 37 : 42) + 2 * row };
    return corners([start, { x: laneX, y: start.y }, { x: laneX, y: port.y }, port]);
  }
  const startY = { house: 38 + 5 * row, attic: 44 + 5 * row, crawlspace: 67 - 5 * row, basement: 67 - 5 * row }[
    personAt
  ];
  return [{ x: laneX, y: startY }, { x: laneX, y: port.y }, port];
}

/** Without points that lie on top of each other or on a straight line. */
function corners(points: readonly Point[]): Point[] {
  const apart = points.filter((point, i) => i === 0 || point.x !== points[i - 1]!.x || point.y !== points[i - 1]!.y);
  return apart.filter((point, i) => {
    const [before, after] = [apart[i - 1], apart[i + 1]];
    if (!before || !after) return true;
    const isStraight = (before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y);
    return !isStraight;
  });
}
