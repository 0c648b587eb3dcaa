import { textWidth } from "./measure-text.ts";
import type { TextShape } from "./scene.ts";

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export function overlaps(a: Box, b: Box, margin = 0): boolean {
  return (
    a.x < b.x + b.width + margin &&
    b.x < a.x + a.width + margin &&
    a.y < b.y + b.height + margin &&
    b.y < a.y + a.height + margin
  );
}

export function isWithin(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

export function circleBox({ cx, cy, r }: { cx: number; cy: number; r: number }): Box {
  return { x: cx - r, y: cy - r, width: 2 * r, height: 2 * r };
}

/** The room a line of text takes: from the top of its capitals to the foot of its descenders. */
export function textBox(text: TextShape): Box {
  const width = textWidth(text);
  const shift = text.anchor === "middle" ? width / 2 : text.anchor === "end" ? width : 0;
  return { x: text.x - shift, y: text.y - text.size * 0.76, width, height: text.size };
}

/**
 * The first of the wished-for places where a label covers nothing and stays on the sheet. A label without such a place
 * is left out rather than laid over something: the table says it anyway.
 */
export function placeLabel({
  candidates,
  taken,
  sheet,
  margin = 2,
}: {
  candidates: readonly TextShape[];
  taken: readonly Box[];
  sheet: Box;
  margin?: number;
}): TextShape | undefined {
  return candidates.find((candidate) => {
    const box = textBox(candidate);
    return isWithin(box, sheet) && !taken.some((other) => overlaps(box, other, margin));
  });
}
