import { max, maxIndex, min, minIndex, range, sum } from "d3-array";
import { scaleBand, scaleLinear } from "d3-scale";
import { refuse } from "#lib/errors/input-problem.ts";
import { shownFromStored, shownUnitOf, type UnitSystem } from "#lib/units/display-unit.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { Fahrenheit, Hours } from "#lib/units/quantity.ts";
import { axisName, horizontalLines } from "./chart-axes.ts";
import { numberText } from "./number-text.ts";
import { coordinate as c, isCompact, type Paint, type Scene, type SceneOptions, type Shape } from "./scene.ts";
import { WEATHER_SHIFTS_WORDS, type WeatherShiftsWords } from "./words/weather-shifts-words.ts";

export interface WeatherShiftsInput {
  stationLabel: string;
  /** Month 1 to 12, shift 1 to 3 (hours 1 to 8, 9 to 16, 17 to 24), the middle of the bin. */
  bins: readonly { month: number; shift: number; temperatureF: Fahrenheit; hours: Hours }[];
  heatingBaseF: Fahrenheit;
  coolingBaseF: Fahrenheit;
}

/** As wide as the bins of a year, so that no two bins of a month and shift share a row. */
const CLASS_WIDTH_F = 5;
const MONTHS = range(1, 13);
const SHIFTS = [1, 2, 3];
/** So that a single hour can still be seen. */
const LEAST_BAR = 0.2;
const PANEL = { top: 40, foot: 24, left: 34, gap: 14 };

/** A bin in the row of 5 °F that holds its middle: years moved to other normals have middles anywhere. */
type Placed = WeatherShiftsInput["bins"][number] & { lowF: Fahrenheit };

/** The hours of a year by month, 8-hour shift and outdoor temperature: a panel a shift, a column a month. */
export function weatherShiftsScene(
  input: WeatherShiftsInput,
  { width, language = "en", units = "us" }: SceneOptions,
): Scene {
  if (!MONTHS.every((month) => SHIFTS.every((shift) => input.bins.some(of({ month, shift }))))) {
    refuse({
      field: "bins",
      detail: "Every month needs hours in all three shifts.",
      fix: "Give the bins of a whole year.",
    });
  }
  const words = WEATHER_SHIFTS_WORDS[language];
  const text = numberText(language, units);
  const unit = shownUnitOf({ unit: "°F", system: units });
  const bins = input.bins.map((bin) => ({
    ...bin,
    lowF: Math.floor(bin.temperatureF / CLASS_WIDTH_F) * CLASS_WIDTH_F,
  }));
  const widest = max(bins, (bin) => bin.hours) ?? 0;
  const panels = layPanels(width);
  return {
    width,
    height: panels.height,
    title: words.title,
    finding: findingOf({ input, words, text, base: (value) => `${rowNumber(value, units)} ${unit}` }),
    note: words.note({ widest: text.plain(widest), step: rowStep(units) }),
    table: tableOf({ bins, words, unit, shownF: (value) => rowNumber(value, units) }),
    shapes: [
      axisName({ x: 0, y: 14, text: words.axis(unit) }),
      ...SHIFTS.flatMap((shift) =>
        drawShift({ input, bins, shift, widest, words, units, panel: panels.of(shift), plain: text.plain }),
      ),
    ],
  };
}

const of =
  ({ month, shift }: { month: number; shift: number }) =>
  (bin: { month: number; shift: number }) =>
    bin.month === month && bin.shift === shift;

interface Panel {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Side by side where there is room, so that one temperature is one height; else one under the other. */
function layPanels(width: number): { height: number; of(shift: number): Panel } {
  const isStacked = isCompact({ width });
  const plotHeight = isStacked ? 170 : 260;
  const step = PANEL.top + plotHeight + PANEL.foot;
  const columnWidth = isStacked ? width : (width + PANEL.gap) / SHIFTS.length;
  return {
    height: isStacked ? step * SHIFTS.length : step,
    of(shift) {
      const column = isStacked ? 0 : shift - 1;
      const top = PANEL.top + (isStacked ? (shift - 1) * step : 0);
      const left = c(column * columnWidth + PANEL.left);
      return {
        left,
        right: c((column + 1) * columnWidth - (isStacked ? 2 : PANEL.gap)),
        top,
        bottom: top + plotHeight,
      };
    },
  };
}

function drawShift({
  input,
  bins,
  shift,
  widest,
  words,
  units,
  panel,
  plain,
}: {
  input: WeatherShiftsInput;
  bins: readonly Placed[];
  shift: number;
  widest: Hours;
  words: WeatherShiftsWords;
  units: UnitSystem;
  panel: Panel;
  plain: (value: number) => string;
}): Shape[] {
  const shown = (value: Fahrenheit) => shownFromStored({ value, unit: "°F", system: units });
  const lowestF = min(bins, (bin) => bin.lowF) ?? 0;
  const highestF = (max(bins, (bin) => bin.lowF) ?? 0) + CLASS_WIDTH_F;
  const x = scaleBand(MONTHS, [panel.left, panel.right]).paddingInner(0.12);
  const y = scaleLinear([shown(lowestF), shown(highestF)], [panel.bottom, panel.top]);
  const rowHeight = y(shown(lowestF)) - y(shown(lowestF + CLASS_WIDTH_F));
  const bars = bins
    .filter((bin) => bin.shift === shift)
    .map((bin): Shape => {
      const paint = paintOf(bin, input);
      // An outline stands half outside its shape: without this, open bars would look like more hours than full ones.
      const barWidth = Math.max(LEAST_BAR, (bin.hours / widest) * x.bandwidth() - (paint.strokeWidth ?? 0));
      return {
        kind: "rect",
        x: c((x(bin.month) ?? 0) + (x.bandwidth() - barWidth) / 2),
        y: c(y(shown(bin.lowF + CLASS_WIDTH_F)) + 0.6),
        width: c(barWidth),
        height: c(rowHeight - 1.2),
        ...paint,
      };
    });
  return [
    {
      kind: "text",
      x: panel.left,
      y: panel.top - 8,
      text: words.shifts[shift - 1] ?? "",
      size: 13,
      weight: 600,
      fill: "ink",
    },
    ...horizontalLines({
      ticks: y.ticks(6).map((value) => ({ at: y(value), text: plain(value) })),
      left: panel.left,
      right: panel.right,
    }),
    ...bars,
    ...MONTHS.map(
      (month): Shape => ({
        kind: "text",
        x: c((x(month) ?? 0) + x.bandwidth() / 2),
        y: panel.bottom + 16,
        text: words.monthInitials[month - 1] ?? "",
        size: 12,
        fill: "soft",
        anchor: "middle",
      }),
    ),
  ];
}

function paintOf({ temperatureF }: Placed, { heatingBaseF, coolingBaseF }: WeatherShiftsInput): Paint {
  if (temperatureF < heatingBaseF) return { fill: "outside" };
  if (temperatureF > coolingBaseF) return { fill: "card", stroke: "ink", strokeWidth: 1 };
  return { fill: "outside-tint", stroke: "outside", strokeWidth: 0.8 };
}

/** "5 °F" or "2.8 K": a difference. */
const rowStep = (system: UnitSystem): string => {
  const unit = "Δ°F";
  const step = formatNumber(shownFromStored({ value: CLASS_WIDTH_F, unit, system }), { significantDigits: 2 });
  return `${step} ${shownUnitOf({ unit, system }).replace("Δ", "")}`;
};

/** A temperature: whole in °F, to a tenth in °C. */
const rowNumber = (value: Fahrenheit, system: UnitSystem): string =>
  formatNumber(shownFromStored({ value, unit: "°F", system }), { significantDigits: 3 });

function tableOf({
  bins,
  words,
  unit,
  shownF,
}: {
  bins: readonly Placed[];
  words: WeatherShiftsWords;
  unit: string;
  shownF: (value: Fahrenheit) => string;
}): Scene["table"] {
  const rowsOf = (shift: number) => {
    const ofShift = bins.filter((bin) => bin.shift === shift);
    const lows = [...new Set(ofShift.map((bin) => bin.lowF))].sort((a, b) => b - a);
    return lows.map((lowF) => {
      const inRow = ofShift.filter((bin) => bin.lowF === lowF);
      const ends = words.range({ low: shownF(lowF), high: shownF(lowF + CLASS_WIDTH_F) });
      const hours = MONTHS.map((month) =>
        sum(
          inRow.filter((bin) => bin.month === month),
          (bin) => bin.hours,
        ),
      );
      return [`${words.shifts[shift - 1]}, ${ends}`, ...[...hours, sum(hours)].map((each) => formatNumber(each))];
    });
  };
  return {
    caption: words.caption,
    columns: [
      { label: words.rowHead(unit) },
      ...[...words.monthsShort, words.year].map((label) => ({ label, isNumeric: true })),
    ],
    rows: SHIFTS.flatMap(rowsOf),
  };
}

function findingOf({
  input,
  words,
  text,
  base,
}: {
  input: WeatherShiftsInput;
  words: WeatherShiftsWords;
  text: ReturnType<typeof numberText>;
  base: (value: Fahrenheit) => string;
}): string {
  const groups = MONTHS.flatMap((month) => SHIFTS.map((shift) => ({ month, shift })));
  const means = groups.map((group) => {
    const bins = input.bins.filter(of(group));
    return sum(bins, (bin) => bin.temperatureF * bin.hours) / sum(bins, (bin) => bin.hours);
  });
  const [cold, warm] = [minIndex(means), maxIndex(means)];
  const month = (index: number) => words.months[(groups[index]?.month ?? 1) - 1] ?? "";
  const shift = (index: number) => words.shifts[(groups[index]?.shift ?? 1) - 1] ?? "";
  const hours = (isCounted: (temperatureF: Fahrenheit) => boolean) =>
    text.plain(sum(input.bins, (bin) => (isCounted(bin.temperatureF) ? bin.hours : 0)));
  return words.finding({
    station: input.stationLabel,
    cold: text.degrees(means[cold] ?? 0),
    coldest: month(cold),
    coldShift: shift(cold),
    warm: text.degrees(means[warm] ?? 0),
    warmest: month(warm),
    warmShift: shift(warm),
    below: hours((temperatureF) => temperatureF < input.heatingBaseF),
    heatingBase: base(input.heatingBaseF),
    above: hours((temperatureF) => temperatureF > input.coolingBaseF),
    coolingBase: base(input.coolingBaseF),
  });
}
