import { scaleLinear } from "d3-scale";

import { axisName, line } from "./chart-axes.ts";
import { fitText, textWidth } from "./measure-text.ts";
import { numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { SAVINGS_DRIVERS_WORDS } from "./words/savings-words.ts";

export interface SavingsDriversInput {
  savedUsdPerYear: number;
  drivers: readonly SavingsDriver[];
}

/** One doubtful thing, and the saving at its two ends with everything else at its middle. */
export interface SavingsDriver {
  id: string;
  label: string;
  /** The saving at the end that gives less, and at the end that gives more. */
  lowUsdPerYear: number;
  highUsdPerYear: number;
}

/** More bars than this say nothing more. */
const MOST_DRIVERS = 8;
const BAR_HEIGHT = 18;

/** A tornado: what moves the saving most stands on top. */
export function savingsDriversScene(input: SavingsDriversInput, { width, language = "en" }: SceneOptions): Scene {
  const words = SAVINGS_DRIVERS_WORDS[language];
  const text = numberText(language);
  const reachOf = (driver: SavingsDriver) => Math.abs(driver.highUsdPerYear - driver.lowUsdPerYear);
  const drivers = [...input.drivers]
    .sort((a, b) => reachOf(b) - reachOf(a) || (a.id < b.id ? -1 : 1))
    .slice(0, MOST_DRIVERS);
  const compact = isCompact({ width });
  const nameWidth = compact ? 0 : 220;
  const rowHeight = compact ? 50 : 34;
  const top = 8;
  const bottom = top + drivers.length * rowHeight + 4;
  const ends = drivers.flatMap((driver) => [driver.lowUsdPerYear, driver.highUsdPerYear]);
  const low = Math.min(input.savedUsdPerYear, ...ends);
  const high = Math.max(input.savedUsdPerYear, ...ends);
  const gutter = 52;
  const x = scaleLinear([low, high > low ? high : low + 1], [nameWidth + gutter, width - gutter]);
  const middle = x(input.savedUsdPerYear);

  const barTop = (index: number) => top + index * rowHeight + (compact ? 22 : (rowHeight - BAR_HEIGHT) / 2);
  // Where names stand above their bars the line keeps to the bars.
  const middleLine = compact
    ? drivers
        .map((_, index) => line({ x1: middle, y1: barTop(index) - 3, x2: middle, y2: barTop(index) + BAR_HEIGHT + 3 }))
        .join("")
    : line({ x1: middle, y1: top - 4, x2: middle, y2: bottom });

  const shapes: Shape[] = drivers.map((driver, index): Shape => {
    const rowY = top + index * rowHeight;
    const barY = barTop(index);
    const [from, to] = [x(driver.lowUsdPerYear), x(driver.highUsdPerYear)].sort((a, b) => a - b) as [number, number];
    const values = {
      label: driver.label,
      low: text.dollars(driver.lowUsdPerYear),
      high: text.dollars(driver.highUsdPerYear),
    };
    const baseline = barY + BAR_HEIGHT / 2 + 4.5;
    const name = fitText({ text: driver.label, size: 14, maxWidth: compact ? width : nameWidth });
    return {
      kind: "item",
      id: driver.id,
      label: words.driver(values),
      shapes: [
        { kind: "text", x: 0, y: c(compact ? rowY + 14 : baseline), text: name, size: 14, fill: "ink" },
        {
          kind: "rect",
          x: c(from),
          y: c(barY),
          width: c(Math.max(0, Math.min(middle, to) - from)),
          height: BAR_HEIGHT,
          fill: "kept-tint",
          stroke: "kept",
          strokeWidth: 1,
        },
        {
          kind: "rect",
          x: c(Math.max(middle, from)),
          y: c(barY),
          width: c(Math.max(0, to - Math.max(middle, from))),
          height: BAR_HEIGHT,
          fill: "kept",
        },
        {
          kind: "text",
          x: c(from - 5),
          y: c(baseline),
          text: text.dollars(Math.min(driver.lowUsdPerYear, driver.highUsdPerYear)),
          size: 12,
          fill: "soft",
          anchor: "end",
        },
        {
          kind: "text",
          x: c(to + 5),
          y: c(baseline),
          text: text.dollars(Math.max(driver.lowUsdPerYear, driver.highUsdPerYear)),
          size: 12,
          fill: "soft",
        },
      ],
    };
  });
  const label = text.dollars(input.savedUsdPerYear);
  const half = textWidth({ text: label, size: 14, weight: 600 }) / 2;
  shapes.push(
    { kind: "path", d: middleLine, stroke: "ink", strokeWidth: 1.6 },
    {
      kind: "text",
      x: c(Math.min(width - half, middle)),
      y: c(bottom + 16),
      text: label,
      size: 14,
      weight: 600,
      fill: "ink",
      anchor: "middle",
    },
    axisName({ x: width, y: bottom + 36, text: words.axis, anchor: "end" }),
  );

  const strongest = drivers[0];
  return {
    width,
    height: bottom + 42,
    title: words.title,
    finding: strongest
      ? words.finding({
          label: strongest.label,
          low: text.dollars(strongest.lowUsdPerYear),
          high: text.dollars(strongest.highUsdPerYear),
        })
      : words.none,
    note: words.note,
    table: {
      caption: words.caption,
      columns: words.columns.map((column, index) => ({ label: column, isNumeric: index > 0 })),
      rows: drivers.map((driver) => [
        driver.label,
        text.dollars(driver.lowUsdPerYear),
        text.dollars(driver.highUsdPerYear),
      ]),
    },
    shapes,
  };
}
