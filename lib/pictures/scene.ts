import type { UnitSystem } from "#lib/units/display-unit.ts";

/**
 * A picture as data. Every picture of the product is a pure function from numbers to one `Scene`; the web page
 * (`app/design/scene-svg.tsx`) and the paper (`lib/documents/scene-pdf.tsx`) draw the same shapes in the same order,
 * so the two can never say different things. This layer knows neither React nor the browser: geometry, words, table.
 *
 * Lengths are drawing units: one unit is one CSS pixel (or one point on paper) at the scene's own size. Text is set at
 * a size that reads at that size, so a scene is built for a width (`WIDE` or `COMPACT`), not shrunk to it.
 */
export interface Scene {
  width: number;
  height: number;
  /** The heading above the picture. */
  title: string;
  /** One sentence, made from the numbers, that says what the picture shows. */
  finding: string;
  /** How to read it, where that is not plain from the picture itself. */
  note?: string;
  /** The same as rows of words. */
  table: SceneTable;
  shapes: readonly Shape[];
}

export interface SceneTable {
  caption: string;
  columns: readonly { label: string; isNumeric?: boolean }[];
  rows: readonly (readonly string[])[];
}

/** What a color means. The media decide what it looks like (`tokens.css` on the screen, ink on paper). */
export const INKS = [
  "ink",
  "soft",
  "hairline",
  "paper",
  "card",
  "ground",
  "attic-air",
  "accent",
  "kept",
  "kept-tint",
  "on-kept",
  "lost",
  "lost-mark",
  "lost-tint",
  "on-lost",
  "regained",
  "regained-mark",
  "on-regained",
  "doubt",
  "outside",
  "outside-tint",
  "on-outside",
  "blower",
  "on-blower",
] as const;
export type Ink = (typeof INKS)[number];

/** Meaning that survives a grey print: lost is hatched, partly regained is dotted, kept is plain. */
export type Pattern = "hatched" | "dotted";

export interface Paint {
  fill?: Ink;
  stroke?: Ink;
  strokeWidth?: number;
  /** Lengths of dash and gap. */
  dash?: readonly [number, number];
  lineCap?: "round" | "butt";
  opacity?: number;
}

export interface PathShape extends Paint {
  kind: "path";
  d: string;
}
export interface RectShape extends Paint {
  kind: "rect";
  x: number;
  y: number;
  width: number;
  height: number;
  radius?: number;
  pattern?: Pattern;
}
export interface CircleShape extends Paint {
  kind: "circle";
  cx: number;
  cy: number;
  r: number;
  pattern?: Pattern;
}
export interface TextShape {
  kind: "text";
  x: number;
  /** The baseline. */
  y: number;
  text: string;
  size: number;
  fill: Ink;
  weight?: 400 | 600;
  family?: "sans" | "mono";
  anchor?: "start" | "middle" | "end";
}
/** Shapes that belong to one thing a person can point at, such as one leak. */
export interface ItemShape {
  kind: "item";
  id: string;
  /** What the thing is, in words: the name a screen reader says. */
  label: string;
  shapes: readonly (PathShape | RectShape | CircleShape | TextShape)[];
}
export type Shape = PathShape | RectShape | CircleShape | TextShape | ItemShape;
export type PlainShape = Exclude<Shape, ItemShape>;

/** The two widths every picture is built for: a phone's column, and a desk, tablet or sheet of paper. */
export const COMPACT_WIDTH = 358;
export const WIDE_WIDTH = 680;

/** How a picture is wanted: how wide, and in which language its words are. */
export interface SceneOptions {
  width: number;
  language?: Language;
  /** The units that the reader is used to; US units on every paper. */
  units?: UnitSystem;
}
export type Language = "en" | "es";

/** Below this width a picture leaves side columns and long labels out. */
export function isCompact({ width }: { width: number }): boolean {
  return width < 520;
}

/** A coordinate as it is written into a path: two decimals, so that the same scene gives the same bytes anywhere. */
export function coordinate(value: number): number {
  return Math.round(value * 100) / 100;
}
