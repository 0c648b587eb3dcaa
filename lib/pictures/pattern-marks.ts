import { type CircleShape, coordinate, type RectShape } from "./scene.ts";

/** Distance between hatch lines, measured across them. */
const HATCH_GAP = 6;
const DOT_GAP = 7;
const DOT_RADIUS = 1.25;

/** Chord of the 45° line x − y = c within a shape, as [x1, y1, x2, y2]; nothing when they miss each other. */
type Chord = (c: number) => [number, number, number, number] | undefined;

function chordOfRect({ x, y, width, height }: RectShape): Chord {
  return (c) => {
    const from = Math.max(x, y + c);
    const to = Math.min(x + width, y + height + c);
    return to > from ? [from, from - c, to, to - c] : undefined;
  };
}

function chordOfCircle({ cx, cy, r }: CircleShape): Chord {
  return (c) => {
    const offset = (cx - cy - c) / 2;
    const half = Math.sqrt(Math.max(0, r * r - 2 * offset * offset)) / Math.SQRT2;
    const [midX, midY] = [cx - offset, cy + offset];
    return half > 0.5 ? [midX - half, midY - half, midX + half, midY + half] : undefined;
  };
}

/**
 * The marks of a pattern as one path of plain lines that end where the shape ends. Nothing has to be clipped, so the
 * screen and the paper, which know different kinds of clipping, draw the very same lines. Hatching is drawn as a
 * stroke, dots as a fill.
 */
export function patternMarks(shape: RectShape | CircleShape): string {
  if (shape.pattern === "hatched") return hatchMarks(shape);
  if (shape.pattern === "dotted") return dotMarks(shape);
  return "";
}

function hatchMarks(shape: RectShape | CircleShape): string {
  const box = boundsOf(shape);
  const chord = shape.kind === "rect" ? chordOfRect(shape) : chordOfCircle(shape);
  const step = HATCH_GAP * Math.SQRT2;
  const first = Math.ceil((box.x - (box.y + box.height)) / step) * step;
  const marks: string[] = [];
  for (let c = first; c < box.x + box.width - box.y; c += step) {
    const ends = chord(c);
    if (ends) marks.push(`M${ends.slice(0, 2).map(coordinate).join(" ")}L${ends.slice(2).map(coordinate).join(" ")}`);
  }
  return marks.join("");
}

function dotMarks(shape: RectShape | CircleShape): string {
  const { x, y, width, height } = boundsOf(shape);
  const marks: string[] = [];
  let row = 0;
  for (let dotY = y + DOT_GAP / 2; dotY < y + height - DOT_RADIUS; dotY += DOT_GAP * 0.8, row += 1) {
    const start = x + DOT_GAP * (row % 2 === 0 ? 0.5 : 1);
    for (let dotX = start; dotX < x + width - DOT_RADIUS; dotX += DOT_GAP) {
      const isInside = shape.kind === "rect" || Math.hypot(dotX - shape.cx, dotY - shape.cy) < shape.r - DOT_RADIUS;
      if (isInside) marks.push(dot(dotX, dotY));
    }
  }
  return marks.join("");
}

function dot(x: number, y: number): string {
  const [left, middle] = [coordinate(x - DOT_RADIUS), coordinate(y)];
  return `M${left} ${middle}a${DOT_RADIUS} ${DOT_RADIUS} 0 1 0 ${2 * DOT_RADIUS} 0a${DOT_RADIUS} ${DOT_RADIUS} 0 1 0 ${-2 * DOT_RADIUS} 0Z`;
}

function boundsOf(shape: RectShape | CircleShape) {
  if (shape.kind === "rect") return { x: shape.x, y: shape.y, width: shape.width, height: shape.height };
  return { x: shape.cx - shape.r, y: shape.cy - shape.r, width: 2 * shape.r, height: 2 * shape.r };
}
