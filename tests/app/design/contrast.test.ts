import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DARK_INKS } from "#lib/documents/html/dark-inks.ts";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import { INKS } from "#lib/pictures/scene.ts";

const css = readFileSync(new URL("../../../app/design/tokens.css", import.meta.url), "utf8");
const THEMES = ["light", "dark"] as const;
type Theme = (typeof THEMES)[number];

const pairs = new Map(
  [...css.matchAll(/--([\w-]+): light-dark\((#\w{6}), (#\w{6})\);/g)].map(([, name = "", light = "", dark = ""]) => [
    name,
    { light, dark },
  ]),
);
// The first value of a name is the screen's; print sets some again further down.
const plain = new Map(
  [...css.matchAll(/--([\w-]+): (#\w{6});/g)].reverse().map(([, name = "", value = ""]) => [name, value]),
);

function colorOf(token: string, theme: Theme): string {
  const pair = pairs.get(token);
  if (!pair) throw new Error(`tokens.css has no --${token}`);
  return pair[theme];
}

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((channel) => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio, WCAG 2.2. */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const SURFACES = ["paper", "desk", "card"] as const;
const TEXT_PAIRS: [string, string][] = [
  ...SURFACES.flatMap((surface): [string, string][] =>
    ["ink", "soft", "accent", "lost", "kept", "doubt"].map((text) => [text, surface]),
  ),
  ["ink", "attic-air"],
  ["lost", "attic-air"],
  ["ink", "ground"],
  ["ink", "accent-tint"],
  ["accent-strong", "accent-tint"],
  ["lost", "lost-tint"],
  ["kept", "kept-tint"],
  ["ink", "kept-tint"],
  ["on-accent", "accent"],
  ["on-accent", "accent-strong"],
  ["on-kept", "kept"],
  ["on-lost", "lost"],
  ["on-regained", "regained"],
  ["on-outside", "outside"],
  ["on-blower", "blower"],
  ["on-bar", "bar"],
  ["on-bar-soft", "bar"],
];
const GRAPHIC_PAIRS: [string, string][] = [
  ...["kept", "lost", "regained", "outside", "ink", "accent", "field-line"].map((mark): [string, string] => [
    mark,
    "card",
  ]),
  ...["kept", "lost", "accent", "ink", "field-line"].map((mark): [string, string] => [mark, "paper"]),
  ["kept", "attic-air"],
  ["lost", "attic-air"],
  ["kept", "kept-tint"],
  ["outside", "outside-tint"],
];

describe("contrast of the tokens", () => {
  test("known pairs come out as published: black on white 21, #767676 on white 4.54 (WCAG 2.2 understanding 1.4.3)", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  });
  describe.each(THEMES)("%s", (theme) => {
    test.each(TEXT_PAIRS)("%s on %s reads: 4.5 to 1 (WCAG 1.4.3)", (text, surface) => {
      expect(contrast(colorOf(text, theme), colorOf(surface, theme))).toBeGreaterThanOrEqual(4.5);
    });
    test.each(GRAPHIC_PAIRS)("%s on %s is seen: 3 to 1 (WCAG 1.4.11)", (mark, surface) => {
      expect(contrast(colorOf(mark, theme), colorOf(surface, theme))).toBeGreaterThanOrEqual(3);
    });
    test("a pattern's marks stand out from their ground by 3 to 1, so that grey print tells kept and lost apart", () => {
      expect(contrast(colorOf("lost", theme), colorOf("lost-mark", theme))).toBeGreaterThanOrEqual(3);
      expect(contrast(colorOf("regained", theme), colorOf("regained-mark", theme))).toBeGreaterThanOrEqual(3);
    });
  });
});

describe("one set of values", () => {
  test("the plain values for older browsers are the light ones of the pairs", () => {
    expect(pairs.size).toBeGreaterThan(25);
    for (const [name, { light }] of pairs) expect({ name, value: plain.get(name) }).toEqual({ name, value: light });
  });
  test("a page by link is dark as the app is, for a reader who wants it so", () => {
    const names = [...INKS, "field-line", "on-accent"] as const;
    expect(Object.keys(DARK_INKS).sort()).toEqual([...names].sort());
    for (const ink of names) expect({ ink, value: DARK_INKS[ink] }).toEqual({ ink, value: colorOf(ink, "dark") });
  });
  test("paper prints the light theme", () => {
    for (const ink of INKS) expect({ ink, value: PAPER_INKS[ink] }).toEqual({ ink, value: colorOf(ink, "light") });
  });
});
