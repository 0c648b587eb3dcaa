import type { DrawnNode, HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { fanBlades } from "../fan-blades.ts";
import { lanePath } from "../house/lanes.ts";
import { coordinate as c, type PlainShape } from "../scene.ts";
import type { HoseFrame } from "./hose-frame.ts";

interface Spot {
  x: number;
  y: number;
}

/** Ducts, equipment, registers under their covers, and the fans with what stands before and behind them. */
export function drawTestDucts(drawing: HoseDrawing, frame: HoseFrame): PlainShape[] {
  const nodes = new Map(drawing.nodes.map((node) => [node.id, node]));
  const spot = (id: string): Spot => frame.at(nodes.get(id)!);
  const metal = drawing.ducts.filter(({ kind }) => kind === "duct");
  const flexible = drawing.ducts.filter(({ kind }) => kind === "flexible-duct");
  return [
    ...ribbons(
      metal.map(({ from, to }) => elbow(spot(from), spot(to))),
      frame.isCompact ? 9 : 13,
    ),
    ...drawing.nodes.flatMap((node) => drawEquipment(node, frame)),
    ...flexible.flatMap(({ from, to }) => flexibleDuct({ from: spot(from), to: spot(to), frame })),
    ...drawing.nodes.flatMap((node) => drawFan(node, frame)),
    ...drawing.ducts
      .filter(({ kind }) => kind === "air-flow")
      .flatMap(({ from, to }) => airArrows({ from, to, spot, frame })),
  ];
}

/** Ducts run level under the roof and drop to their registers. */
function elbow(from: Spot, to: Spot): Spot[] {
  const [high, low] = from.y <= to.y ? [from, to] : [to, from];
  return high.y === low.y || high.x === low.x ? [from, to] : [high, { x: low.x, y: high.y }, low];
}

/** All outlines first, so that ducts that meet look like one. */
function ribbons(lines: readonly (readonly Spot[])[], width: number): PlainShape[] {
  const draw = (stroke: "kept" | "kept-tint", strokeWidth: number) =>
    lines.map(
      (points): PlainShape => ({ kind: "path", d: lanePath({ points, radii: [width * 0.7] }), stroke, strokeWidth }),
    );
  return [...draw("kept", width), ...draw("kept-tint", width - 3.2)];
}

function drawEquipment(node: DrawnNode, frame: HoseFrame): PlainShape[] {
  const { x, y } = frame.at(node);
  const unit = frame.x(1) - frame.x(0);
  switch (node.part) {
    case "plenum": {
      const half = unit * (node.id === "supply-plenum" ? 3.6 : 2.6);
      const tall = frame.isCompact ? 9 : 13;
      return [box(x, y, half, tall, "kept-tint", "kept")];
    }
    case "air-handler": {
      const tall = frame.isCompact ? 12 : 17;
      const r = frame.isCompact ? 8 : 11;
      return [
        box(x, y, unit * 3.4, tall, "card", "ink"),
        { kind: "circle", cx: c(x), cy: c(y), r, fill: "kept-tint", stroke: "ink", strokeWidth: 1.2 },
        { kind: "path", d: fanBlades({ cx: x, cy: y, r: r - 1.5 }), fill: "ink" },
      ];
    }
    case "register":
    case "grille":
      return drawRegister(node, { x, y }, frame);
    case "barrier":
      return [
        {
          kind: "rect",
          x: c(x - 3),
          y: c(y - (frame.isCompact ? 15 : 20)),
          width: 6,
          height: frame.isCompact ? 30 : 40,
          radius: 1.5,
          fill: "ink",
          stroke: "card",
          strokeWidth: 1.5,
        },
      ];
    case "thermometer":
      return [
        {
          kind: "path",
          d: `M${c(x)} ${c(y - 16)}L${c(x)} ${c(y + 6)}`,
          stroke: "ink",
          strokeWidth: 6,
          lineCap: "round",
        },
        {
          kind: "path",
          d: `M${c(x)} ${c(y - 15)}L${c(x)} ${c(y + 6)}`,
          stroke: "card",
          strokeWidth: 3,
          lineCap: "round",
        },
        { kind: "circle", cx: c(x), cy: c(y + 8), r: 5.5, fill: "ink" },
      ];
    default:
      return [];
  }
}

function box(
  x: number,
  y: number,
  half: number,
  tall: number,
  fill: "card" | "kept-tint",
  stroke: "ink" | "kept",
): PlainShape {
  return {
    kind: "rect",
    x: c(x - half),
    y: c(y - tall),
    width: c(2 * half),
    height: 2 * tall,
    radius: 3,
    fill,
    stroke,
    strokeWidth: 1.6,
  };
}

/** A line with slots; a cover is taped over it, past both ends. */
function drawRegister({ state, part }: DrawnNode, { x, y }: Spot, frame: HoseFrame): PlainShape[] {
  const half = (frame.isCompact ? 9 : 14) * (part === "grille" ? 1.25 : 1);
  const slots: PlainShape = {
    kind: "path",
    d: `M${c(x - half)} ${c(y + 1)}L${c(x + half)} ${c(y + 1)}`,
    stroke: "ink",
    strokeWidth: 4,
    dash: [3, 1.6],
  };
  if (state !== "covered") return [slots];
  const wide = half + 4;
  return [
    slots,
    {
      kind: "rect",
      x: c(x - wide),
      y: c(y + 3),
      width: c(2 * wide),
      height: 6,
      fill: "regained",
      stroke: "ink",
      strokeWidth: 1.2,
      pattern: "dotted",
    },
  ];
}

/** A ribbed hose as wide as an arm. */
function flexibleDuct({ from, to, frame }: { from: Spot; to: Spot; frame: HoseFrame }): PlainShape[] {
  const width = frame.isCompact ? 13 : 18;
  // Straight up from the fan, to the underside of what it joins.
  const under = to.y < frame.y(30) ? (frame.isCompact ? 11 : 15) : 3;
  const d = `M${c(from.x)} ${c(from.y)}L${c(from.x)} ${c(to.y + under)}`;
  return [
    { kind: "path", d, stroke: "ink", strokeWidth: width },
    { kind: "path", d, stroke: "card", strokeWidth: width - 3 },
    { kind: "path", d, stroke: "hairline", strokeWidth: width - 3, dash: [2, 3] },
  ];
}

function drawFan(node: DrawnNode, frame: HoseFrame): PlainShape[] {
  const { x, y } = frame.at(node);
  const r = frame.fanR;
  switch (node.part) {
    case "duct-fan":
    case "house-fan":
      return [
        { kind: "circle", cx: c(x), cy: c(y), r, fill: "card", stroke: "ink", strokeWidth: 2.4 },
        { kind: "path", d: fanBlades({ cx: x, cy: y, r: r - 3 }), fill: "ink" },
      ];
    case "flow-restrictor": {
      const half = r + 1;
      return [
        { kind: "path", d: `M${c(x - half)} ${c(y)}L${c(x + half)} ${c(y)}`, stroke: "ink", strokeWidth: 6 },
        {
          kind: "path",
          d: `M${c(x - half * 0.42)} ${c(y)}L${c(x + half * 0.42)} ${c(y)}`,
          stroke: "card",
          strokeWidth: 4,
        },
      ];
    }
    case "flow-straightener": {
      const [half, tall] = [r * 0.72, frame.isCompact ? 7 : 9];
      const ribs = [-0.66, -0.33, 0, 0.33, 0.66]
        .map((share) => `M${c(x + share * half)} ${c(y - tall)}L${c(x + share * half)} ${c(y + tall)}`)
        .join("");
      return [box(x, y, half, tall, "card", "ink"), { kind: "path", d: ribs, stroke: "ink", strokeWidth: 1.2 }];
    }
    default:
      return [];
  }
}

/** Arrow heads along the way of the test air. */
function airArrows({
  from,
  to,
  spot,
  frame,
}: {
  from: string;
  to: string;
  spot: (id: string) => Spot;
  frame: HoseFrame;
}): PlainShape[] {
  if (from === "outside" || to === "outside") {
    const fan = spot(from === "outside" ? to : from);
    const reach = frame.fanR + (frame.isCompact ? 12 : 22);
    const isIn = from === "outside";
    const sides = frame.isCompact ? [-1] : [-1, 1];
    return sides.map((side) => head({ x: fan.x + side * reach, y: fan.y }, isIn ? 1 : -1, 0));
  }
  const [start, end] = [spot(from), spot(to)];
  const isUp = end.y < start.y;
  const [top, bottom] = isUp ? [end.y, start.y] : [start.y, end.y];
  const fanIsStart = from === "duct-fan";
  const fan = fanIsStart ? start : end;
  const ways = [0.12, 0.3].map((share) => ({ x: start.x, y: top + share * (bottom - top) }));
  const open = { x: fan.x, y: fan.y + frame.fanR + (frame.isCompact ? 22 : 30) };
  return [...ways, open].map((at) => head(at, 0, isUp ? -1 : 1));
}

/** A solid arrow head that points along one axis. */
function head({ x, y }: Spot, dx: number, dy: number): PlainShape {
  const tip = { x: x + dx * 8, y: y + dy * 8 };
  const back = { x: x - dx * 4, y: y - dy * 4 };
  const side = { x: dy * 7.5, y: dx * 7.5 };
  return {
    kind: "path",
    d: `M${c(tip.x)} ${c(tip.y)}L${c(back.x + side.x)} ${c(back.y + side.y)}L${c(back.x - side.x)} ${c(back.y - side.y)}Z`,
    fill: "accent",
    stroke: "card",
    strokeWidth: 1.2,
  };
}
