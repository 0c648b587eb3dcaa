import { refuse } from "#lib/errors/input-problem.ts";
import { PAPER_INKS } from "#lib/pictures/paper-inks.ts";
import { contrastRatio, LEAST_TEXT_CONTRAST, readableShade, readHexColor } from "./contrast.ts";

/** What an accent is read on, and what is read on it: the page, a card, white letters on a button. */
const SURFACES = [PAPER_INKS.paper, PAPER_INKS.card, "#ffffff"];

/**
 * The color of a firm for links, buttons and rules on its papers. Valid: #rrggbb or #rgb whose contrast with page and
 * card is at least 4.5. Source: WCAG 2.2, 1.4.3.
 * @throws InputProblem that tells the contrast and the nearest shade that can be read.
 */
export function readAccentColor(typed: string, field = "accentColor"): string {
  const color = readHexColor(typed);
  if (color === undefined)
    return refuse({
      field,
      detail: `“${typed.slice(0, 20)}” is not a color as #rrggbb`,
      fix: "Enter # and six digits from 0 to f, such as #0f5566.",
    });
  const least = Math.min(...SURFACES.map((surface) => contrastRatio(color, surface)));
  if (least < LEAST_TEXT_CONTRAST)
    refuse({
      field,
      detail: `${color} has a contrast of ${least.toFixed(1)} to the page; tired eyes need ${LEAST_TEXT_CONTRAST}`,
      fix: `Enter a darker shade; the nearest that can be read is ${readableShade(color, SURFACES)}.`,
    });
  return color;
}
