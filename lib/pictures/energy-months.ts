import { scaleBand, scaleLinear } from "d3-scale";
import { refuse } from "#lib/errors/input-problem.ts";
import { horizontalLines } from "./chart-axes.ts";
import { type NumberText, numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type RectShape, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { ENERGY_MONTHS_WORDS, type EnergyMonthsWords } from "./words/energy-months-words.ts";

export interface EnergyMonthsInput {
  fuels: readonly MonthlyFuel[];
}

/** One fuel in its own unit, January first. */
export interface MonthlyFuel {
  id: string;
  /** As a sentence says it: "natural gas". */
  label: string;
  unit: string;
  before: readonly number[];
  after: readonly number[];
}

interface Panel {
  fuel: MonthlyFuel;
  top: number;
  width: number;
  height: number;
}

/** A row of twelve bars for each fuel: what is left after sealing, and on top of it what is saved. */
export function energyMonthsScene({ fuels }: EnergyMonthsInput, { width, language = "en" }: SceneOptions): Scene {
  const words = ENERGY_MONTHS_WORDS[language];
  const text = numberText(language);
  for (const fuel of fuels) requireTwelve(fuel);
  const panelHeight = isCompact({ width }) ? 168 : 184;
  const shapes = fuels.flatMap((fuel, index) =>
    drawPanel({ panel: { fuel, top: index * (panelHeight + 14), width, height: panelHeight }, words, text }),
  );
  return {
    width,
    height: Math.max(1, fuels.length * (panelHeight + 14) - 14),
    title: words.title,
    finding: sayFinding({ fuels, words, text }),
    note: words.note,
    table: {
      caption: words.caption,
      columns: [
        { label: words.month },
        ...fuels.flatMap((fuel) => [
          { label: `${fuel.label}, ${words.before} (${fuel.unit})`, isNumeric: true },
          { label: `${fuel.label}, ${words.after} (${fuel.unit})`, isNumeric: true },
        ]),
      ],
      rows: words.months.map((month, index) => [
        month,
        ...fuels.flatMap((fuel) => [text.plain(fuel.before[index] ?? 0), text.plain(fuel.after[index] ?? 0)]),
      ]),
    },
    shapes,
  };
}

function requireTwelve({ label, before, after }: MonthlyFuel): void {
  const isYear = (months: readonly number[]) =>
    months.length === 12 && months.every((value) => value >= 0 && Number.isFinite(value));
  if (!(isYear(before) && isYear(after))) {
    refuse({
      field: "fuels",
      detail: `${label} has no twelve months.`,
      fix: "Give twelve values of 0 or more for before and for after.",
    });
  }
}

function sayFinding({
  fuels,
  words,
  text,
}: {
  fuels: readonly MonthlyFuel[];
  words: EnergyMonthsWords;
  text: NumberText;
}): string {
  // Fuels have their own units, so a change is weighed against that fuel's largest month.
  const changes = fuels.flatMap((fuel) => {
    const largest = Math.max(1e-9, ...fuel.before);
    return fuel.before.map((before, month) => ({
      fuel,
      month,
      before,
      after: fuel.after[month] ?? 0,
      weight: (before - (fuel.after[month] ?? 0)) / largest,
    }));
  });
  const best = changes.sort((a, b) => b.weight - a.weight)[0];
  if (!best || !(best.weight > 0)) return words.noChange;
  return words.finding({
    fuel: best.fuel.label,
    month: words.months[best.month] ?? "",
    before: `${text.plain(best.before)} ${best.fuel.unit}`,
    after: `${text.plain(best.after)} ${best.fuel.unit}`,
  });
}

function drawPanel({ panel, words, text }: { panel: Panel; words: EnergyMonthsWords; text: NumberText }): Shape[] {
  const { fuel, top, width, height } = panel;
  const plot = { left: 46, right: width, top: top + 32, bottom: top + height - 24 };
  const largest = Math.max(1, ...fuel.before, ...fuel.after);
  const y = scaleLinear([0, largest], [plot.bottom, plot.top]).nice(3);
  const x = scaleBand(
    words.months.map((_, index) => index),
    [plot.left + 4, plot.right],
  ).paddingInner(isCompact({ width }) ? 0.28 : 0.38);
  const ticks = y.ticks(3).map((value) => ({ at: y(value), text: text.plain(value) }));
  const bars = words.months.map((month, index): Shape => {
    const [before, after] = [fuel.before[index] ?? 0, fuel.after[index] ?? 0];
    const barX = c(x(index) ?? 0);
    const barWidth = c(x.bandwidth());
    const [left, saved] = [Math.min(before, after), Math.max(0, before - after)];
    const rects: RectShape[] = [
      { kind: "rect", x: barX, y: c(y(left)), width: barWidth, height: c(plot.bottom - y(left)), fill: "kept" },
    ];
    if (saved > 0)
      rects.push({
        kind: "rect",
        x: barX,
        y: c(y(before)),
        width: barWidth,
        height: c(y(after) - y(before)),
        fill: "lost",
        pattern: "hatched",
      });
    if (after > before)
      rects.push({
        kind: "rect",
        x: barX,
        y: c(y(after)),
        width: barWidth,
        height: c(y(before) - y(after)),
        fill: "card",
        stroke: "kept",
        strokeWidth: 1.4,
        dash: [3, 2],
      });
    const values = {
      fuel: fuel.label,
      month,
      before: `${text.plain(before)} ${fuel.unit}`,
      after: `${text.plain(after)} ${fuel.unit}`,
    };
    return { kind: "item", id: `${fuel.id}-${index + 1}`, label: words.bar(values), shapes: rects };
  });
  return [
    {
      kind: "text",
      x: 0,
      y: top + 15,
      text: `${capitalize(fuel.label)} (${fuel.unit})`,
      size: 14,
      weight: 600,
      fill: "ink",
    },
    ...horizontalLines({ ticks, left: plot.left, right: plot.right }),
    ...bars,
    ...words.monthInitials.map(
      (initial, index): Shape => ({
        kind: "text",
        x: c((x(index) ?? 0) + x.bandwidth() / 2),
        y: plot.bottom + 17,
        text: initial,
        size: 12,
        fill: "soft",
        anchor: "middle",
      }),
    ),
  ];
}

function capitalize(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
