import { max, maxIndex, min, minIndex, sum } from "d3-array";
import { scaleBand, scaleLinear, scalePoint } from "d3-scale";
import { area, curveMonotoneX, line as linePath } from "d3-shape";
import { refuse } from "#lib/errors/input-problem.ts";
import type { Fahrenheit, Hours } from "#lib/units/quantity.ts";
import { axisName, horizontalLines, line } from "./chart-axes.ts";
import { numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { CLIMATE_WORDS, type ClimateWords } from "./words/climate-words.ts";

export interface ClimateInput {
  stationLabel: string;
  /** January first; low and high are the usual ends of a day in that month. */
  months: readonly { meanF: Fahrenheit; lowF: Fahrenheit; highF: Fahrenheit }[];
  bins?: readonly { temperatureF: Fahrenheit; hours: Hours }[];
  heatingBalanceF?: Fahrenheit;
  coolingBalanceF?: Fahrenheit;
}

/** The year in two panels: the months' temperatures, and the hours at each temperature. */
export function climateScene(input: ClimateInput, { width, language = "en" }: SceneOptions): Scene {
  const words = CLIMATE_WORDS[language];
  const text = numberText(language);
  if (!(input.months.length === 12)) {
    refuse({
      field: "months",
      detail: "A year has twelve months.",
      fix: "Give twelve monthly temperatures, January first.",
    });
  }
  const panelHeight = isCompact({ width }) ? 180 : 196;
  const hasBins = input.bins !== undefined && input.bins.length > 0;
  const means = input.months.map((month) => month.meanF);
  const [cold, warm] = [minIndex(means), maxIndex(means)];
  const finding = words.finding({
    station: input.stationLabel,
    coldest: words.months[cold] ?? "",
    cold: text.degrees(means[cold] ?? 0),
    warmest: words.months[warm] ?? "",
    warm: text.degrees(means[warm] ?? 0),
  });
  const heating = sum(input.bins ?? [], (bin) =>
    bin.temperatureF < (input.heatingBalanceF ?? Number.NEGATIVE_INFINITY) ? bin.hours : 0,
  );
  const cooling = sum(input.bins ?? [], (bin) =>
    bin.temperatureF > (input.coolingBalanceF ?? Number.POSITIVE_INFINITY) ? bin.hours : 0,
  );

  return {
    width,
    height: hasBins ? panelHeight * 2 + 16 : panelHeight,
    title: words.title,
    finding: hasBins
      ? words.findingHours({ finding, heating: text.plain(heating), cooling: text.plain(cooling) })
      : finding,
    ...(hasBins ? { note: words.note } : {}),
    table: {
      caption: words.caption,
      columns: words.columns.map((label, index) => ({ label, isNumeric: index > 0 })),
      rows: input.months.map((month, index) => [
        words.months[index] ?? "",
        text.plain(month.meanF),
        text.plain(month.lowF),
        text.plain(month.highF),
      ]),
    },
    shapes: [
      ...drawMonths({ input, width, height: panelHeight, words, plain: text.plain }),
      ...(hasBins
        ? drawBins({ input, width, top: panelHeight + 16, height: panelHeight, words, plain: text.plain })
        : []),
    ],
  };
}

function drawMonths({
  input,
  width,
  height,
  words,
  plain,
}: {
  input: ClimateInput;
  width: number;
  height: number;
  words: ClimateWords;
  plain: (value: number) => string;
}): Shape[] {
  const plot = { left: 40, right: width - 8, top: 32, bottom: height - 24 };
  const x = scalePoint(
    input.months.map((_, index) => index),
    [plot.left, plot.right],
  ).padding(0.5);
  const y = scaleLinear(
    [min(input.months, (m) => m.lowF) ?? 0, max(input.months, (m) => m.highF) ?? 1],
    [plot.bottom, plot.top],
  ).nice(4);
  const at = (index: number) => x(index) ?? 0;
  type Month = ClimateInput["months"][number];
  const range = area<Month>(
    (_, index) => at(index),
    (month) => y(month.lowF),
    (month) => y(month.highF),
  ).curve(curveMonotoneX)([...input.months]);
  const mean = linePath<Month>(
    (_, index) => at(index),
    (month) => y(month.meanF),
  ).curve(curveMonotoneX)([...input.months]);
  return [
    { kind: "text", x: 0, y: 14, text: words.monthsAxis, size: 12, fill: "soft" },
    { kind: "path", d: range ?? "", fill: "outside-tint" },
    ...horizontalLines({
      ticks: y.ticks(4).map((value) => ({ at: y(value), text: plain(value) })),
      left: plot.left,
      right: plot.right,
    }),
    { kind: "path", d: mean ?? "", stroke: "outside", strokeWidth: 2.6 },
    ...words.monthInitials.map(
      (initial, index): Shape => ({
        kind: "text",
        x: c(at(index)),
        y: plot.bottom + 18,
        text: initial,
        size: 12,
        fill: "soft",
        anchor: "middle",
      }),
    ),
  ];
}

function drawBins({
  input,
  width,
  top,
  height,
  words,
  plain,
}: {
  input: ClimateInput;
  width: number;
  top: number;
  height: number;
  words: ClimateWords;
  plain: (value: number) => string;
}): Shape[] {
  const bins = [...(input.bins ?? [])].sort((a, b) => a.temperatureF - b.temperatureF);
  const { heatingBalanceF = Number.NEGATIVE_INFINITY, coolingBalanceF = Number.POSITIVE_INFINITY } = input;
  const plot = { left: 40, right: width - 8, top: top + 44, bottom: top + height - 24 };
  const x = scaleBand(
    bins.map((bin) => bin.temperatureF),
    [plot.left + 2, plot.right],
  ).paddingInner(0.18);
  const y = scaleLinear([0, Math.max(1, ...bins.map((bin) => bin.hours))], [plot.bottom, plot.top]).nice(3);
  const every = Math.max(1, Math.ceil(bins.length / (isCompact({ width }) ? 7 : 13)));
  const bars = bins.map((bin): Shape => {
    const paint =
      bin.temperatureF < heatingBalanceF
        ? ({ fill: "outside" } as const)
        : bin.temperatureF > coolingBalanceF
          ? ({ fill: "card", stroke: "ink", strokeWidth: 1.4, dash: [3, 2] } as const)
          : ({ fill: "outside-tint" } as const);
    return {
      kind: "rect",
      x: c(x(bin.temperatureF) ?? 0),
      y: c(y(bin.hours)),
      width: c(x.bandwidth()),
      height: c(plot.bottom - y(bin.hours)),
      ...paint,
    };
  });
  const centreOf = (chosen: readonly { temperatureF: number }[]) =>
    sum(chosen, (bin) => (x(bin.temperatureF) ?? 0) + x.bandwidth() / 2) / Math.max(1, chosen.length);
  const [cold, hot] = [
    bins.filter((b) => b.temperatureF < heatingBalanceF),
    bins.filter((b) => b.temperatureF > coolingBalanceF),
  ];
  const names = [
    { bins: cold, text: words.heatingBelow },
    { bins: hot, text: words.coolingAbove },
  ].filter((name) => name.bins.length > 0);
  return [
    axisName({ x: 0, y: top + 14, text: words.binsAxis }),
    ...horizontalLines({
      ticks: y.ticks(3).map((value) => ({ at: y(value), text: plain(value) })),
      left: plot.left,
      right: plot.right,
    }),
    ...bars,
    {
      kind: "path",
      d: line({ x1: plot.left, y1: plot.bottom, x2: plot.right, y2: plot.bottom }),
      stroke: "ink",
      strokeWidth: 1.2,
    },
    ...names.map(
      (name): Shape => ({
        kind: "text",
        x: c(centreOf(name.bins)),
        y: plot.top - 8,
        text: name.text,
        size: 13,
        weight: 600,
        fill: "ink",
        anchor: "middle",
      }),
    ),
    ...bins
      .filter((_, index) => index % every === 0)
      .map(
        (bin): Shape => ({
          kind: "text",
          x: c((x(bin.temperatureF) ?? 0) + x.bandwidth() / 2),
          y: plot.bottom + 18,
          text: plain(bin.temperatureF),
          size: 12,
          fill: "soft",
          anchor: "middle",
        }),
      ),
  ];
}
