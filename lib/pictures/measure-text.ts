import { MONO_WIDTH, OTHER_GLYPH_WIDTH, SANS_REGULAR_WIDTHS, SANS_SEMIBOLD_WIDTHS } from "./glyph-widths.ts";
import type { TextShape } from "./scene.ts";

const FIRST_CODE_POINT = 32;

type Typeset = Pick<TextShape, "text" | "size" | "weight" | "family">;

/**
 * How wide a line of text runs: the sum of its letters' advance widths. Kerning and tabular figures are left out; they
 * move a label by less than its own side bearing.
 */
export function textWidth({ text, size, weight = 400, family = "sans" }: Typeset): number {
  const widths = weight === 600 ? SANS_SEMIBOLD_WIDTHS : SANS_REGULAR_WIDTHS;
  let thousandths = 0;
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? FIRST_CODE_POINT;
    thousandths += family === "mono" ? MONO_WIDTH : (widths[code - FIRST_CODE_POINT] ?? OTHER_GLYPH_WIDTH);
  }
  return (thousandths * size) / 1000;
}

/** Breaks a text into lines no wider than `maxWidth`, at spaces only; a single word may stand out. */
export function wrapText({ maxWidth, ...typeset }: Typeset & { maxWidth: number }): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of typeset.text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth({ ...typeset, text: longer }) > maxWidth) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}

/** The text itself when it fits, else its beginning with an ellipsis. */
export function fitText({ maxWidth, ...typeset }: Typeset & { maxWidth: number }): string {
  if (textWidth(typeset) <= maxWidth) return typeset.text;
  for (let length = typeset.text.length - 1; length > 0; length -= 1) {
    const shorter = `${typeset.text.slice(0, length).trimEnd()}…`;
    if (textWidth({ ...typeset, text: shorter }) <= maxWidth) return shorter;
  }
  return "";
}
