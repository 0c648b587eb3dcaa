import type { Side } from "#lib/job/duct-system.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { isCompact } from "../scene.ts";
import { type AirHandler, regionOf } from "./air-handlers.ts";
import type { GroupPlan } from "./duct-group.ts";
import { type HouseFrame, isUnderFloor } from "./house-frame.ts";
import type { Point } from "./lanes.ts";

/** What leaves the air handler together: one side, one direction. */
export interface Port {
  side: Side;
  heading: 1 | -1;
  /** All its lanes together. */
  width: number;
  /** Whether the other direction leaves beside it. */
  splits: boolean;
  plans: readonly GroupPlan[];
}

interface Route {
  axis: Point[];
  /** A short way that ends in one opening and has no trunk. */
  fixedOpening?: Point;
}

interface RouteInput {
  frame: HouseFrame;
  handler: AirHandler;
  kind: PlaceKind;
  port: Port;
}

/** The way from the air handler to where the trunk starts: one of a few shapes, by where the two of them are. */
export function axisToTrunk(route: RouteInput): Route {
  const { handler, kind, port } = route;
  if (kind === "garage" || kind === "outside") return sidewaysRoute(route);
  if (port.side === "return" && (kind === "conditioned" || kind === "joist-space")) return roomReturn(route);
  if (handler.posture === "beside-the-house") return throughTheWall(route);
  return handler.posture === "lying" ? fromItsEnd(route) : fromItsTop(route);
}

/** The middle line of a trunk whose room-facing edge is given. */
function trunkAxisY({
  frame,
  kind,
  width,
  above = 0,
}: {
  frame: HouseFrame;
  kind: PlaceKind;
  width: number;
  above?: number;
}) {
  const region = regionOf(frame, kind);
  const away = region.opens === "down" ? -1 : 1;
  return region.trunkEdgeY + away * (width / 2 + above);
}

/** An upright air handler: ducts leave at the top, or at the bottom when they lie under the floor. */
function fromItsTop({ frame, handler, kind, port }: RouteInput): Route {
  const { box } = handler;
  const goesDown = isUnderFloor(kind) && handler.placeKind !== "basement";
  const portY = goesDown ? box.y + box.height : box.y;
  const y = trunkAxisY({ frame, kind, width: port.width });
  const middle = box.x + box.width / 2;
  if (handler.placeKind === "basement" && kind === "basement" && port.side === "return") {
    const lowY = box.y + box.height - port.width / 2 - 4;
    const x = box.x - port.width / 2 - 10;
    return {
      axis: [
        { x: box.x, y: lowY },
        { x, y: lowY },
        { x, y },
      ],
    };
  }
  const sharesPort = port.plans.some((plan) => plan.side !== port.side && plan.kind === kind);
  const shift = port.splits ? (port.heading * port.width) / 2 : sharesPort ? port.heading * (port.width / 2 + 1.5) : 0;
  const x = middle + shift;
  return {
    axis: [
      { x, y: portY },
      { x, y },
    ],
  };
}

/** A lying air handler: supply leaves at its right end, return comes in at its left. */
function fromItsEnd({ frame, handler, kind, port }: RouteInput): Route {
  const { box } = handler;
  const isSupply = port.side === "supply";
  const portX = isSupply ? box.x + box.width : box.x;
  const others = port.plans.filter((plan) => plan.side === port.side && plan.kind !== kind);
  const isHome = kind === handler.placeKind;
  const up = kind === "attic" ? -1 : 1;
  const aside = others.length > 0 ? (isHome ? -up : up) * (box.height / 4) : 0;
  const y = box.y + box.height / 2 + (isHome && others.length === 0 ? 0 : aside);
  if (isHome)
    return {
      axis: [
        { x: portX, y },
        { x: portX + port.heading * 6, y },
      ],
    };
  const turnX = portX + port.heading * (12 + port.width / 2);
  return {
    axis: [
      { x: portX, y },
      { x: turnX, y },
      { x: turnX, y: trunkAxisY({ frame, kind, width: port.width }) },
    ],
  };
}

/** From the garage or the yard: through the wall, then up or down just inside it. */
function throughTheWall({ frame, handler, kind, port }: RouteInput): Route {
  const { box } = handler;
  const isGarage = handler.placeKind === "garage";
  const isSupply = port.side === "supply";
  const wallX = isGarage ? frame.right : frame.left;
  const y = trunkAxisY({ frame, kind, width: port.width, above: isSupply ? 0 : 30 });
  const inside = wallX + port.heading * (isSupply ? 12 + port.width / 2 : 44 + port.width / 2);
  if (isGarage && isSupply) {
    const garageY = (frame.garage?.y ?? box.y) + 10 + port.width / 2;
    const x = box.x + box.width / 2;
    return {
      axis: [
        { x, y: box.y },
        { x, y: garageY },
        { x: inside, y: garageY },
        { x: inside, y },
      ],
    };
  }
  const portX = isGarage ? box.x : box.x + box.width;
  const portY = isSupply ? box.y + port.width / 2 + 3 : box.y + box.height - port.width / 2 - 3;
  return {
    axis: [
      { x: portX, y: portY },
      { x: inside, y: portY },
      { x: inside, y },
    ],
  };
}

/** A return grille in a room: the shortest way into the air handler. */
function roomReturn({ frame, handler, port }: RouteInput): Route {
  const { box } = handler;
  const half = port.width / 2;
  const reach = isCompact(frame) ? 13 : 20;
  if (handler.posture === "lying") {
    const isAttic = handler.placeKind === "attic";
    const x = box.x - half - 9;
    const y = box.y + box.height / 2;
    const opening = { x, y: isAttic ? frame.eaveY : frame.floorY };
    return { axis: [{ x: box.x, y }], fixedOpening: opening };
  }
  const goesRight = handler.placeKind === "outside";
  const lowY = box.y + box.height - half - 4;
  if (handler.placeKind === "basement") {
    return { axis: [{ x: box.x, y: lowY }], fixedOpening: { x: box.x - half - 10, y: frame.floorY } };
  }
  if (handler.posture === "beside-the-house") {
    // Just past the supply ducts that come through the same wall.
    const inside = 22 + port.width + half;
    const x = goesRight ? frame.left + inside : frame.right - inside;
    const portX = goesRight ? box.x + box.width : box.x;
    return { axis: [{ x: portX, y: lowY }], fixedOpening: { x, y: lowY - half - 18 } };
  }
  const supplyGoesDown = port.plans.some((plan) => plan.side === "supply" && isUnderFloor(plan.kind));
  const y = supplyGoesDown ? box.y + half + 4 : lowY;
  return {
    axis: [{ x: box.x, y }],
    fixedOpening: { x: box.x - half - reach, y: y - half - (isCompact(frame) ? 14 : 20) },
  };
}

/** Ducts in the garage or the yard: out, along the wall, and back in through it. */
function sidewaysRoute({ frame, handler, kind, port }: RouteInput): Route {
  const { box } = handler;
  const region = regionOf(frame, kind);
  const isGarage = kind === "garage";
  const wallX = isGarage ? frame.right : frame.left;
  const out = isGarage ? 1 : -1;
  const edge = isGarage ? region.box.x + region.box.width : region.box.x;
  const x = wallX + (edge - wallX) * (port.side === "supply" ? 0.42 : 0.78);
  const topY = region.trunkEdgeY + (port.side === "supply" ? 0 : port.width + 6);
  const opening = { x: wallX - out * 4, y: topY };
  if (handler.placeKind === kind) {
    const fromX = box.x + box.width / 2 + (port.side === "supply" ? out : -out) * (box.width / 5);
    return {
      axis: [
        { x: fromX, y: box.y },
        { x: fromX, y: topY },
      ],
      fixedOpening: opening,
    };
  }
  const soffitY = regionOf(frame, "conditioned").trunkEdgeY - 8 - (port.side === "supply" ? 0 : port.width + 4);
  const fromX = box.x + box.width / 2;
  const backY = topY + (isCompact(frame) ? 22 : 30);
  return {
    axis: [
      { x: fromX, y: box.y },
      { x: fromX, y: soffitY },
      { x, y: soffitY },
      { x, y: backY },
    ],
    fixedOpening: { x: wallX - out * 4, y: backY },
  };
}
