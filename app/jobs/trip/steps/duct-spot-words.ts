import type { DuctPart } from "#lib/job/leak-site.ts";
import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";

const PART_WORDS: Readonly<Record<DuctPart, string>> = {
  cabinet: "air handler cabinet",
  plenum: "main box at the air handler",
  trunk: "main duct",
  "take-off": "where a branch leaves the main duct",
  boot: "register box",
};

/** A spot of the drawing in words: "Supply, attic: register box, 2 of 4 from the left". */
export function spotWords({ side, part, number, count }: DuctSpot, placeWords: string): string {
  const which = count > 1 ? `, ${number} of ${count} from the left` : "";
  return `${side === "supply" ? "Supply" : "Return"}, ${placeWords}: ${PART_WORDS[part]}${which}`;
}
