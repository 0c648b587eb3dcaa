import { type Box, placeLabel, textBox } from "./boxes.ts";
import type { NumberText } from "./number-text.ts";
import type { FrontierPoint, PriceFrontierInput } from "./price-frontier.ts";
import { coordinate as c, type TextShape } from "./scene.ts";
import type { PriceFrontierWords } from "./words/price-frontier-words.ts";

/** Every name of the drawing that finds a place where it covers nothing; the chosen point is served first. */
export function nameThings({
  input,
  points,
  today,
  at,
  plot,
  y,
  words,
  text,
}: {
  input: PriceFrontierInput;
  points: readonly FrontierPoint[];
  today: { cx: number; cy: number };
  at: (point: FrontierPoint) => { cx: number; cy: number };
  plot: { left: number; right: number; top: number; bottom: number };
  y: (cfm: number) => number;
  words: PriceFrontierWords;
  text: NumberText;
}): TextShape[] {
  const sheet: Box = { x: plot.left, y: plot.top - 4, width: plot.right - plot.left, height: plot.bottom - plot.top };
  const taken: Box[] = [today, ...points.map(at)].map(({ cx, cy }) => ({
    x: cx - 9,
    y: cy - 9,
    width: 18,
    height: 18,
  }));
  if (input.targetCfm25 !== undefined)
    taken.push({ x: plot.left, y: y(input.targetCfm25) - 1, width: plot.right - plot.left, height: 2 });
  taken.push(...alongTheWay([today, ...points.map(at)]));
  for (const point of points) {
    if (point.p10Cfm25 === undefined || point.p90Cfm25 === undefined) continue;
    const [top, foot] = [y(point.p90Cfm25), y(point.p10Cfm25)];
    taken.push({ x: at(point).cx - 2, y: top, width: 4, height: foot - top });
  }
  const wanted: TextShape[][] = [];
  const start = { kind: "text", size: 13, anchor: "start" } as const;
  wanted.push([
    {
      ...start,
      x: c(today.cx + 12),
      y: c(today.cy - 6),
      text: `${words.today} ${text.cfm(input.todayCfm25)}`,
      fill: "ink",
    },
  ]);
  if (input.targetCfm25 !== undefined) {
    const label = `${words.target} ${text.cfm(input.targetCfm25)}`;
    const base = { ...start, text: label, fill: "kept", weight: 600 } as const;
    wanted.push([
      { ...base, x: plot.left + 8, y: c(y(input.targetCfm25) + 17) },
      { ...base, x: plot.right - 8, y: c(y(input.targetCfm25) - 7), anchor: "end" },
    ]);
  }
  // The chosen one is named first, so that it never goes without.
  for (const { label, isChosen, cx, cy } of namesOf(points, at).sort(
    (one, other) => Number(other.isChosen) - Number(one.isChosen),
  )) {
    const base = { ...start, text: label, fill: "ink", weight: isChosen ? 600 : 400 } as const;
    const atEdge = { ...base, x: c(plot.right - 6), y: c(cy - 24), anchor: "end" } as const;
    wanted.push([
      { ...base, x: c(cx + 13), y: c(cy - 10) },
      { ...base, x: c(cx), y: c(cy - 17), anchor: "middle" },
      { ...base, x: c(cx + 6), y: c(cy - 15), anchor: "end" },
      { ...base, x: c(cx), y: c(cy + 26), anchor: "middle" },
      { ...base, x: c(cx - 13), y: c(cy + 20), anchor: "end" },
      { ...base, x: c(cx + 13), y: c(cy - 26) },
      // A long name may lean on the edge, as long as it still stands over its point.
      ...(textBox(atEdge).x <= cx + 6
        ? [atEdge, { ...atEdge, y: c(cy + 24) }, { ...atEdge, y: c(cy - 44) }, { ...atEdge, y: c(cy - 60) }]
        : []),
    ]);
  }
  return wanted.flatMap((candidates) => {
    const label = placeLabel({ candidates, taken, sheet, margin: 1 });
    if (!label) return [];
    taken.push(textBox(label));
    return [label];
  });
}

/** Discs closer than this look like one. */
const ONE_SPOT = 12;

/** What is written beside the points; those that stand on one spot share it: "3, 4". The chosen one has its own. */
function namesOf(
  points: readonly FrontierPoint[],
  at: (point: FrontierPoint) => { cx: number; cy: number },
): { label: string; isChosen: boolean; cx: number; cy: number }[] {
  const names: { label: string; isChosen: boolean; cx: number; cy: number }[] = [];
  for (const point of points) {
    const { cx, cy } = at(point);
    const last = names.at(-1);
    const isChosen = point.isChosen ?? false;
    const isSameSpot = last && !last.isChosen && !isChosen && Math.hypot(cx - last.cx, cy - last.cy) < ONE_SPOT;
    if (isSameSpot) names[names.length - 1] = { label: `${last.label}, ${point.label}`, isChosen, cx, cy };
    else names.push({ label: point.label, isChosen, cx, cy });
  }
  return names;
}

/** The line between the points as a string of small boxes, so that no name lies on it. */
function alongTheWay(way: readonly { cx: number; cy: number }[]): Box[] {
  const steps = 24;
  return way.slice(1).flatMap((end, index) => {
    const start = way[index] ?? end;
    return Array.from({ length: steps }, (_, step): Box => {
      const share = step / steps;
      return {
        x: start.cx + (end.cx - start.cx) * share - 2,
        y: start.cy + (end.cy - start.cy) * share - 2,
        width: 4,
        height: 4,
      };
    });
  });
}
