import { describe, expect, test } from "vitest";
import { fitText, textWidth, wrapText } from "#lib/pictures/measure-text.ts";

describe("the length of a label", () => {
  test("sums the advance widths of the font's hmtx table: space 280, H 694, i 252 of 1,000", () => {
    expect(textWidth({ text: "Hi", size: 1000 })).toBe(694 + 252);
    expect(textWidth({ text: "H i", size: 10 })).toBeCloseTo(12.26, 9);
  });
  test("semibold runs wider, mono 632 a letter", () => {
    expect(textWidth({ text: "Hi", size: 1000, weight: 600 })).toBe(699 + 285);
    expect(textWidth({ text: "Hi", size: 1000, family: "mono" })).toBe(1264);
  });
  test("a text that does not fit ends in an ellipsis and then fits", () => {
    const short = fitText({ text: "living room boot to drywall", size: 14, maxWidth: 90 });
    expect(short).toMatch(/^living.*…$/);
    expect(textWidth({ text: short, size: 14 })).toBeLessThanOrEqual(90);
  });
  test("lines break at spaces and lose no word", () => {
    const lines = wrapText({ text: "attic at the air handler", size: 14, maxWidth: 80 });
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(" ")).toBe("attic at the air handler");
  });
});
