import { type Box, circleBox, placeLabel, textBox } from "../boxes.ts";
import { textWidth } from "../measure-text.ts";
import type { NumberText } from "../number-text.ts";
import {
  type CircleShape,
  coordinate as c,
  type ItemShape,
  isCompact,
  type PathShape,
  type PlainShape,
  type Shape,
  type TextShape,
} from "../scene.ts";
import type { HouseFrame } from "./house-frame.ts";
import type { HouseSectionWords } from "./house-section-words.ts";
import type { LeakDisc } from "./leak-discs.ts";

/** Below this radius a number stands beside its disc. */
function holdsItsNumber(disc: LeakDisc, size: number): boolean {
  const label = disc.leak ? String(disc.leak.number) : "?";
  return disc.r > Math.hypot(textWidth({ text: label, size, weight: 600 }) / 2, size * 0.36) + 1.5;
}

/** Discs with numbers, dashes for what is not yet found, ticks for what is sealed, and wisps of air that escapes. */
export function drawLeaks({
  discs,
  frame,
  taken,
  words,
  text,
}: {
  discs: readonly LeakDisc[];
  frame: HouseFrame;
  /** What labels must not cover; grows by the labels drawn here. */
  taken: Box[];
  words: HouseSectionWords;
  text: NumberText;
}): Shape[] {
  const sheet: Box = { x: 2, y: 2, width: frame.width - 4, height: frame.height - 4 };
  taken.push(...discs.map(circleBox));
  const leaders = discs.flatMap((disc) => (disc.anchor ? [leader(disc)] : []));
  const wisps = discs.filter(hasWisps).map(wispsAbove);
  const items = discs.map((disc) => drawDisc({ disc, sheet, taken, words, text, size: isCompact(frame) ? 12 : 13 }));
  const flows = discs.flatMap((disc) => flowLabel({ disc, sheet, taken, text, size: isCompact(frame) ? 11 : 12 }));
  return [...leaders, ...wisps, ...items, ...flows];
}

/** Air escapes visibly where a supply leak is large and there is room above it on the sheet. */
export function hasWisps({ leak, r, cy }: LeakDisc): boolean {
  return leak?.state === "open" && leak.side === "supply" && r >= 10 && cy - 2 * r - 6 > 2;
}

function drawDisc({
  disc,
  sheet,
  taken,
  words,
  text,
  size,
}: {
  disc: LeakDisc;
  sheet: Box;
  taken: Box[];
  words: HouseSectionWords;
  text: NumberText;
  size: number;
}): ItemShape {
  const { cx, cy, r, leak } = disc;
  const state = leak?.state ?? "unknown";
  const shapes: (CircleShape | PathShape | TextShape)[] = discBody({ cx, cy, r, state });
  const mark = leak ? String(leak.number) : "?";
  const ink = state === "open" ? "on-lost" : state === "sealed" ? "kept" : "lost";
  if (holdsItsNumber(disc, size)) {
    if (state === "open") shapes.push({ kind: "circle", cx, cy, r: Math.min(r - 1, size * 0.72), fill: "lost" });
    shapes.push({
      kind: "text",
      x: c(cx),
      y: c(cy + size * 0.35),
      text: mark,
      size,
      weight: 600,
      anchor: "middle",
      fill: ink,
    });
  } else {
    const beside = numberBeside({ disc, mark, size, ink: state === "open" ? "lost" : ink });
    const label = placeLabel({
      candidates: beside,
      taken: taken.filter((box) => box.x !== cx - r || box.y !== cy - r),
      sheet,
      margin: 1,
    });
    if (label) {
      shapes.push(label);
      taken.push(textBox(label));
    }
  }
  const cfm = text.cfm(disc.cfm25);
  const label = leak
    ? words.disc({
        number: leak.number,
        label: leak.label,
        cfm,
        state: leak.state === "open" ? words.open : words.sealed,
      })
    : `${words.notYetFound}, ${cfm}`;
  return { kind: "item", id: disc.id, label, shapes };
}

function discBody({
  cx,
  cy,
  r,
  state,
}: {
  cx: number;
  cy: number;
  r: number;
  state: "open" | "sealed" | "unknown";
}): (CircleShape | PathShape)[] {
  const at = { cx: c(cx), cy: c(cy) };
  if (state === "open") {
    return [
      { kind: "circle", ...at, r: c(r + 2), fill: "card" },
      { kind: "circle", ...at, r: c(r), fill: "lost", pattern: "hatched" },
    ];
  }
  if (state === "unknown") {
    return [{ kind: "circle", ...at, r: c(r), fill: "card", stroke: "lost", strokeWidth: 2, dash: [3.2, 2.6] }];
  }
  const reach = Math.max(2.5, Math.min(4.5, r * 0.34));
  const [tx, ty] = [cx + r * 0.72, cy - r * 0.72];
  const tick = `M${c(tx - reach)} ${c(ty)}l${c(reach * 0.7)} ${c(reach * 0.7)}l${c(reach * 1.3)} ${c(-reach * 1.5)}`;
  return [
    { kind: "circle", ...at, r: c(r), fill: "card", stroke: "kept", strokeWidth: 1.8 },
    { kind: "path", d: tick, stroke: "card", strokeWidth: 5, lineCap: "round" },
    { kind: "path", d: tick, stroke: "kept", strokeWidth: 2.2, lineCap: "round" },
  ];
}

function numberBeside({
  disc,
  mark,
  size,
  ink,
}: {
  disc: LeakDisc;
  mark: string;
  size: number;
  ink: TextShape["fill"];
}): TextShape[] {
  const { cx, cy, r } = disc;
  const base = { kind: "text", text: mark, size, weight: 600, fill: ink } as const;
  const clear = r + 4;
  const middle = cy + size * 0.35;
  return [
    { ...base, x: c(cx + clear), y: c(middle), anchor: "start" },
    { ...base, x: c(cx), y: c(cy - clear), anchor: "middle" },
    { ...base, x: c(cx - clear), y: c(middle), anchor: "end" },
    { ...base, x: c(cx), y: c(cy + clear + size * 0.72), anchor: "middle" },
    { ...base, x: c(cx + clear), y: c(cy - clear), anchor: "start" },
    { ...base, x: c(cx - clear), y: c(cy - clear), anchor: "end" },
    { ...base, x: c(cx + clear), y: c(cy + clear + size * 0.5), anchor: "start" },
    { ...base, x: c(cx - clear), y: c(cy + clear + size * 0.5), anchor: "end" },
  ];
}

/** How much leaves there, where the drawing has room for it. */
function flowLabel({
  disc,
  sheet,
  taken,
  text,
  size,
}: {
  disc: LeakDisc;
  sheet: Box;
  taken: Box[];
  text: NumberText;
  size: number;
}): TextShape[] {
  const { cx, cy, r, leak } = disc;
  if (r < 9 || leak?.state === "sealed") return [];
  const base = { kind: "text", text: text.cfm(disc.cfm25), size, fill: "lost", family: "mono" } as const;
  const candidates: TextShape[] = [
    { ...base, x: c(cx + r + 5), y: c(cy - r * 0.2), anchor: "start" },
    { ...base, x: c(cx - r - 5), y: c(cy - r * 0.2), anchor: "end" },
    { ...base, x: c(cx + r + 6), y: c(cy - r * 0.85), anchor: "start" },
    { ...base, x: c(cx - r - 6), y: c(cy - r * 0.85), anchor: "end" },
    { ...base, x: c(cx + r + 5), y: c(cy + r * 0.9), anchor: "start" },
    { ...base, x: c(cx - r - 5), y: c(cy + r * 0.9), anchor: "end" },
    { ...base, x: c(cx), y: c(cy + r + size + 2), anchor: "middle" },
    { ...base, x: c(cx), y: c(cy - r - 6), anchor: "middle" },
  ];
  const label = placeLabel({ candidates, taken, sheet, margin: 3 });
  if (!label) return [];
  taken.push(textBox(label));
  return [label];
}

function leader(disc: LeakDisc): PlainShape {
  const anchor = disc.anchor ?? { x: disc.cx, y: disc.cy };
  return {
    kind: "path",
    d: `M${c(anchor.x)} ${c(anchor.y)}L${c(disc.cx)} ${c(disc.cy)}`,
    stroke: "lost",
    strokeWidth: 1.4,
  };
}

/** Three breaths of air rising from a large open leak. */
function wispsAbove({ cx, cy, r }: LeakDisc): PlainShape {
  const height = Math.min(17, r * 0.75);
  const wisp = (x: number, y: number, lean: number) =>
    `M${c(x)} ${c(y)}c${c(-4 + lean)} ${c(-height * 0.35)} ${c(4 + lean)} ${c(-height * 0.55)} ${c(lean * 1.6)} ${c(-height)}`;
  const d = [wisp(cx - r * 0.7, cy - r * 0.95, -3), wisp(cx, cy - r - 5, 0), wisp(cx + r * 0.7, cy - r * 0.95, 3)].join(
    "",
  );
  return { kind: "path", d, stroke: "lost", strokeWidth: 2, lineCap: "round" };
}
