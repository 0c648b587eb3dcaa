import { scaleLinear } from "d3-scale";
import type { Cents, Cfm } from "#lib/units/quantity.ts";
import { type Box, placeLabel, textBox } from "./boxes.ts";
import { axisName, bottomTicks, horizontalLines, line } from "./chart-axes.ts";
import { type NumberText, numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type Scene, type SceneOptions, type Shape, type TextShape } from "./scene.ts";
import { PRICE_FRONTIER_WORDS, type PriceFrontierWords } from "./words/price-frontier-words.ts";

export interface PriceFrontierInput {
  todayCfm25: Cfm;
  targetCfm25?: Cfm;
  points: readonly FrontierPoint[];
}

/** A set of repairs that no other set beats at its price. */
export interface FrontierPoint {
  id: string;
  /** Short: "A", or "the big leak only". */
  label: string;
  /** In sentences and tables, where the label alone would say too little. */
  name?: string;
  priceUsdCents: Cents;
  predictedCfm25: Cfm;
  p10Cfm25?: Cfm;
  p90Cfm25?: Cfm;
  isChosen?: boolean;
}

/** Price across, leakage left up: where the line flattens, more money buys little. */
export function priceFrontierScene(input: PriceFrontierInput, { width, language = "en", units }: SceneOptions): Scene {
  const words = PRICE_FRONTIER_WORDS[language];
  const text = numberText(language, units);
  const points = [...input.points].sort((a, b) => a.priceUsdCents - b.priceUsdCents || (a.id < b.id ? -1 : 1));
  const compact = isCompact({ width });
  const height = compact ? 300 : 330;
  const plot = { left: 46, right: width - 16, top: 34, bottom: height - 48 };
  const dearest = Math.max(100, ...points.map((point) => point.priceUsdCents));
  const most = Math.max(
    1,
    input.todayCfm25,
    input.targetCfm25 ?? 0,
    ...points.map((point) => point.p90Cfm25 ?? point.predictedCfm25),
  );
  const x = scaleLinear([0, dearest / 100], [plot.left, plot.right - 18]);
  const yOfFlow = scaleLinear([0, text.flowNumber(most * 1.06)], [plot.bottom, plot.top]);
  const y = (cfm25: Cfm) => yOfFlow(text.flowNumber(cfm25));
  const at = (point: FrontierPoint) => ({ cx: c(x(point.priceUsdCents / 100)), cy: c(y(point.predictedCfm25)) });
  const today = { cx: x(0), cy: y(input.todayCfm25) };

  const shapes: Shape[] = [
    ...horizontalLines({
      ticks: yOfFlow.ticks(4).map((value) => ({ at: yOfFlow(value), text: text.plain(value) })),
      left: plot.left,
      right: plot.right,
    }),
    ...bottomTicks({
      ticks: x.ticks(compact ? 4 : 6).map((value) => ({ at: x(value), text: text.dollars(value) })),
      y: plot.bottom,
      sheetWidth: width,
    }),
    axisName({ x: 0, y: 14, text: text.withFlowUnit(words.leakage) }),
    axisName({ x: plot.right, y: height - 6, text: words.price, anchor: "end" }),
  ];
  if (input.targetCfm25 !== undefined) {
    const targetY = y(input.targetCfm25);
    shapes.push(
      {
        kind: "rect",
        x: plot.left,
        y: c(targetY),
        width: plot.right - plot.left,
        height: c(plot.bottom - targetY),
        fill: "kept-tint",
      },
      {
        kind: "path",
        d: line({ x1: plot.left, y1: targetY, x2: plot.right, y2: targetY }),
        stroke: "kept",
        strokeWidth: 1.8,
      },
    );
  }
  shapes.push({
    kind: "path",
    d: line({ x1: plot.left, y1: plot.bottom, x2: plot.right, y2: plot.bottom }),
    stroke: "ink",
    strokeWidth: 1.2,
  });
  const way = [today, ...points.map(at)]
    .map(({ cx, cy }, index) => `${index === 0 ? "M" : "L"}${c(cx)} ${c(cy)}`)
    .join("");
  shapes.push({ kind: "path", d: way, stroke: "accent", strokeWidth: 2 });
  shapes.push({
    kind: "circle",
    cx: c(today.cx),
    cy: c(today.cy),
    r: 5.5,
    fill: "lost",
    stroke: "card",
    strokeWidth: 1.5,
  });
  shapes.push(
    ...points.map((point): Shape => {
      const { cx, cy } = at(point);
      const whisker = point.p10Cfm25 !== undefined && point.p90Cfm25 !== undefined;
      return {
        kind: "item",
        id: point.id,
        label: words.point({
          label: nameOf(point),
          price: text.price(point.priceUsdCents),
          cfm: text.cfm(point.predictedCfm25),
        }),
        shapes: [
          ...(whisker
            ? [
                {
                  kind: "path",
                  d: line({ x1: cx, y1: y(point.p10Cfm25 ?? 0), x2: cx, y2: y(point.p90Cfm25 ?? 0) }),
                  stroke: "accent",
                  strokeWidth: 4,
                  opacity: 0.4,
                } as const,
              ]
            : []),
          ...(point.isChosen
            ? [{ kind: "circle", cx, cy, r: 11, fill: "card", stroke: "accent", strokeWidth: 2 } as const]
            : []),
          { kind: "circle", cx, cy, r: 6, fill: "accent", stroke: "card", strokeWidth: 1.5 },
        ],
      };
    }),
    ...nameThings({ input, points, today, at, plot, y, words, text }),
  );

  return {
    width,
    height,
    title: words.title,
    finding: sayFinding({ input, points, words, text }),
    note: words.note,
    table: {
      caption: words.caption,
      columns: words.columns.map((label, index) => ({
        label: text.withFlowUnit(label),
        isNumeric: index === 1 || index === 2,
      })),
      rows: points.map((point) => [
        nameOf(point),
        text.price(point.priceUsdCents),
        text.flow(point.predictedCfm25),
        input.targetCfm25 === undefined
          ? words.noTarget
          : point.predictedCfm25 <= input.targetCfm25
            ? words.meets
            : words.misses,
      ]),
    },
    shapes,
  };
}

const nameOf = ({ name, label }: FrontierPoint): string => name ?? label;

function sayFinding({
  input,
  points,
  words,
  text,
}: {
  input: PriceFrontierInput;
  points: readonly FrontierPoint[];
  words: PriceFrontierWords;
  text: NumberText;
}): string {
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return words.none;
  const price = (point: FrontierPoint) => text.price(point.priceUsdCents);
  const { targetCfm25 } = input;
  if (targetCfm25 === undefined) return words.plain({ low: price(first), high: price(last) });
  const reaching = points.find((point) => point.predictedCfm25 <= targetCfm25);
  const target = text.cfm(targetCfm25);
  if (reaching)
    return words.cheapest({
      label: nameOf(reaching),
      price: price(reaching),
      target,
      cfm: text.cfm(reaching.predictedCfm25),
    });
  return words.outOfReach({ target, cfm: text.cfm(Math.min(...points.map((point) => point.predictedCfm25))) });
}

function nameThings({
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
  for (const point of [...points].sort(
    (one, other) => Number(other.isChosen ?? false) - Number(one.isChosen ?? false),
  )) {
    const { cx, cy } = at(point);
    const base = { ...start, text: point.label, fill: "ink", weight: point.isChosen ? 600 : 400 } as const;
    wanted.push([
      { ...base, x: c(cx + 13), y: c(cy - 10) },
      { ...base, x: c(cx), y: c(cy - 17), anchor: "middle" },
      { ...base, x: c(cx + 6), y: c(cy - 15), anchor: "end" },
      { ...base, x: c(cx), y: c(cy + 26), anchor: "middle" },
      { ...base, x: c(cx - 13), y: c(cy + 20), anchor: "end" },
      { ...base, x: c(cx + 13), y: c(cy - 26) },
      { ...base, x: c(plot.right - 6), y: c(cy - 24), anchor: "end" },
      { ...base, x: c(plot.right - 6), y: c(cy + 24), anchor: "end" },
    ]);
  }
  return wanted.flatMap((candidates) => {
    const label = placeLabel({ candidates, taken, sheet, margin: 1 });
    if (!label) return [];
    taken.push(textBox(label));
    return [label];
  });
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
