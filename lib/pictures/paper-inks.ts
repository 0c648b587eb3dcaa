import type { Ink } from "./scene.ts";

/**
 * What the meanings look like on white paper. The same values as the light theme of `app/design/tokens.css`; a test
 * holds the two together. Paper itself is white.
 */
export const PAPER_INKS: Readonly<Record<Ink, string>> = {
  ink: "#1c2830",
  soft: "#54616a",
  hairline: "#dcd5c6",
  paper: "#faf7f0",
  card: "#ffffff",
  ground: "#e3dac7",
  "attic-air": "#f6eddc",
  accent: "#0f5566",
  kept: "#1b726c",
  "kept-tint": "#dcebe8",
  "on-kept": "#ffffff",
  lost: "#b83c25",
  "lost-mark": "#380b03",
  "lost-tint": "#fae6e0",
  "on-lost": "#ffffff",
  regained: "#c08216",
  "regained-mark": "#5c3a02",
  "on-regained": "#1c2830",
  doubt: "#7a4f05",
  outside: "#6f899d",
  "outside-tint": "#e3eaef",
  "on-outside": "#10181d",
  blower: "#b9b3a6",
  "on-blower": "#1c2830",
};
