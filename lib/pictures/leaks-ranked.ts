import { sum } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { Cfm } from "#lib/units/quantity.ts";
import { fitText } from "./measure-text.ts";
import { type NumberText, numberText } from "./number-text.ts";
import { coordinate as c, type ItemShape, isCompact, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { type Effort, LEAKS_RANKED_WORDS, type LeaksRankedWords } from "./words/leaks-ranked-words.ts";

export interface LeaksRankedInput {
  leaks: readonly RankedLeak[];
}

export interface RankedLeak {
  id: string;
  number: number;
  label: string;
  placeLabel: string;
  cfm25: Cfm;
  lostUsdPerYear: number;
  effort: Effort;
  isSealed?: boolean;
}

const BAR_HEIGHT = 16;
const EFFORT_STEPS: Readonly<Record<Effort, number>> = { easy: 1, moderate: 2, hard: 3 };

/** Leaks largest first: how much, what it costs, how hard it is to get at. */
export function leaksRankedScene({ leaks }: LeaksRankedInput, { width, language = "en", units }: SceneOptions): Scene {
  const words = LEAKS_RANKED_WORDS[language];
  const text = numberText(language, units);
  const ranked = [...leaks].sort((a, b) => b.cfm25 - a.cfm25 || a.number - b.number);
  const compact = isCompact({ width });
  const rowHeight = compact ? 74 : 50;
  const largest = Math.max(1, ...ranked.map((leak) => leak.cfm25));
  const bar = compact ? { left: 34, right: width - 112 } : { left: 250, right: width - 296 };
  const x = scaleLinear([0, largest], [bar.left, bar.right]);
  const shapes: Shape[] = ranked.flatMap((leak, index): Shape[] => {
    const top = index * rowHeight;
    return [
      { kind: "path", d: `M0 ${top + rowHeight}L${width} ${top + rowHeight}`, stroke: "hairline", strokeWidth: 1 },
      drawRow({ leak, top, rowHeight, width, compact, barLeft: bar.left, barEnd: x(leak.cfm25), words, text }),
    ];
  });
  return {
    width,
    height: Math.max(24, ranked.length * rowHeight + 1),
    title: words.title,
    finding: sayFinding({ ranked, words, text }),
    note: words.note,
    table: {
      caption: words.caption,
      columns: words.columns.map((label, index) => ({
        label: text.withFlowUnit(label),
        isNumeric: index === 2 || index === 3,
      })),
      rows: ranked.map((leak) => [
        `${leak.number} · ${leak.label}${leak.isSealed ? ` (${words.sealed})` : ""}`,
        leak.placeLabel,
        text.flow(leak.cfm25),
        text.dollars(leak.lostUsdPerYear),
        words.effort[leak.effort],
      ]),
    },
    shapes,
  };
}

/** The fewest leaks that make up at least 70 % of what was found. */
function sayFinding({
  ranked,
  words,
  text,
}: {
  ranked: readonly RankedLeak[];
  words: LeaksRankedWords;
  text: NumberText;
}): string {
  const all = sum(ranked, (leak) => leak.cfm25);
  const [first] = ranked;
  if (!first || !(all > 0)) return words.none;
  if (ranked.length === 1) return words.findingOne({ label: first.label, cfm: text.cfm(first.cfm25) });
  let count = 0;
  let covered = 0;
  while (count < ranked.length && covered < 0.7 * all) {
    covered += ranked[count]?.cfm25 ?? 0;
    count += 1;
  }
  return words.finding({ count, all: ranked.length, share: text.percent(covered / all) });
}

function drawRow({
  leak,
  top,
  rowHeight,
  width,
  compact,
  barLeft,
  barEnd,
  words,
  text,
}: {
  leak: RankedLeak;
  top: number;
  rowHeight: number;
  width: number;
  compact: boolean;
  barLeft: number;
  barEnd: number;
  words: LeaksRankedWords;
  text: NumberText;
}): ItemShape {
  const dollars = text.dollars(leak.lostUsdPerYear);
  const nameY = top + (compact ? 20 : 21);
  const placeY = nameY + (compact ? 17 : 17);
  const barY = compact ? top + 46 : top + (rowHeight - BAR_HEIGHT) / 2;
  const baseline = barY + BAR_HEIGHT / 2 + 4.5;
  const nameWidth = compact ? width - 120 : barLeft - 46;
  const effortX = compact ? width : width - 124;
  const fill = leak.isSealed ? "card" : "lost";
  return {
    kind: "item",
    id: leak.id,
    label: words.leak({
      number: leak.number,
      label: leak.label,
      cfm: text.cfm(leak.cfm25),
      dollars,
      effort: words.effort[leak.effort],
    }),
    shapes: [
      {
        kind: "circle",
        cx: 13,
        cy: compact ? nameY - 3 : top + rowHeight / 2,
        r: 12,
        fill,
        stroke: leak.isSealed ? "kept" : undefined,
        strokeWidth: 1.8,
      },
      {
        kind: "text",
        x: 13,
        y: (compact ? nameY - 3 : top + rowHeight / 2) + 4.5,
        text: String(leak.number),
        size: 13,
        weight: 600,
        fill: leak.isSealed ? "kept" : "on-lost",
        anchor: "middle",
      },
      {
        kind: "text",
        x: 34,
        y: nameY,
        text: fitText({ text: leak.label, size: 14, weight: 600, maxWidth: nameWidth }),
        size: 14,
        weight: 600,
        fill: "ink",
      },
      {
        kind: "text",
        x: 34,
        y: placeY,
        text: fitText({ text: leak.placeLabel, size: 12, maxWidth: nameWidth }),
        size: 12,
        fill: "soft",
      },
      {
        kind: "rect",
        x: c(barLeft),
        y: c(barY),
        width: c(Math.max(1, barEnd - barLeft)),
        height: BAR_HEIGHT,
        ...(leak.isSealed ? { fill: "card", stroke: "kept", strokeWidth: 1.6 } : { fill: "lost", pattern: "hatched" }),
      },
      {
        kind: "text",
        x: c(barEnd + 6),
        y: c(baseline),
        text: text.cfm(leak.cfm25),
        size: 13,
        family: "mono",
        fill: "ink",
      },
      {
        kind: "text",
        x: compact ? width : width - 136,
        y: compact ? nameY : c(baseline),
        text: compact ? dollars : `${dollars} ${words.perYear}`,
        size: 14,
        weight: 600,
        fill: "ink",
        anchor: "end",
      },
      ...(compact
        ? [{ kind: "text", x: width, y: placeY, text: words.perYear, size: 12, fill: "soft", anchor: "end" } as const]
        : []),
      ...drawEffort({ leak, x: effortX, y: baseline, compact, words }),
    ],
  };
}

/** Effort as one to three steps, beside its words. */
function drawEffort({
  leak,
  x,
  y,
  compact,
  words,
}: {
  leak: RankedLeak;
  x: number;
  y: number;
  compact: boolean;
  words: LeaksRankedWords;
}): ItemShape["shapes"] {
  const steps = EFFORT_STEPS[leak.effort];
  const left = compact ? x - 30 : x;
  const marks = [0, 1, 2].map((step) => ({
    kind: "rect" as const,
    x: c(left + step * 10),
    y: c(y - 4 - step * 3),
    width: 7,
    height: 5 + step * 3,
    ...(step < steps ? { fill: "ink" as const } : { fill: "card" as const, stroke: "soft" as const, strokeWidth: 0.8 }),
  }));
  if (compact) return marks;
  return [
    ...marks,
    { kind: "text", x: c(left + 34), y: c(y), text: words.shortEffort[leak.effort], size: 12, fill: "soft" },
  ];
}
