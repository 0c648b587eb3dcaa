import { sum } from "d3-array";
import type { Cfm } from "#lib/units/quantity.ts";
import { type NumberText, numberText } from "../number-text.ts";
import type { Scene, SceneOptions, SceneTable } from "../scene.ts";
import { drawDucts } from "./draw-ducts.ts";
import { drawFrame } from "./draw-frame.ts";
import { drawLabels, occupied } from "./draw-labels.ts";
import { drawLeaks } from "./draw-leaks.ts";
import { layOutDucts } from "./duct-layout.ts";
import { type DuctSpot, ductSpots } from "./duct-spots.ts";
import { layOutHouse, placeKindOf } from "./house-frame.ts";
import type { HouseSectionInput, SectionLeak } from "./house-section-input.ts";
import { HOUSE_SECTION_WORDS, type HouseSectionWords } from "./house-section-words.ts";
import { placeDiscs } from "./leak-discs.ts";

/** The drawing of a house, and where a leak can be put on it. */
export interface HouseScene extends Scene {
  spots: readonly DuctSpot[];
}

/**
 * A cut through this house: its storeys and places, ducts as ribbons as wide as their flow, leaks as numbered discs
 * whose area is their leakage. The same drawing serves entry, result, proposal and crew sheet.
 */
export function houseSectionScene(
  input: HouseSectionInput,
  { width, language = "en", units }: SceneOptions,
): HouseScene {
  const words = HOUSE_SECTION_WORDS[language];
  const text = numberText(language, units);
  const frame = layOutHouse({ input, width });
  const layout = layOutDucts({ input, frame });
  const discs = placeDiscs({ input, frame, layout });
  const taken = occupied({ input, layout, discs, frame });

  const leaks = drawLeaks({ discs, frame, taken, words, text });
  const labels = drawLabels({ input, frame, layout, taken, words });
  return {
    width,
    height: Math.ceil(frame.height),
    title: words.title,
    finding: sayFinding({ input, words, text }),
    note: words.note,
    table: tabulate({ input, words, text }),
    shapes: [...drawFrame({ input, frame }), ...drawDucts({ layout, frame }), ...leaks, ...labels],
    spots: ductSpots({ input, layout, discs }),
  };
}

function sayFinding({
  input,
  words,
  text,
}: {
  input: HouseSectionInput;
  words: HouseSectionWords;
  text: NumberText;
}): string {
  const leaks = input.systems.flatMap((system) => system.leaks);
  const open = leaks.filter((leak) => leak.state === "open").sort((a, b) => b.cfm25 - a.cfm25);
  const cells = input.systems.flatMap((system) => system.notYetFound).sort((a, b) => b.cfm25 - a.cfm25);
  const openCfm25: Cfm = sum(open, (leak) => leak.cfm25) + sum(cells, (cell) => cell.cfm25);
  const [largest, largestCell] = [open[0], cells[0]];

  if (open.length < leaks.length && openCfm25 > 0) {
    return words.someSealed({ sealed: leaks.length - open.length, all: leaks.length, cfm: text.cfm(openCfm25) });
  }
  if (largestCell && largestCell.cfm25 > openCfm25 / 2) {
    return words.mostNotFound({ side: words.side[largestCell.side], cfm: text.cfm(largestCell.cfm25) });
  }
  if (!largest) return leaks.length > 0 ? words.allSealed(leaks.length) : words.nothingOpen;
  const label = nameOf(largest);
  const cfm = text.cfm(largest.cfm25);
  if (open.length === 1 && cells.length === 0) return words.onlyOne({ label, cfm });
  return words.largest({ label, cfm, share: text.percent(largest.cfm25 / openCfm25) });
}

function nameOf(leak: SectionLeak): string {
  return `${leak.number}, ${leak.label}`;
}

function tabulate({
  input,
  words,
  text,
}: {
  input: HouseSectionInput;
  words: HouseSectionWords;
  text: NumberText;
}): SceneTable {
  const rows = input.systems.flatMap((system) => {
    const suffix = input.systems.length > 1 && system.label ? ` (${system.label})` : "";
    const found = [...system.leaks].sort((a, b) => a.number - b.number);
    return [
      ...found.map((leak) => {
        const place = input.places.find(({ id }) => id === leak.placeId);
        return [
          `${leak.number} · ${leak.label}${suffix}`,
          place?.label ?? words.place[placeKindOf(input, leak.placeId)],
          words.side[leak.side],
          text.flow(leak.cfm25),
          leak.state === "open" ? words.open : words.sealed,
        ];
      }),
      ...system.notYetFound.map((cell) => [
        `? · ${words.notYetFound}${suffix}`,
        "–",
        words.side[cell.side],
        text.flow(cell.cfm25),
        words.open,
      ]),
    ];
  });
  const columns = words.columns.map((label, index) => ({
    label: text.withFlowUnit(label),
    ...(index === 3 ? { isNumeric: true } : {}),
  }));
  return { caption: words.caption, columns, rows };
}
