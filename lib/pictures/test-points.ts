import { extent } from "d3-array";
import { type ScaleLogarithmic, scaleLog } from "d3-scale";
import { area } from "d3-shape";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";
import { placeLabel, textBox } from "./boxes.ts";
import { axisName, bottomTicks, horizontalLines, line } from "./chart-axes.ts";
import { textWidth } from "./measure-text.ts";
import { numberText } from "./number-text.ts";
import { coordinate as c, type ItemShape, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { TEST_POINTS_WORDS } from "./words/test-points-words.ts";

export interface TestPointsInput {
  points: readonly TestPoint[];
  /** Flow = coefficient · pressure ^ exponent. */
  fit?: { coefficient: number; exponent: Ratio };
  /** Where the line may lie, at as many pressures as one likes. */
  band?: readonly { pressurePa: Pascals; lowCfm: Cfm; highCfm: Cfm }[];
  /** The number of the test: the flow read off the line at the reference pressure. */
  reading?: { pressurePa: Pascals; flowCfm: Cfm; lowCfm?: Cfm; highCfm?: Cfm };
}

export interface TestPoint {
  id: string;
  number: number;
  pressurePa: Pascals;
  flowCfm: Cfm;
  isDoubtful?: boolean;
}

/** Readings on log-log paper with the fitted line, its interval, and the value at the reference pressure. */
export function testPointsScene(input: TestPointsInput, { width, language = "en" }: SceneOptions): Scene {
  const words = TEST_POINTS_WORDS[language];
  const text = numberText(language);
  const pascals = (value: Pascals) => `${text.plain(value)} Pa`;
  const height = isCompact({ width }) ? 290 : 340;
  const plot = { left: 52, right: width - 14, top: 30, bottom: height - 48 };
  const { x, y } = scalesOf({ input, plot });

  const shapes: Shape[] = [
    ...horizontalLines({
      ticks: roundTicks(y).map((value) => ({ at: y(value), text: text.plain(value) })),
      left: plot.left,
      right: plot.right,
    }),
    ...bottomTicks({
      ticks: roundTicks(x).map((value) => ({ at: x(value), text: text.plain(value) })),
      y: plot.bottom,
      sheetWidth: width,
    }),
    {
      kind: "path",
      d: line({ x1: plot.left, y1: plot.bottom, x2: plot.right, y2: plot.bottom }),
      stroke: "ink",
      strokeWidth: 1.2,
    },
    axisName({ x: 0, y: 14, text: words.flow }),
    axisName({ x: plot.right, y: height - 6, text: words.pressure, anchor: "end" }),
  ];
  if (input.band && input.band.length > 1) {
    const band = area<(typeof input.band)[number]>(
      (point) => x(point.pressurePa),
      (point) => y(point.lowCfm),
      (point) => y(point.highCfm),
    )([...input.band]);
    if (band) shapes.push({ kind: "path", d: band, fill: "kept-tint" });
  }
  if (input.fit) {
    const { coefficient, exponent } = input.fit;
    const [from, to] = x.domain() as [number, number];
    const at = (pressure: number) => y(coefficient * pressure ** exponent);
    shapes.push({
      kind: "path",
      d: line({ x1: x(from), y1: at(from), x2: x(to), y2: at(to) }),
      stroke: "kept",
      strokeWidth: 2.2,
    });
  }
  const { reading } = input;
  if (reading)
    shapes.push(
      ...drawReading({
        reading,
        x,
        y,
        plot,
        label: text.cfm(reading.flowCfm),
        pressure: pascals(reading.pressurePa),
        points: input.points,
      }),
    );
  shapes.push(
    ...input.points.map((point): Shape => {
      const state = point.isDoubtful ? words.doubtful : words.good;
      const label = words.point({
        number: point.number,
        pressure: pascals(point.pressurePa),
        flow: text.cfm(point.flowCfm),
        state,
      });
      return {
        kind: "item",
        id: point.id,
        label,
        shapes: drawPoint({
          point,
          cx: x(point.pressurePa),
          cy: y(point.flowCfm),
          name: words.doubtfulStep(point.number),
          right: plot.right,
        }),
      };
    }),
  );

  return {
    width,
    height,
    title: words.title,
    finding: sayFinding(),
    note: words.note,
    table: {
      caption: words.caption,
      columns: words.columns.map((label, index) => ({ label, isNumeric: index < 3 })),
      rows: input.points.map((point) => [
        String(point.number),
        text.plain(point.pressurePa),
        text.plain(point.flowCfm),
        point.isDoubtful ? words.doubtful : words.good,
      ]),
    },
    shapes,
  };

  function sayFinding(): string {
    if (!reading) return words.noReading;
    const values = { pressure: pascals(reading.pressurePa), flow: text.cfm(reading.flowCfm) };
    if (reading.lowCfm === undefined || reading.highCfm === undefined) return words.finding(values);
    return words.findingRange({ ...values, low: text.plain(reading.lowCfm), high: text.cfm(reading.highCfm) });
  }
}

interface Plot {
  left: number;
  right: number;
  top: number;
  bottom: number;
}
type LogScale = ScaleLogarithmic<number, number>;

function scalesOf({ input, plot }: { input: TestPointsInput; plot: Plot }): { x: LogScale; y: LogScale } {
  const { points, band = [], reading } = input;
  const pressures = [
    ...points.map((p) => p.pressurePa),
    ...band.map((b) => b.pressurePa),
    ...(reading ? [reading.pressurePa] : []),
  ];
  const flows = [
    ...points.map((p) => p.flowCfm),
    ...band.flatMap((b) => [b.lowCfm, b.highCfm]),
    ...(reading ? [reading.lowCfm ?? reading.flowCfm, reading.flowCfm, reading.highCfm ?? reading.flowCfm] : []),
  ];
  const domainOf = (values: readonly number[], fallback: [number, number]): [number, number] => {
    const [low, high] = extent(values.filter((value) => value > 0));
    return low === undefined || high === undefined ? fallback : [low / 1.18, high * 1.18];
  };
  return {
    x: scaleLog(domainOf(pressures, [10, 60]), [plot.left, plot.right]),
    y: scaleLog(domainOf(flows, [50, 500]), [plot.bottom, plot.top]),
  };
}

/** Ticks at 1, 2, 3, 5 times a power of ten: round numbers a person can read between. */
function roundTicks(scale: LogScale): number[] {
  return scale.ticks().filter((value) => {
    const leading = value / 10 ** Math.floor(Math.log10(value) + 1e-9);
    return [1, 2, 3, 5].some((round) => Math.abs(leading - round) < 1e-6);
  });
}

/** A doubtful reading is hollow and says so, on the side where there is room. */
function drawPoint({
  point,
  cx,
  cy,
  name,
  right,
}: {
  point: TestPoint;
  cx: number;
  cy: number;
  name: string;
  right: number;
}): ItemShape["shapes"] {
  const at = { cx: c(cx), cy: c(cy) };
  if (!point.isDoubtful) return [{ kind: "circle", ...at, r: 5.5, fill: "ink", stroke: "card", strokeWidth: 1.5 }];
  const size = 12;
  const fitsRight = cx + 8 + textWidth({ text: name, size }) <= right;
  return [
    { kind: "circle", ...at, r: 6, fill: "card", stroke: "doubt", strokeWidth: 2.2, dash: [2.6, 2] },
    {
      kind: "text",
      x: c(fitsRight ? cx + 8 : cx - 8),
      y: c(cy + 19),
      text: name,
      size,
      fill: "ink",
      anchor: fitsRight ? "start" : "end",
    },
  ];
}

function drawReading({
  reading,
  x,
  y,
  plot,
  label,
  pressure,
  points,
}: {
  reading: NonNullable<TestPointsInput["reading"]>;
  x: LogScale;
  y: LogScale;
  plot: Plot;
  label: string;
  pressure: string;
  points: readonly TestPoint[];
}): Shape[] {
  const [cx, cy] = [x(reading.pressurePa), y(reading.flowCfm)];
  const whole = `${label} · ${pressure}`;
  const base = { kind: "text", text: whole, size: 14, weight: 600, fill: "accent" } as const;
  // A doubtful point has its name below it on the right.
  const taken = points.map(({ pressurePa, flowCfm, isDoubtful }) => ({
    x: x(pressurePa) - 8,
    y: y(flowCfm) - 8,
    width: isDoubtful ? 112 : 16,
    height: isDoubtful ? 32 : 16,
  }));
  const sheet = { x: plot.left, y: plot.top - 6, width: plot.right - plot.left, height: plot.bottom - plot.top };
  const name = placeLabel({
    candidates: [
      { ...base, x: c(cx + 12), y: c(cy + 26), anchor: "start" },
      { ...base, x: c(cx + 12), y: c(cy + 48), anchor: "start" },
      { ...base, x: c(cx - 12), y: c(cy - 16), anchor: "end" },
      { ...base, x: c(cx + 10), y: c(plot.bottom - 10), anchor: "start" },
      { ...base, x: c(cx - 10), y: c(plot.top + 12), anchor: "end" },
    ],
    taken,
    sheet,
  });
  const plate = name ? textBox(name) : undefined;
  return [
    {
      kind: "path",
      d: `${line({ x1: cx, y1: plot.bottom, x2: cx, y2: cy })}${line({ x1: cx, y1: cy, x2: plot.left, y2: cy })}`,
      stroke: "accent",
      strokeWidth: 1.4,
      dash: [5, 3],
    },
    ...(reading.lowCfm !== undefined && reading.highCfm !== undefined
      ? [
          {
            kind: "path",
            d: line({ x1: cx, y1: y(reading.lowCfm), x2: cx, y2: y(reading.highCfm) }),
            stroke: "accent",
            strokeWidth: 5,
            opacity: 0.45,
          } as const,
        ]
      : []),
    { kind: "path", d: `M${c(cx)} ${c(cy - 7)}l7 7l-7 7l-7 -7Z`, fill: "accent", stroke: "card", strokeWidth: 1.5 },
    ...(plate
      ? [
          {
            kind: "rect",
            x: c(plate.x - 3),
            y: c(plate.y - 2),
            width: c(plate.width + 6),
            height: c(plate.height + 4),
            radius: 2,
            fill: "card",
          } as const,
        ]
      : []),
    ...(name ? [name] : []),
  ];
}
