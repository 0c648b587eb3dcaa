import { max } from "d3-array";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, curveBasis } from "d3-shape";
import { refuse } from "#lib/errors/input-problem.ts";

import { axisName, bottomTicks, line } from "./chart-axes.ts";
import { textWidth } from "./measure-text.ts";
import { numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { SAVINGS_RANGE_WORDS } from "./words/savings-words.ts";

export interface SavingsRangeInput {
  p10UsdPerYear: number;
  p50UsdPerYear: number;
  p90UsdPerYear: number;
  /** The draws themselves, counted in bins of equal width. Without them a curve is bent through the three figures. */
  bins?: readonly { fromUsd: number; toUsd: number; drawsCount: number }[];
}

interface Density {
  usd: number;
  share: number;
}

/** The 10 % quantile of the standard normal distribution, without its sign. */
const Z_10 = 1.2815515655;

/** A hill of chances over dollars a year, its middle four fifths full, its tails pale. */
export function savingsRangeScene(input: SavingsRangeInput, { width, language = "en" }: SceneOptions): Scene {
  const words = SAVINGS_RANGE_WORDS[language];
  const text = numberText(language);
  const { p10UsdPerYear: p10, p50UsdPerYear: p50, p90UsdPerYear: p90 } = input;
  if (!(p10 <= p50 && p50 <= p90)) {
    refuse({
      field: "p50UsdPerYear",
      detail: "The three figures are out of order.",
      fix: "Give p10, p50 and p90 in rising order.",
    });
  }
  const compact = isCompact({ width });
  const height = compact ? 236 : 262;
  const plot = { left: 10, right: width - 10, top: 44, bottom: height - 50 };
  const curve = densityOf(input);
  const first = curve[0]?.usd ?? 0;
  const last = curve[curve.length - 1]?.usd ?? 1;
  const x = scaleLinear([Math.min(0, first), Math.max(0, last, first + 1)], [plot.left, plot.right]);
  const y = scaleLinear([0, max(curve, ({ share }) => share) ?? 1], [plot.bottom, plot.top]);
  const hill = (points: readonly Density[]) =>
    area<Density>(
      ({ usd }) => x(usd),
      plot.bottom,
      ({ share }) => y(share),
    ).curve(curveBasis)([...points]) ?? "";

  const ticks = x.ticks(compact ? 4 : 7).map((value) => ({ at: x(value), text: text.dollars(value) }));
  const shapes: Shape[] = [
    { kind: "path", d: hill(curve), fill: "kept-tint" },
    { kind: "path", d: hill(between(curve, p10, p90)), fill: "kept" },
    {
      kind: "path",
      d: line({ x1: plot.left, y1: plot.bottom, x2: plot.right, y2: plot.bottom }),
      stroke: "ink",
      strokeWidth: 1.2,
    },
    ...bottomTicks({ ticks, y: plot.bottom, sheetWidth: width }),
    axisName({ x: plot.right, y: height - 8, text: words.axis, anchor: "end" }),
    ...drawBreakEven({ x, plot }),
    ...drawFigures({ x, y, curve, plot, figures: [p10, p50, p90].map((usd) => ({ usd, text: text.dollars(usd) })) }),
    ...drawChance({ from: x(p10), middle: x(p50), to: x(p90), y: plot.bottom - 16, label: words.four }),
  ];

  const values = { p10: text.dollars(p10), p50: text.dollars(p50), p90: text.dollars(p90) };
  return {
    width,
    height,
    title: words.title,
    finding: words.finding(values),
    table: {
      caption: words.caption,
      columns: words.columns.map((label, index) => ({ label, isNumeric: index === 1 })),
      rows: words.rows.map((label, index) => [label, [values.p10, values.p50, values.p90][index] ?? ""]),
    },
    shapes,
  };
}

/** The draws' shares, or two half normal curves that meet at the median and put a tenth in each tail. */
function densityOf({ p10UsdPerYear, p50UsdPerYear, p90UsdPerYear, bins }: SavingsRangeInput): Density[] {
  if (bins && bins.length > 2) {
    const [start, end] = [bins[0], bins[bins.length - 1]];
    const counts = bins.map((bin) => ({ usd: (bin.fromUsd + bin.toUsd) / 2, share: bin.drawsCount }));
    return [{ usd: start?.fromUsd ?? 0, share: 0 }, ...counts, { usd: end?.toUsd ?? 0, share: 0 }];
  }
  const least = Math.max(1, (p90UsdPerYear - p10UsdPerYear) / 100);
  const below = Math.max(least, p50UsdPerYear - p10UsdPerYear) / Z_10;
  const above = Math.max(least, p90UsdPerYear - p50UsdPerYear) / Z_10;
  const steps = 48;
  const reach = 2.9;
  return Array.from({ length: steps + 1 }, (_, index): Density => {
    const z = reach * ((2 * index) / steps - 1);
    return { usd: p50UsdPerYear + z * (z < 0 ? below : above), share: Math.exp(-0.5 * z * z) };
  });
}

/** The part of the curve between two values, cut exactly there. */
function between(curve: readonly Density[], low: number, high: number): Density[] {
  const inside = curve.filter(({ usd }) => usd > low && usd < high);
  return [{ usd: low, share: shareAt(curve, low) }, ...inside, { usd: high, share: shareAt(curve, high) }];
}

function shareAt(curve: readonly Density[], usd: number): number {
  const after = curve.findIndex((point) => point.usd >= usd);
  const [a, b] = [curve[after - 1], curve[after]];
  if (!a || !b) return b?.share ?? 0;
  return a.share + ((b.share - a.share) * (usd - a.usd)) / Math.max(1e-9, b.usd - a.usd);
}

/** The words for the full part of the hill, in its wider half, if they fit. */
function drawChance({
  from,
  middle,
  to,
  y,
  label,
}: {
  from: number;
  middle: number;
  to: number;
  y: number;
  label: string;
}): Shape[] {
  const size = 13;
  const [start, end] = middle - from > to - middle ? [from, middle] : [middle, to];
  if (end - start < textWidth({ text: label, size, weight: 600 }) + 10) return [];
  return [
    {
      kind: "text",
      x: c((start + end) / 2),
      y: c(y),
      text: label,
      size,
      weight: 600,
      fill: "on-kept",
      anchor: "middle",
    },
  ];
}

interface Plot {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Left of nothing saved the work costs money: that side is marked. */
function drawBreakEven({ x, plot }: { x: ScaleLinear<number, number>; plot: Plot }): Shape[] {
  const zero = x(0);
  if (zero <= plot.left + 1) return [];
  return [
    {
      kind: "rect",
      x: plot.left,
      y: plot.bottom - 8,
      width: c(zero - plot.left),
      height: 8,
      fill: "lost",
      pattern: "hatched",
    },
    {
      kind: "path",
      d: line({ x1: zero, y1: plot.bottom, x2: zero, y2: plot.top }),
      stroke: "ink",
      strokeWidth: 1,
      dash: [3, 3],
    },
  ];
}

function drawFigures({
  x,
  y,
  curve,
  plot,
  figures,
}: {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  curve: readonly Density[];
  plot: Plot;
  figures: readonly { usd: number; text: string }[];
}): Shape[] {
  return figures.flatMap((figure, index): Shape[] => {
    const isMiddle = index === 1;
    const at = x(figure.usd);
    const top = y(shareAt(curve, figure.usd));
    const size = isMiddle ? 20 : 14;
    const half = textWidth({ text: figure.text, size, weight: 600 }) / 2;
    const baseline = isMiddle ? plot.top - 14 : top - 10;
    const shifted = isMiddle ? at : index === 0 ? at - half - 2 : at + half + 2;
    const textX = Math.min(plot.right - half, Math.max(plot.left + half, shifted));
    return [
      {
        kind: "path",
        d: line({ x1: at, y1: plot.bottom, x2: at, y2: isMiddle ? plot.top - 8 : top - 4 }),
        stroke: isMiddle ? "ink" : "kept",
        strokeWidth: isMiddle ? 2 : 1.6,
      },
      {
        kind: "text",
        x: c(textX),
        y: c(baseline),
        text: figure.text,
        size,
        weight: 600,
        fill: "ink",
        anchor: "middle",
      },
    ];
  });
}
