import type { Ink } from "#lib/pictures/scene.ts";

/**
 * The inks of a page for a reader who wants it dark; paper is always light. The same values as the dark theme of
 * `app/design/tokens.css`; a test holds the two together.
 */
export const DARK_INKS: Readonly<Record<Ink | "field-line" | "on-accent", string>> = {
  ink: "#f1ecdf",
  soft: "#aab5b8",
  hairline: "#38464e",
  paper: "#141c22",
  card: "#1b262d",
  ground: "#2c3230",
  "attic-air": "#262b2a",
  accent: "#7fc6d6",
  kept: "#4fb5aa",
  "kept-tint": "#1e3f3d",
  "on-kept": "#08201e",
  lost: "#f08a6f",
  "lost-mark": "#8f331e",
  "lost-tint": "#43261f",
  "on-lost": "#2a0d06",
  regained: "#e2ae53",
  "regained-mark": "#7d540c",
  "on-regained": "#20160a",
  doubt: "#e2ae53",
  outside: "#93acbf",
  "outside-tint": "#253440",
  "on-outside": "#0d171e",
  blower: "#77808a",
  "on-blower": "#0b1115",
  "field-line": "#7f8d94",
  "on-accent": "#0b1a20",
};
