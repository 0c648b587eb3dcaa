import { textWidth } from "./measure-text.ts";
import { PAPER_INKS } from "./paper-inks.ts";
import { patternMarks } from "./pattern-marks.ts";
import type { CircleShape, Ink, Paint, PlainShape, RectShape, Scene, Shape } from "./scene.ts";

/** The family names of the letters, as the page's style sheet knows them. */
export interface SvgFonts {
  sans: string;
  mono: string;
}

/**
 * A scene as SVG text, for pages that run no script. Colors are the page's tokens where it has them, else those of
 * paper, so the same text works on a page in light and dark, in a mail and in a file.
 */
export function sceneSvgText(scene: Scene, { id, fonts }: { id: string; fonts: SvgFonts }): string {
  const attributes = write({
    viewBox: `0 0 ${scene.width} ${scene.height}`,
    role: "img",
    "aria-labelledby": `${id}-title`,
    "font-family": fonts.sans,
    style: "display:block;width:100%;height:auto",
  });
  const title = `<title id="${escapeMarkup(id)}-title">${escapeMarkup(`${scene.title}. ${scene.finding}`)}</title>`;
  return `<svg xmlns="http://www.w3.org/2000/svg"${attributes}>${title}${scene.shapes.map((shape) => shapeText(shape, fonts)).join("")}</svg>`;
}

function shapeText(shape: Shape, fonts: SvgFonts): string {
  if (shape.kind !== "item") return plainText(shape, fonts);
  return `<g${write({ "data-item": shape.id })}>${shape.shapes.map((mark) => plainText(mark, fonts)).join("")}</g>`;
}

function plainText(shape: PlainShape, fonts: SvgFonts): string {
  switch (shape.kind) {
    case "path":
      return `<path${write({ d: shape.d, ...paint(shape) })}/>`;
    case "rect": {
      const { x, y, width, height, radius } = shape;
      return `<rect${write({ x, y, width, height, rx: radius, ...paint(shape) })}/>${marksText(shape)}`;
    }
    case "circle":
      return `<circle${write({ cx: shape.cx, cy: shape.cy, r: shape.r, ...paint(shape) })}/>${marksText(shape)}`;
    case "text": {
      const { x, y, size, weight, anchor, family, fill, text } = shape;
      const letters = family === "mono" ? fonts.mono : undefined;
      // Until the page's own font is there another one stands in; its letters keep to the room that was measured.
      const textLength = Number(textWidth(shape).toFixed(2)) || undefined;
      const lengthAdjust = textLength && "spacingAndGlyphs";
      return `<text${write({ x, y, "font-size": size, "font-weight": weight, "text-anchor": anchor, "font-family": letters, fill: color(fill), textLength, lengthAdjust })}>${escapeMarkup(text)}</text>`;
    }
  }
}

function marksText(shape: RectShape | CircleShape): string {
  const d = patternMarks(shape);
  if (!d) return "";
  const mark = color(shape.fill === "regained" ? "regained-mark" : "lost-mark");
  const style = shape.pattern === "dotted" ? { fill: mark } : { fill: "none", stroke: mark, "stroke-width": 2 };
  return `<path${write({ d, ...style })}/>`;
}

function paint({ fill, stroke, strokeWidth, dash, lineCap, opacity }: Paint) {
  return {
    fill: fill ? color(fill) : "none",
    stroke: stroke && color(stroke),
    "stroke-width": strokeWidth,
    "stroke-dasharray": dash?.join(" "),
    "stroke-linecap": lineCap,
    opacity,
  };
}

function color(ink: Ink): string {
  return `var(--${ink},${PAPER_INKS[ink]})`;
}

function write(attributes: Readonly<Record<string, string | number | undefined>>): string {
  return Object.entries(attributes)
    .map(([name, value]) => (value === undefined ? "" : ` ${name}="${escapeMarkup(String(value))}"`))
    .join("");
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escapeMarkup(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ENTITIES[letter] ?? letter);
}
