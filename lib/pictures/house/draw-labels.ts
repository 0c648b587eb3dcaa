import { type Box, circleBox, placeLabel, textBox } from "../boxes.ts";
import { coordinate as c, isCompact, type TextShape } from "../scene.ts";
import { hasWisps } from "./draw-leaks.ts";
import { partitionsOf, windowsOf } from "./draw-rooms.ts";
import type { DuctLayout } from "./duct-layout.ts";
import { eavesOf, type HouseFrame, INSULATION_DEPTH } from "./house-frame.ts";
import type { HouseSectionInput } from "./house-section-input.ts";
import type { HouseSectionWords } from "./house-section-words.ts";
import type { LeakDisc } from "./leak-discs.ts";

/** What labels must keep clear of: ducts, machines, leaks with their wisps. */
export function occupied({
  input,
  layout,
  discs,
  frame,
}: {
  input: HouseSectionInput;
  layout: DuctLayout;
  discs: readonly LeakDisc[];
  frame: HouseFrame;
}): Box[] {
  const ducts = layout.groups.flatMap(({ lanes }) =>
    lanes.flatMap(({ points, width }) =>
      points.slice(1).map((end, index): Box => {
        const start = points[index] ?? end;
        const half = width / 2 + 1;
        return {
          x: Math.min(start.x, end.x) - half,
          y: Math.min(start.y, end.y) - half,
          width: Math.abs(end.x - start.x) + 2 * half,
          height: Math.abs(end.y - start.y) + 2 * half,
        };
      }),
    ),
  );
  const wisps = discs.filter(hasWisps);
  return [
    ...ducts,
    ...layout.airHandlers.map(({ box, posture, placeKind }): Box => {
      // An air handler in a room stands on legs; nothing is written between them.
      const standsInRoom = posture === "upright" && placeKind === "conditioned";
      return standsInRoom ? { ...box, height: frame.floorY - box.y } : box;
    }),
    ...discs.map(circleBox),
    ...wisps.map(({ cx, cy, r }): Box => ({ x: cx - r, y: cy - r * 2 - 6, width: 2 * r, height: r * 2 + 6 })),
    ...linesOf(frame),
    ...partitionsOf({ input, frame }),
    ...windowsOf({ input, frame }),
  ];
}

/** Walls, floors and roof as thin boxes; a sloping roof as a stair of small ones. */
function linesOf(frame: HouseFrame): Box[] {
  const { left, right, eaveY, ridgeY, gradeY, floorY, width, storeys, regions } = frame;
  const thickness = 3;
  const level = (y: number, from = left, to = right): Box => ({
    x: from,
    y: y - thickness / 2,
    width: to - from,
    height: thickness,
  });
  const upright = (x: number, top: number, bottom: number): Box => ({
    x: x - thickness / 2,
    y: top,
    width: thickness,
    height: bottom - top,
  });
  const eaves = eavesOf(frame);
  const fluff = regions.has("attic")
    ? [{ x: left, y: eaveY - INSULATION_DEPTH, width: right - left, height: INSULATION_DEPTH }]
    : [];
  const steps = 40;
  const roof = Array.from({ length: frame.roof === "flat" ? 0 : steps }, (_, index): Box => {
    const along = (index + 0.5) / steps;
    const x = left - eaves + (right - left + 2 * eaves) * along;
    const y = eaveY - (eaveY - ridgeY) * (1 - Math.abs(2 * along - 1));
    const half = (right - left + 2 * eaves) / steps / 2;
    return { x: x - half, y: y - 3, width: 2 * half, height: 13 };
  });
  const under = [...regions.values()].filter(({ opens }) => opens === "up");
  const around = [...under.map(({ box }) => box), ...(frame.garage ? [frame.garage] : [])].flatMap((box) => [
    upright(box.x, box.y, box.y + box.height),
    upright(box.x + box.width, box.y, box.y + box.height),
    level(box.y + box.height, box.x, box.x + box.width),
  ]);
  const isDug = under.some(({ box }) => box.y + box.height > gradeY);
  return [
    ...(isDug ? [level(gradeY, 0, left), level(gradeY, right, width)] : [level(gradeY, 0, width)]),
    level(floorY),
    ...storeys.map((storey) => level(storey.y)),
    upright(left, eaveY, floorY),
    upright(right, eaveY, floorY),
    ...roof,
    ...fluff,
    ...around,
  ];
}

/** Names of places, rooms and systems, each where there is room for it. */
export function drawLabels({
  input,
  frame,
  layout,
  taken,
  words,
}: {
  input: HouseSectionInput;
  frame: HouseFrame;
  layout: DuctLayout;
  taken: Box[];
  words: HouseSectionWords;
}): TextShape[] {
  const size = isCompact(frame) ? 12 : 13;
  const sheet: Box = { x: 2, y: 2, width: frame.width - 4, height: frame.height - 4 };
  const wanted = [
    ...systemLabels({ layout, frame, size: size - 1, count: input.systems.length }),
    ...placeLabels({ input, frame, words, size }),
    ...roomLabels({ input, frame, size: size - 1 }),
  ];
  return wanted.flatMap((candidates) => {
    const label = placeLabel({ candidates, taken, sheet, margin: 3 });
    if (!label) return [];
    taken.push(textBox(label));
    return [label];
  });
}

/** Tried in turn: beside the ridge first, then anywhere under the roof. */
const ATTIC_ROWS = [0.62, 0.52, 0.7, 0.42, 0.78, 0.34, 0.84, 0.28];
const ATTIC_COLUMNS = [0.64, 0.36, 0.5, 0.6, 0.4, 0.56, 0.44, 0.68, 0.32, 0.72, 0.28];

function placeLabels({
  input,
  frame,
  words,
  size,
}: {
  input: HouseSectionInput;
  frame: HouseFrame;
  words: HouseSectionWords;
  size: number;
}): TextShape[][] {
  return input.places
    .filter((place) => place.kind !== "conditioned" && place.kind !== "outside" && place.kind !== "joist-space")
    .map((place): TextShape[] => {
      const box = frame.regions.get(place.kind)?.box ?? frame.storeys[0];
      if (!box) return [];
      const name = place.label ?? words.place[place.kind];
      const texts = place.note ? [`${name} · ${place.note}`, place.note, name] : [name];
      const isAttic = place.kind === "attic";
      return texts.flatMap((text) => {
        const base = { kind: "text", text, size, fill: "ink" } as const;
        const rows = isAttic ? ATTIC_ROWS : [0.86, 0.82, 0.5, 0.7, 0.3];
        const columns = isAttic ? ATTIC_COLUMNS : [0.5, 0.3, 0.7, 0.2, 0.8];
        return rows.flatMap((row) =>
          columns.map(
            (column): TextShape => ({
              ...base,
              anchor: "middle",
              x: c(box.x + box.width * column),
              y: c(box.y + box.height * row),
            }),
          ),
        );
      });
    });
}

function systemLabels({
  layout,
  frame,
  size,
  count,
}: {
  layout: DuctLayout;
  frame: HouseFrame;
  size: number;
  count: number;
}): TextShape[][] {
  return layout.airHandlers.map(({ box, label }): TextShape[] => {
    if (!label || count < 2) return [];
    const base = { kind: "text", text: label, size, fill: "ink", weight: 600 } as const;
    const middle = box.x + box.width / 2;
    const low = box.y + box.height * 0.6;
    return [
      { ...base, anchor: "start", x: c(box.x + box.width + 7), y: c(low) },
      { ...base, anchor: "middle", x: c(middle), y: c(box.y + box.height + size + 5) },
      { ...base, anchor: "end", x: c(box.x - 7), y: c(low) },
      { ...base, anchor: "start", x: c(box.x + box.width + 7), y: c(box.y + box.height - 2) },
      { ...base, anchor: "middle", x: c(middle), y: c(box.y - 8) },
      { ...base, anchor: "end", x: c(box.x - 7), y: c(box.y + size * 0.8) },
      ...[0.2, 0.35, 0.5, 0.75, 1].flatMap((step): TextShape[] => [
        { ...base, anchor: "start", x: c(box.x + box.width + 7), y: c(box.y + box.height + step * 26) },
        { ...base, anchor: "start", x: c(box.x + box.width + 7 + step * 60), y: c(box.y + box.height - 4) },
        { ...base, anchor: "start", x: c(box.x + 2), y: c(box.y + box.height + 16 + step * 50) },
        { ...base, anchor: "start", x: c(frame.left + 8), y: c(box.y + box.height + 16 + step * 50) },
        { ...base, anchor: "start", x: c(box.x + 2), y: c(box.y - 8 - step * 40) },
      ]),
    ];
  });
}

function roomLabels({
  input,
  frame,
  size,
}: {
  input: HouseSectionInput;
  frame: HouseFrame;
  size: number;
}): TextShape[][] {
  return frame.storeys.flatMap((storey, index) => {
    const names = input.rooms?.[index] ?? [];
    return names.map((text, room): TextShape[] => {
      const share = storey.width / names.length;
      const base = { kind: "text", text, size, fill: "soft", anchor: "middle" } as const;
      return [0.92, 0.8, 0.3].flatMap((row) =>
        [0.5, 0.76, 0.24].map(
          (across): TextShape => ({
            ...base,
            x: c(storey.x + share * (room + across)),
            y: c(storey.y + storey.height * row),
          }),
        ),
      );
    });
  });
}
