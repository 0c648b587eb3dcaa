import type { PlaceKind } from "#lib/job/place.ts";
import { coordinate as c, type PlainShape } from "../scene.ts";
import { drawRooms } from "./draw-rooms.ts";
import { eavesOf, type HouseFrame, INSULATION_DEPTH } from "./house-frame.ts";
import type { HouseSectionInput } from "./house-section-input.ts";

/** The cut elements of a builder's section are drawn heavier than what is seen behind the cut. */
const CUT_LINE = 2.6;
const SEEN_LINE = 1.1;

/** The house itself, back to front: earth, rooms, roof, walls. No ducts yet. */
export function drawFrame({ input, frame }: { input: HouseSectionInput; frame: HouseFrame }): PlainShape[] {
  return [
    ...drawEarth(frame),
    ...drawUnderFloor({ input, frame }),
    ...drawGarage(frame),
    ...frame.storeys.map((room): PlainShape => ({ kind: "rect", ...room, fill: "card" })),
    ...drawRoof(frame),
    ...drawRooms({ input, frame }),
    ...drawWalls(frame),
  ];
}

function drawEarth({ width, gradeY, bottomY }: HouseFrame): PlainShape[] {
  let ticks = "";
  for (let x = 6; x < width - 12; x += 46) {
    ticks += `M${x} ${gradeY + 9}l5 -5M${x + 5} ${gradeY + 10}l6 -6M${x + 11} ${gradeY + 10}l5 -5`;
  }
  return [
    { kind: "rect", x: 0, y: gradeY, width, height: bottomY - gradeY, fill: "ground" },
    { kind: "path", d: ticks, stroke: "soft", strokeWidth: 0.9, opacity: 0.55 },
    { kind: "path", d: `M0 ${gradeY}L${width} ${gradeY}`, stroke: "ink", strokeWidth: 1.4 },
  ];
}

const FOUNDATION: Partial<Record<PlaceKind, "room" | "crawl" | "belly" | "slab">> = {
  basement: "room",
  "vented-crawlspace": "crawl",
  "unvented-crawlspace": "crawl",
  belly: "belly",
  "below-slab": "slab",
};

function drawUnderFloor({ input, frame }: { input: HouseSectionInput; frame: HouseFrame }): PlainShape[] {
  const { left, right, floorY, gradeY } = frame;
  const shapes: PlainShape[] = [];
  for (const [kind, region] of frame.regions) {
    const type = FOUNDATION[kind];
    const { x, y, width, height } = region.box;
    if (type === "room" || type === "crawl") {
      const walls = `M${c(x)} ${c(y)}L${c(x)} ${c(y + height)}L${c(x + width)} ${c(y + height)}L${c(x + width)} ${c(y)}`;
      shapes.push({ kind: "rect", x, y, width, height, fill: type === "room" ? "card" : "attic-air" });
      if (type === "room") shapes.push({ kind: "path", d: walls, stroke: "ink", strokeWidth: CUT_LINE + 2 });
      else {
        const stems = `M${c(x)} ${c(y)}L${c(x)} ${c(y + height + 3)}M${c(x + width)} ${c(y)}L${c(x + width)} ${c(y + height + 3)}`;
        shapes.push({ kind: "path", d: stems, stroke: "ink", strokeWidth: CUT_LINE + 2 });
        shapes.push(crawlFloor({ x, width, y: y + height, isSealed: kind === "unvented-crawlspace" }));
        if (kind === "vented-crawlspace") shapes.push(...vents({ x, width, y: floorY + (gradeY - floorY) / 2 }));
      }
    }
    if (type === "belly") {
      const sag = `M${c(x)} ${c(y)}L${c(x + 4)} ${c(y + height - 8)}Q${c(x + width / 2)} ${c(y + height + 8)} ${c(x + width - 4)} ${c(y + height - 8)}L${c(x + width)} ${c(y)}`;
      shapes.push({ kind: "path", d: `${sag}Z`, fill: "attic-air" });
      shapes.push({ kind: "path", d: sag, stroke: "ink", strokeWidth: 1.4, dash: [7, 2.5] });
    }
  }
  if (input.kind === "manufactured") shapes.push(...piers({ left, right, floorY, gradeY }));
  return shapes;
}

function crawlFloor({ x, width, y, isSealed }: { x: number; width: number; y: number; isSealed: boolean }): PlainShape {
  if (isSealed) return { kind: "path", d: `M${c(x)} ${c(y)}L${c(x + width)} ${c(y)}`, stroke: "ink", strokeWidth: 1.6 };
  const bumps = Math.max(3, Math.round(width / 34));
  const step = width / bumps;
  let d = `M${c(x)} ${c(y)}`;
  for (let index = 0; index < bumps; index += 1) d += `q${c(step / 2)} ${index % 2 === 0 ? -3 : 2.4} ${c(step)} 0`;
  return { kind: "path", d, stroke: "soft", strokeWidth: SEEN_LINE };
}

function vents({ x, width, y }: { x: number; width: number; y: number }): PlainShape[] {
  return [x, x + width].map(
    (wallX): PlainShape => ({
      kind: "rect",
      x: wallX - 3.2,
      y: y - 5,
      width: 6.4,
      height: 8,
      fill: "outside-tint",
      stroke: "ink",
      strokeWidth: 1,
    }),
  );
}

function piers({
  left,
  right,
  floorY,
  gradeY,
}: {
  left: number;
  right: number;
  floorY: number;
  gradeY: number;
}): PlainShape[] {
  const count = 5;
  return Array.from({ length: count }, (_, index): PlainShape => {
    const x = left + 10 + ((right - left - 20) * index) / (count - 1);
    return {
      kind: "rect",
      x: x - 4,
      y: floorY + 1,
      width: 8,
      height: gradeY - floorY - 1,
      fill: "hairline",
      stroke: "soft",
      strokeWidth: 0.8,
    };
  });
}

function drawGarage({ garage, gradeY, floorY }: HouseFrame): PlainShape[] {
  if (!garage) return [];
  const { x, y, width } = garage;
  const right = x + width;
  const slope = Math.min(26, width * 0.26);
  const doorTop = y + 26;
  let boards = "";
  for (let boardY = doorTop + 13; boardY < floorY; boardY += 13) boards += `M${c(right - 5)} ${c(boardY)}l-3 0`;
  return [
    { kind: "rect", x, y, width, height: gradeY - y, fill: "attic-air" },
    { kind: "path", d: boards, stroke: "soft", strokeWidth: SEEN_LINE },
    {
      kind: "path",
      d: `M${c(x)} ${c(y - slope)}L${c(right + 6)} ${c(y + 3)}`,
      stroke: "ink",
      strokeWidth: CUT_LINE,
      lineCap: "round",
    },
    { kind: "path", d: `M${c(x)} ${c(y)}L${c(right)} ${c(y)}`, stroke: "ink", strokeWidth: SEEN_LINE },
    { kind: "path", d: `M${c(right)} ${c(y)}L${c(right)} ${c(doorTop)}`, stroke: "ink", strokeWidth: CUT_LINE },
    {
      kind: "path",
      d: `M${c(right)} ${c(doorTop)}L${c(right)} ${c(gradeY)}`,
      stroke: "ink",
      strokeWidth: SEEN_LINE,
      dash: [4, 2.5],
    },
  ];
}

function drawRoof(frame: HouseFrame): PlainShape[] {
  const { left, right, eaveY, ridgeY, regions, width } = frame;
  const middle = (left + right) / 2;
  if (frame.roof === "flat") {
    return [
      { kind: "rect", x: 0, y: ridgeY, width, height: eaveY - ridgeY, fill: "ground" },
      {
        kind: "path",
        d: `M0 ${ridgeY}L${width} ${ridgeY}M0 ${eaveY}L${width} ${eaveY}`,
        stroke: "ink",
        strokeWidth: SEEN_LINE,
      },
    ];
  }
  const eaves = eavesOf(frame);
  const drop = (eaves * (eaveY - ridgeY)) / ((right - left) / 2 + eaves);
  const outline = `M${c(left - eaves)} ${c(eaveY + 2)}L${c(middle)} ${c(ridgeY)}L${c(right + eaves)} ${c(eaveY + 2)}`;
  const rafter = 7;
  const inner = `M${c(left + 4)} ${c(eaveY - drop + rafter)}L${c(middle)} ${c(ridgeY + rafter + 1)}L${c(right - 4)} ${c(eaveY - drop + rafter)}`;
  const shapes: PlainShape[] = [
    { kind: "path", d: `${outline}Z`, fill: regions.has("attic") ? "attic-air" : "card" },
    { kind: "path", d: inner, stroke: "ink", strokeWidth: 0.9, opacity: 0.55 },
  ];
  if (regions.has("attic")) shapes.push(insulation({ left: left + 2, right: right - 2, y: eaveY }));
  shapes.push({ kind: "path", d: outline, stroke: "ink", strokeWidth: CUT_LINE + 0.4, lineCap: "round" });
  return shapes;
}

/** Loose fill on the attic floor, as sections have always drawn it. */
function insulation({ left, right, y }: { left: number; right: number; y: number }): PlainShape {
  const loops = Math.round((right - left) / 12);
  const step = (right - left) / loops;
  let d = `M${c(left)} ${c(y - 2)}`;
  for (let index = 0; index < loops; index += 1) {
    d += `c${c(step * 0.1)} ${-INSULATION_DEPTH * 1.25} ${c(step * 0.9)} ${-INSULATION_DEPTH * 1.25} ${c(step)} 0`;
  }
  return { kind: "path", d, stroke: "soft", strokeWidth: 1, opacity: 0.5 };
}

function drawWalls({ storeys, left, right, floorY, eaveY }: HouseFrame): PlainShape[] {
  const floors = storeys.slice(1).flatMap((storey, index): PlainShape[] => {
    const below = storeys[index];
    const lines = [storey.y + storey.height, ...(below && below.y > storey.y + storey.height + 8 ? [below.y] : [])];
    return lines.map((y) => ({
      kind: "path",
      d: `M${c(left)} ${c(y)}L${c(right)} ${c(y)}`,
      stroke: "ink",
      strokeWidth: 1.7,
    }));
  });
  return [
    ...floors,
    { kind: "path", d: `M${c(left)} ${c(eaveY)}L${c(right)} ${c(eaveY)}`, stroke: "ink", strokeWidth: 1.7 },
    { kind: "path", d: `M${c(left)} ${c(floorY)}L${c(right)} ${c(floorY)}`, stroke: "ink", strokeWidth: CUT_LINE },
    {
      kind: "path",
      d: `M${c(left)} ${c(eaveY)}L${c(left)} ${c(floorY)}M${c(right)} ${c(eaveY)}L${c(right)} ${c(floorY)}`,
      stroke: "ink",
      strokeWidth: CUT_LINE + 0.8,
      lineCap: "round",
    },
  ];
}
