import { textWidth } from "./measure-text.ts";
import { coordinate as c, type PlainShape, type TextShape } from "./scene.ts";

export interface Tick {
  at: number;
  text: string;
}

const TICK_SIZE = 12;

/** Hairlines across a chart with their values at the left. The first tick is drawn as the base line. */
export function horizontalLines({
  ticks,
  left,
  right,
  textX = left - 8,
  size = TICK_SIZE,
}: {
  ticks: readonly Tick[];
  left: number;
  right: number;
  textX?: number;
  size?: number;
}): PlainShape[] {
  return ticks.flatMap(({ at, text }): PlainShape[] => [
    { kind: "path", d: `M${c(left)} ${c(at)}L${c(right)} ${c(at)}`, stroke: "hairline", strokeWidth: 1 },
    { kind: "text", x: c(textX), y: c(at + size * 0.35), text, size, fill: "soft", anchor: "end" },
  ]);
}

/** Values under a chart, with a short tick each; at the edges of the sheet the text moves in. */
export function bottomTicks({
  ticks,
  y,
  sheetWidth,
  size = TICK_SIZE,
}: {
  ticks: readonly Tick[];
  y: number;
  sheetWidth: number;
  size?: number;
}): PlainShape[] {
  return ticks.flatMap(({ at, text }): PlainShape[] => {
    const half = textWidth({ text, size }) / 2;
    const x = Math.min(sheetWidth - half, Math.max(half, at));
    return [
      { kind: "path", d: `M${c(at)} ${c(y)}l0 5`, stroke: "soft", strokeWidth: 1 },
      { kind: "text", x: c(x), y: c(y + size + 7), text, size, fill: "soft", anchor: "middle" },
    ];
  });
}

/** What an axis measures, in words and with its unit. */
export function axisName({
  x,
  y,
  text,
  anchor = "start",
}: {
  x: number;
  y: number;
  text: string;
  anchor?: TextShape["anchor"];
}): TextShape {
  return { kind: "text", x: c(x), y: c(y), text, size: TICK_SIZE, fill: "soft", anchor };
}

export function line({ x1, y1, x2, y2 }: { x1: number; y1: number; x2: number; y2: number }): string {
  return `M${c(x1)} ${c(y1)}L${c(x2)} ${c(y2)}`;
}
