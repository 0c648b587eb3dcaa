import { fanBlades } from "../fan-blades.ts";
import { coordinate as c, isCompact, type PlainShape } from "../scene.ts";
import type { AirHandler } from "./air-handlers.ts";
import type { DuctGroup } from "./duct-group.ts";
import type { DuctLayout } from "./duct-layout.ts";
import type { HouseFrame } from "./house-frame.ts";
import { lanePath } from "./lanes.ts";

/** The line around a return duct: air on its way back is drawn hollow, air on its way out is drawn full. */
const HOLLOW_LINE = 1.6;

/** Lanes overlap by this much, so that no hairline of paper shows between them at any scale. */
const SEAM = 0.8;

/** Ribbons of air and the machines that move it. */
export function drawDucts({ layout, frame }: { layout: DuctLayout; frame: HouseFrame }): PlainShape[] {
  const returns = layout.groups.filter(({ side }) => side === "return");
  const supplies = layout.groups.filter(({ side }) => side === "supply");
  return [
    ...returns.flatMap(drawReturn),
    ...supplies.flatMap(drawSupply),
    ...layout.groups.flatMap((group) => drawOpenings(group)),
    ...layout.airHandlers.flatMap((handler) => drawAirHandler({ handler, frame })),
  ];
}

function drawSupply({ lanes }: DuctGroup): PlainShape[] {
  return [
    ...lanes.map(
      (lane): PlainShape => ({ kind: "path", d: lanePath(lane), stroke: "card", strokeWidth: lane.width + 3 }),
    ),
    ...lanes.map(
      (lane): PlainShape => ({ kind: "path", d: lanePath(lane), stroke: "kept", strokeWidth: lane.width + SEAM }),
    ),
  ];
}

function drawReturn({ lanes }: DuctGroup): PlainShape[] {
  return [
    ...lanes.map(
      (lane): PlainShape => ({ kind: "path", d: lanePath(lane), stroke: "kept", strokeWidth: lane.width + SEAM }),
    ),
    ...lanes.map(
      (lane): PlainShape => ({
        kind: "path",
        d: lanePath(lane),
        stroke: "kept-tint",
        strokeWidth: Math.max(0.8, lane.width - 2 * HOLLOW_LINE),
      }),
    ),
  ];
}

/** A grille where air enters or leaves a room. */
function drawOpenings({ lanes, side }: DuctGroup): PlainShape[] {
  return lanes.map((lane): PlainShape => {
    const end = lane.points[lane.points.length - 1] ?? { x: 0, y: 0 };
    const before = lane.points.findLast((point) => point.x !== end.x || point.y !== end.y) ?? end;
    const half = Math.max(4.5, lane.width / 2 + 3);
    const isLevel = before.y === end.y;
    const d = isLevel
      ? `M${c(end.x)} ${c(end.y - half)}l0 ${c(2 * half)}`
      : `M${c(end.x - half)} ${c(end.y)}l${c(2 * half)} 0`;
    return {
      kind: "path",
      d,
      stroke: "ink",
      strokeWidth: 3,
      ...(side === "return" ? { dash: [3, 1.6] as const } : {}),
    };
  });
}

function drawAirHandler({ handler, frame }: { handler: AirHandler; frame: HouseFrame }): PlainShape[] {
  const { x, y, width, height } = handler.box;
  const r = isCompact(frame) ? 8 : 11;
  const cx = x + width / 2;
  const cy = y + height / 2;
  const shapes: PlainShape[] = [
    { kind: "rect", ...handler.box, radius: 3, fill: "card", stroke: "ink", strokeWidth: 1.8 },
    { kind: "circle", cx, cy, r, fill: "kept-tint", stroke: "ink", strokeWidth: 1.3 },
    { kind: "path", d: fanBlades({ cx, cy, r: r - 1.5 }), fill: "ink" },
  ];
  if (handler.posture === "upright" && handler.placeKind === "conditioned" && y + height < frame.floorY - 8) {
    const legs = `M${c(x + 4)} ${c(y + height)}L${c(x + 4)} ${c(frame.floorY)}M${c(x + width - 4)} ${c(y + height)}L${c(x + width - 4)} ${c(frame.floorY)}`;
    shapes.unshift({ kind: "path", d: legs, stroke: "ink", strokeWidth: 1.1 });
  }
  if (handler.placeKind === "outside") {
    shapes.unshift({
      kind: "rect",
      x: x - 4,
      y: y + height,
      width: width + 8,
      height: Math.max(2, frame.gradeY - y - height),
      fill: "hairline",
      stroke: "ink",
      strokeWidth: 0.8,
    });
  }
  return shapes;
}
