import type { DrawnNode, HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { isCompact } from "../scene.ts";

/** From hundredths of a set-up drawing to drawing units, with the sizes that belong to the width of the sheet. */
export interface HoseFrame {
  width: number;
  isCompact: boolean;
  /** The foot of the house; the list of hoses begins below. */
  houseBottom: number;
  /** The same in hundredths: what is below the floor is cut short where nothing happens there. */
  lowest: number;
  discR: number;
  textSize: number;
  fanR: number;
  x(hundredths: number): number;
  y(hundredths: number): number;
  at(node: Pick<DrawnNode, "x" | "y">): { x: number; y: number };
}

const MARGIN = 6;
const FLOOR = 72;
const CUT_SHORT = 82;

export function hoseFrame({ nodes, gauge }: HoseDrawing, width: number): HoseFrame {
  const compact = isCompact({ width });
  const isUsedBelow = gauge.bottom > FLOOR || nodes.some(({ y }) => y > FLOOR);
  const lowest = isUsedBelow ? 100 : CUT_SHORT;
  const fullHeight = compact ? 352 : 448;
  const x = (hundredths: number) => MARGIN + (hundredths / 100) * (width - 2 * MARGIN);
  const y = (hundredths: number) => MARGIN + (hundredths / 100) * (fullHeight - 2 * MARGIN);
  return {
    width,
    isCompact: compact,
    houseBottom: lowest === 100 ? fullHeight : y(lowest),
    lowest,
    discR: compact ? 7.5 : 9,
    textSize: compact ? 12 : 13,
    fanR: compact ? 13 : 17,
    x,
    y,
    at: (node) => ({ x: x(node.x), y: y(node.y) }),
  };
}
