import { scaleLinear } from "d3-scale";
import { refuse } from "#lib/errors/input-problem.ts";
import type { Dollars } from "#lib/units/quantity.ts";
import { textWidth } from "./measure-text.ts";
import { type NumberText, numberText } from "./number-text.ts";
import {
  coordinate as c,
  type Ink,
  isCompact,
  type Pattern,
  type Scene,
  type SceneOptions,
  type Shape,
  type TextShape,
} from "./scene.ts";
import { HUNDRED_DOLLARS_WORDS, type HundredDollarsWords, type Part, type Use } from "./words/hundred-dollars-words.ts";

/** How $100 of heating or cooling is spent. The four parts add up to 100. */
export interface DollarSplit {
  roomsUsd: Dollars;
  /** Lost from the ducts, but into a place that gives part of it back. */
  regainedUsd: Dollars;
  lostUsd: Dollars;
  blowerUsd: Dollars;
}

export interface HundredDollarsInput {
  use: Use;
  before: DollarSplit;
  after?: DollarSplit;
}

interface Segment {
  part: Part;
  usd: Dollars;
  fill: Ink;
  ink: Ink;
  pattern?: Pattern;
}

const BAR_HEIGHT = 44;
const SIZE = 13;

/** One bar of $100 for today and one for after the work, cut by where the money goes. */
export function hundredDollarsScene(input: HundredDollarsInput, { width, language = "en" }: SceneOptions): Scene {
  const words = HUNDRED_DOLLARS_WORDS[language];
  const text = numberText(language);
  const rows = [
    { name: words.today, split: input.before },
    ...(input.after ? [{ name: words.sealed, split: input.after }] : []),
  ];
  for (const { split } of rows) requireHundred(split);

  const compact = isCompact({ width });
  const longestName = Math.max(...rows.map(({ name }) => textWidth({ text: name, size: 15 })));
  const left = compact ? 0 : Math.max(108, Math.ceil(longestName) + 12);
  const nameHeight = compact ? 22 : 0;
  const shapes: Shape[] = [];
  let y = 2;
  for (const { name, split } of rows) {
    const barY = y + nameHeight;
    const nameY = compact ? y + 15 : barY + BAR_HEIGHT / 2 + 5;
    shapes.push({ kind: "text", x: 0, y: nameY, text: name, size: 15, fill: "ink" });
    const { bar, hasNotes } = drawBar({ split, left, width, y: barY, words, text });
    shapes.push(...bar);
    y = barY + BAR_HEIGHT + (hasNotes ? 24 : 0) + 14;
  }

  const rooms = text.dollars(input.before.roomsUsd);
  const use = words.use[input.use];
  return {
    width,
    height: Math.ceil(y - 8),
    title: words.caption(use),
    finding: input.after
      ? words.findingBoth({ use, rooms, sealed: text.dollars(input.after.roomsUsd) })
      : words.findingToday({ use, rooms, lost: text.dollars(input.before.lostUsd) }),
    table: {
      caption: words.caption(use),
      columns: words.columns.slice(0, rows.length + 1).map((label, index) => ({ label, isNumeric: index > 0 })),
      rows: segmentsOf(input.before).map(({ part }, index) => [
        words.part[part],
        ...rows.map(({ split }) => text.plain(segmentsOf(split)[index]?.usd ?? 0)),
      ]),
    },
    shapes,
  };
}

function requireHundred(split: DollarSplit): void {
  const parts = [split.roomsUsd, split.regainedUsd, split.lostUsd, split.blowerUsd];
  const total = parts.reduce((sum, part) => sum + part, 0);
  if (!(Math.abs(total - 100) < 0.5 && parts.every((part) => part >= 0))) {
    refuse({
      field: "before",
      detail: `The parts of $100 add up to ${total}.`,
      fix: "Give four parts, none below 0, that add up to 100.",
    });
  }
}

function segmentsOf(split: DollarSplit): Segment[] {
  return [
    { part: "rooms", usd: split.roomsUsd, fill: "kept", ink: "on-kept" },
    { part: "regained", usd: split.regainedUsd, fill: "regained", ink: "on-regained", pattern: "dotted" },
    { part: "lost", usd: split.lostUsd, fill: "lost", ink: "on-lost", pattern: "hatched" },
    { part: "blower", usd: split.blowerUsd, fill: "blower", ink: "on-blower" },
  ];
}

function drawBar({
  split,
  left,
  width,
  y,
  words,
  text,
}: {
  split: DollarSplit;
  left: number;
  width: number;
  y: number;
  words: HundredDollarsWords;
  text: NumberText;
}): { bar: Shape[]; hasNotes: boolean } {
  const scale = scaleLinear([0, 100], [left, width]);
  const bar: Shape[] = [];
  const notes: { middle: number; text: string }[] = [];
  let from = 0;
  for (const { part, usd, fill, ink, pattern } of segmentsOf(split)) {
    const [x, end] = [scale(from), scale(from + usd)];
    from += usd;
    if (!(usd > 0)) continue;
    bar.push({ kind: "rect", x: c(x), y, width: c(end - x), height: BAR_HEIGHT, fill, pattern });
    const long = `${text.dollars(usd)} ${words.shortPart[part]}`;
    const label = [long, text.dollars(usd)].find(
      (option) => textWidth({ text: option, size: SIZE, weight: 600 }) < end - x - 12,
    );
    if (label) bar.push(...labelOnBar({ x: x + 7, y, label, ink, fill, isOnPattern: pattern !== undefined }));
    if (label !== long) notes.push({ middle: (x + end) / 2, text: long });
  }
  return { bar: [...bar, ...placeNotes({ notes, left, width, y: y + BAR_HEIGHT })], hasNotes: notes.length > 0 };
}

/** Letters never stand on a pattern: a plain plate of the same color goes under them. */
function labelOnBar({
  x,
  y,
  label,
  ink,
  fill,
  isOnPattern,
}: {
  x: number;
  y: number;
  label: string;
  ink: Ink;
  fill: Ink;
  isOnPattern: boolean;
}): Shape[] {
  const width = textWidth({ text: label, size: SIZE, weight: 600 });
  const baseline = y + BAR_HEIGHT / 2 + SIZE * 0.35;
  return [
    ...(isOnPattern
      ? [
          {
            kind: "rect",
            x: c(x - 3),
            y: y + 11,
            width: c(width + 6),
            height: BAR_HEIGHT - 22,
            radius: 2,
            fill,
          } as const,
        ]
      : []),
    { kind: "text", x: c(x), y: baseline, text: label, size: SIZE, weight: 600, fill: ink },
  ];
}

/** Names of the narrow parts, under the bar, pushed apart from right to left so that none covers another. */
function placeNotes({
  notes,
  left,
  width,
  y,
}: {
  notes: readonly { middle: number; text: string }[];
  left: number;
  width: number;
  y: number;
}): Shape[] {
  let limit = width;
  const placed: Shape[] = [];
  for (const note of [...notes].reverse()) {
    const length = textWidth({ text: note.text, size: SIZE });
    const end = Math.min(limit, note.middle + length / 2);
    if (end - length < left) break;
    const label: TextShape = { kind: "text", x: c(end - length), y: y + 20, text: note.text, size: SIZE, fill: "ink" };
    placed.push(
      { kind: "path", d: `M${c(note.middle)} ${y}L${c(note.middle)} ${y + 6}`, stroke: "soft", strokeWidth: 1 },
      label,
    );
    limit = end - length - 12;
  }
  return placed;
}
