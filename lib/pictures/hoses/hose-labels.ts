import type { DrawnNode, HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { type Box, placeLabel, textBox } from "../boxes.ts";
import { coordinate as c, type PlainShape, type TextShape } from "../scene.ts";
import type { HoseFrame } from "./hose-frame.ts";

/** Names of places and parts, each where it covers neither a hose nor another name. */
export function hoseLabels(drawing: HoseDrawing, frame: HoseFrame): PlainShape[] {
  const taken = [...hoseBoxes(drawing, frame), ...partBoxes(drawing, frame)];
  const sheet = { x: 2, y: 2, width: frame.width - 4, height: frame.houseBottom - 4 };
  const placed: PlainShape[] = [];
  const names: Box[] = [];
  const blank = drawing.nodes.find(({ part }) => part === "barrier");
  if (blank) {
    const { text, line, room } = blankLabel(blank, frame);
    placed.push(line, text);
    taken.push(room);
    names.push(textBox(text));
  }
  for (const candidates of wishes(drawing, frame)) {
    // Names of places keep further off the others, so that two names never read as one.
    const isOfPlace = candidates[0]?.fill === "soft";
    const near = isOfPlace ? names.map(({ x, ...box }) => ({ ...box, x: x - 7, width: box.width + 14 })) : names;
    const label = placeLabel({ candidates, taken: [...taken, ...near], sheet, margin: 1 });
    if (!label) continue;
    placed.push(label);
    names.push(textBox(label));
  }
  return placed;
}

/**
 * The name of a blank stands above the names of what is beside it, with a line from the one to the other: whoever sets
 * the blank must see between which parts it goes.
 */
function blankLabel(node: DrawnNode, frame: HoseFrame): { text: TextShape; line: PlainShape; room: Box } {
  const { x, y } = frame.at(node);
  const top = y - (frame.isCompact ? 15 : 20);
  // Above the one name that is beside it; near the eaves the slope of the roof leaves no room for that.
  const isNearEaves = node.x < 27;
  const foot = y - (frame.isCompact ? (isNearEaves ? 38 : 62) : isNearEaves ? 44 : 64);
  const text = frame.isCompact ? "Blanked off" : node.label;
  return {
    text: { kind: "text", text, size: frame.textSize, weight: 600, fill: "ink", x: c(x + 4), y: c(foot + 4) },
    line: { kind: "path", d: `M${c(x)} ${c(foot)}L${c(x)} ${c(top)}`, stroke: "ink", strokeWidth: 1.4 },
    room: { x: x - 2, y: foot, width: 4, height: top - foot },
  };
}

/** Each name with the places it would like, best first; the most needed names first. */
function wishes({ nodes, areas, channels }: HoseDrawing, frame: HoseFrame): TextShape[][] {
  const size = frame.textSize;
  const heightOf = (wanted: DrawnNode["part"]) => nodes.find(({ part }) => part === wanted)?.y;
  // The names of fan and restrictor keep apart: the lower part has its name lower.
  const isFanLower = (heightOf("flow-restrictor") ?? 0) < (heightOf("duct-fan") ?? 0);
  const hasThermometers = nodes.some(({ part }) => part === "thermometer");
  const partNames = [...nodes].sort(byNeed).flatMap((node) => {
    const text = partName(node, frame.isCompact);
    if (!text || (hasThermometers && node.part === "plenum")) return [];
    return isBesideHouse(node)
      ? besideHouse({ text, node, frame })
      : [around({ text, node, frame, isLow: node.part === "duct-fan" && isFanLower })];
  });
  const areaNames = areas.map(({ id, label, x, y, width }) => {
    const text = id === "under" && frame.isCompact ? "Below the floor" : label;
    const base = { kind: "text", text, size, fill: "soft" } as const;
    const top = frame.y(id === "outside" ? 3 : y) + size + 1;
    const left = frame.x(x) + 6;
    const right = frame.x(x + width) - 6;
    const below = { under: frame.lowest - 2, house: 71, attic: 32, garage: 70, outside: 69 }[id];
    const atLeft: TextShape[] = [top, frame.y(below)].map((at) => ({ ...base, x: c(left), y: c(at) }));
    const atRight = [top, frame.y(below)].map((at): TextShape => ({ ...base, x: c(right), y: c(at), anchor: "end" }));
    const inRoof: TextShape[] = [9, 14, 20].flatMap((at) =>
      [30, 46, 60].map((from): TextShape => ({ ...base, x: c(frame.x(from)), y: c(frame.y(at)) })),
    );
    const inRooms = [39, 44, 52, 60].flatMap((at) =>
      [14, 34, 62].map((from): TextShape => ({ ...base, x: c(frame.x(from)), y: c(frame.y(at)) })),
    );
    if (id === "attic") return inRoof;
    return id === "house" ? [...atLeft, ...inRooms, ...atRight] : [...atLeft, ...atRight];
  });
  const roomNames = channels.some(({ id }) => id === "room")
    ? [
        [{ kind: "text", x: c(frame.x(14)), y: c(frame.y(50)), text: "Room,", size, fill: "ink" } as const],
        [
          {
            kind: "text",
            x: c(frame.x(14)),
            y: c(frame.y(50) + size + 3),
            text: "door shut",
            size,
            fill: "ink",
          } as const,
        ],
        [{ kind: "text", x: c(frame.x(36)), y: c(frame.y(54)), text: "Hall", size, fill: "ink" } as const],
      ]
    : [];
  return [...partNames, ...roomNames, ...areaNames];
}

function partName({ part, label, state, id }: DrawnNode, isShort: boolean): string | undefined {
  switch (part) {
    case "duct-fan":
    case "air-handler":
    case "open-door":
    case "thermometer":
      return label;
    case "flow-restrictor":
      return isShort ? "Restrictor" : label;
    case "flow-straightener":
      return isShort ? "Straightener" : label;
    case "house-fan":
      return "House fan";
    case "plenum":
      return id === "supply-plenum" ? "Supply" : "Return";
    case "register":
      return state === "covered" ? "covered" : "open";
    case "pan":
      return "Pan";
    default:
      return undefined;
  }
}

/** What a hose goes to is named before what only stands there. */
const NAMED_FIRST: readonly DrawnNode["part"][] = ["thermometer", "plenum"];
const byNeed = (a: DrawnNode, b: DrawnNode): number =>
  Number(NAMED_FIRST.includes(b.part)) - Number(NAMED_FIRST.includes(a.part));

const isBesideHouse = ({ part }: DrawnNode): boolean => part === "house-fan" || part === "open-door";

/** Beside the house there is room above the door only, on a phone for one word a line. */
function besideHouse({ text, node, frame }: { text: string; node: DrawnNode; frame: HoseFrame }): TextShape[][] {
  const foot = node.part === "house-fan" ? frame.y(node.y) - frame.fanR - 8 : frame.y(48);
  const lines = frame.isCompact ? text.split(" ") : [text];
  return lines.map((line, i) => {
    const y = c(foot - (lines.length - 1 - i) * (frame.textSize + 2));
    return [{ kind: "text", x: c(frame.x(10.5)), y, text: line, size: frame.textSize, fill: "ink", anchor: "end" }];
  });
}

/** Right, left, above and below a part, near and a little further. */
function around({
  text,
  node,
  frame,
  isLow,
}: {
  text: string;
  node: DrawnNode;
  frame: HoseFrame;
  /** Whether its name rather stands below its middle. */
  isLow: boolean;
}): TextShape[] {
  const { x, y } = frame.at(node);
  const size = frame.textSize;
  const base = { kind: "text", text, size, fill: "ink" } as const;
  const isDuctPart = ["plenum", "air-handler", "thermometer"].includes(node.part);
  const aside = node.part === "register" ? 0 : frame.fanR + 5;
  const sides = (isLow ? [16, 9, 0, -9, -16] : [0, -9, 9, -16, 16]).flatMap((shift): TextShape[] => [
    { ...base, x: c(x + aside), y: c(y + 4 + shift) },
    { ...base, x: c(x - aside), y: c(y + 4 + shift), anchor: "end" },
  ]);
  const heights = isDuctPart ? [-24, -38, -52, -66, 27] : node.part === "register" ? [22, 34] : [-26, 32, 46];
  const scale = frame.isCompact ? 0.85 : 1;
  const above = heights.flatMap((by): TextShape[] => {
    const middle = { ...base, x: c(x), y: c(y + by * scale), anchor: "middle" } as const;
    if (!isDuctPart) return [middle];
    // Beside the line of a blank, or clear of the roof, a name of the ducts may begin or end near its part.
    return [middle, { ...middle, x: c(x + 6), anchor: "end" }, { ...middle, x: c(x - 6), anchor: "start" }];
  });
  return isDuctPart || node.part === "register" ? above : [...sides, ...above];
}

/** Every stretch of hose as a thin box, and its discs. */
function hoseBoxes({ hoses, gauge }: HoseDrawing, frame: HoseFrame): Box[] {
  const stretches = hoses.flatMap(({ path }) =>
    path.slice(1).map((point, i): Box => {
      const [a, b] = [frame.at(path[i]!), frame.at(point)];
      const pad = 3;
      return {
        x: Math.min(a.x, b.x) - pad,
        y: Math.min(a.y, b.y) - pad,
        width: Math.abs(a.x - b.x) + 2 * pad,
        height: Math.abs(a.y - b.y) + 2 * pad,
      };
    }),
  );
  const discs = hoses.map(({ path }) => {
    const { x, y } = frame.at(path[0]!);
    return { x: x - frame.discR, y: y - frame.discR, width: 2 * frame.discR, height: 2 * frame.discR };
  });
  return [...stretches, ...discs, boxBetween(frame, gauge.left, gauge.top, gauge.right, gauge.bottom)];
}

/** Parts, ducts and walls that a name must not cover. */
function partBoxes({ nodes, ducts }: HoseDrawing, frame: HoseFrame): Box[] {
  const round = nodes
    .filter(({ part }) => ["duct-fan", "house-fan", "flow-restrictor", "flow-straightener"].includes(part))
    .map((node) => {
      const { x, y } = frame.at(node);
      const tall = node.part.startsWith("flow-") ? 6 : frame.fanR;
      return { x: x - frame.fanR, y: y - tall, width: 2 * frame.fanR, height: 2 * tall };
    });
  const places = new Map(nodes.map((node) => [node.id, node]));
  const flexible = ducts
    .filter(({ kind }) => kind === "flexible-duct")
    .map(({ from, to }) => {
      const [a, b] = [places.get(from)!, places.get(to)!];
      return boxBetween(frame, a.x - 2, Math.min(a.y, b.y), a.x + 2, Math.max(a.y, b.y) + 10);
    });
  const grilles = nodes
    .filter(({ part }) => part === "register" || part === "grille")
    .map(({ x, y }) => boxBetween(frame, x - 4.5, y - 1, x + 4.5, y + 2));
  const flue = nodes.some(({ id }) => id === "combustion-signal") ? [boxBetween(frame, 15, 34, 23, 72)] : [];
  const stems = nodes
    .filter(({ part }) => part === "thermometer")
    .map(({ x, y }) => boxBetween(frame, x - 1, y - 5, x + 1, y));
  const lines = [
    boxBetween(frame, 25, 24, 50, 32),
    boxBetween(frame, 22, 26, 76, 30.5),
    boxBetween(frame, 22, 28, 24, 34),
    boxBetween(frame, 12, 33.5, 82, 34.5),
    boxBetween(frame, 12, 71.5, 82, 72.5),
    boxBetween(frame, 11.5, 34, 12.5, 98),
    boxBetween(frame, 81.5, 34, 82.5, 98),
  ];
  // The slopes of the roof, from eaves to ridge, as a stair of small boxes.
  const roof = Array.from({ length: 16 }, (_, step) => {
    const [from, to] = [8 + (21 * step) / 16, 8 + (21 * (step + 1)) / 16];
    const [high, low] = [34 - 2 * (step + 1), 34 - 2 * step];
    return [boxBetween(frame, from, high, to, low), boxBetween(frame, 94 - to, high, 94 - from, low)];
  }).flat();
  return [...round, ...flexible, ...grilles, ...flue, ...stems, ...lines, ...roof];
}

function boxBetween(frame: HoseFrame, left: number, top: number, right: number, bottom: number): Box {
  return {
    x: frame.x(left),
    y: frame.y(top),
    width: frame.x(right) - frame.x(left),
    height: frame.y(bottom) - frame.y(top),
  };
}
