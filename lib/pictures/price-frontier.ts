import { scaleLinear } from "d3-scale";
import type { Cents, Cfm } from "#lib/units/quantity.ts";
import { axisName, bottomTicks, horizontalLines, line } from "./chart-axes.ts";
import { type NumberText, numberText } from "./number-text.ts";
import { nameThings } from "./price-frontier-names.ts";
import { coordinate as c, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
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
